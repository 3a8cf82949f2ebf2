//! Batches of every tank on one timeline.

use alloc::vec;
use alloc::vec::Vec;

use hilum::batch::{
    self, Content, Error, Field, Fill, Filling, Job, Label, MAX_MIXES, Memory, Mix, Need, Order, Portion,
    Pour, Proof, Refill, Room, SetSize, Shift, Tank,
};
use hilum::quantity::{MassFlow, Measure};

use super::{Answer, Given, Refused};
use crate::refusal::count;

/// Numbers of orders, tanks and shifts. Orders: mass, speed, changeover. Tanks: capacity, hold-up, mixing, pot
/// life, whether topped up, number of sizes, and for each size adds, stock and two ranks. Then for each order and
/// tank slurry per mass (NaN: none), recipe, living share; then shifts: from, to.
/// → what [`told`] tells.
pub(super) fn plan(given: &mut Given<'_>) -> Answer {
    let (orders, tanks, shifts) = (given.count(), given.count(), given.count());
    let needs = orders.saturating_mul(tanks);
    let orders: Vec<Order> = (0..orders)
        .map(|_| Order {
            mass: given.quantity(),
            speed: given.optional().map(MassFlow::from_base),
            changeover: given.quantity(),
        })
        .collect();
    let mut sizes: Vec<Vec<SetSize>> = Vec::new();
    let bare: Vec<Tank<'_>> = (0..tanks)
        .map(|_| {
            let tank = Tank {
                capacity: given.quantity(),
                hold_up: given.quantity(),
                mixing: given.quantity(),
                pot_life: given.optional().map(Measure::from_base),
                refill: if given.is() { Refill::TopUp } else { Refill::WhenEmpty },
                filling: Filling::Measured,
            };
            let own = given.count();
            sizes.push((0..own).map(|_| size(given)).collect());
            tank
        })
        .collect();
    let needs: Vec<Option<Need>> = (0..needs)
        .map(|_| {
            let (per_mass, recipe, living) = (given.optional(), given.count(), given.number());
            let recipe = u32::try_from(recipe).unwrap_or(u32::MAX);
            per_mass.map(|per_mass| Need { per_mass: Measure::from_base(per_mass), recipe, living })
        })
        .collect();
    let shifts: Vec<Shift> =
        (0..shifts).map(|_| Shift { from: given.quantity(), to: given.quantity() }).collect();
    let filled = bare.into_iter().zip(&sizes);
    let tanks: Vec<Tank<'_>> = filled
        .map(|(tank, sizes)| Tank {
            filling: if sizes.is_empty() { Filling::Measured } else { Filling::Sets(sizes) },
            ..tank
        })
        .collect();
    solved(&Job { orders: &orders, tanks: &tanks, needs: &needs, shifts: &shifts }).map_err(refused)
}

fn size(given: &mut Given<'_>) -> SetSize {
    let adds = given.quantity();
    let stock = given.optional().and_then(hilum::math::to_u64).and_then(|stock| u32::try_from(stock).ok());
    SetSize { adds, stock, ranks: [given.number(), given.number()] }
}

fn solved(job: &Job<'_>) -> Result<Vec<f64>, Error> {
    let room = Room::of(job);
    let mut numbers = vec![0.0; room.numbers];
    let mut fills = vec![Fill::default(); room.fills];
    let mut labels = vec![Label::default(); room.labels];
    let mut contents = vec![Content::default(); room.contents];
    let mut enough = room.pours;
    loop {
        let mut pours = vec![Pour::default(); enough];
        let memory = Memory {
            numbers: &mut numbers,
            fills: &mut fills,
            pours: &mut pours,
            labels: &mut labels,
            contents: &mut contents,
        };
        match batch::plan(*job, memory) {
            Ok(plan) => return told(&plan),
            Err(Error::TooMany { limit, .. }) if limit < MAX_MIXES && enough < MAX_MIXES => {
                enough = enough.saturating_mul(8).min(MAX_MIXES);
            }
            Err(error) => return Err(error),
        }
    }
}

/// 0, treated, whether that is all, finish, whether it is proven, tanks short of stock; the number of mixes and their numbers; then
/// mix, order and mass of each portion. NaN for an instant that there is not.
fn told(plan: &batch::Plan<'_>) -> Result<Vec<f64>, Error> {
    let (mixes, portions) = plan.room();
    let (mut mixes, mut portions) = (vec![Mix::default(); mixes], vec![Portion::default(); portions]);
    let (written, portioned) = plan.write(&mut mixes, &mut portions)?;
    let summary = plan.summary();
    let proof = f64::from(u8::from(summary.proof == Proof::Proven));
    let time = |time: Option<hilum::quantity::Time>| time.map_or(f64::NAN, Measure::to_base);
    let all = f64::from(u8::from(summary.all_treated));
    let short = f64::from(summary.short_of_stock);
    let mut told =
        vec![0.0, summary.treated.to_base(), all, time(summary.finish), proof, short, count(written)];
    for mix in mixes.iter().take(written) {
        let at = mix.times;
        told.extend([
            count(mix.tank),
            f64::from(mix.number),
            time(at.map(|at| at.mix_at)),
            time(at.map(|at| at.ready_at)),
            time(at.and_then(|at| at.use_by)),
            time(at.map(|at| at.done_at)),
        ]);
        told.extend([mix.mixed, mix.applied, mix.hold_up, mix.discarded].map(Measure::to_base));
        told.extend(mix.sets.map(f64::from));
    }
    for portion in portions.iter().take(portioned) {
        told.extend([count(portion.mix), count(portion.order), portion.mass.to_base()]);
    }
    Ok(told)
}

/// The script's number of what is refused, then its place and value.
fn refused(error: Error) -> Refused {
    Refused(match error {
        Error::Value { field, index, value } => {
            let field = match field {
                Field::Mass => 0.0,
                Field::Speed => 1.0,
                Field::Changeover => 2.0,
                Field::PerMass => 3.0,
                Field::Living => 4.0,
                Field::Capacity => 5.0,
                Field::HoldUp => 6.0,
                Field::Mixing => 7.0,
                Field::PotLife => 8.0,
                Field::Adds => 9.0,
                Field::Rank => 10.0,
                Field::Shift => 11.0,
                _ => 12.0,
            };
            vec![1.0, field, count(index), value]
        }
        Error::TooMany { limit, .. } => vec![2.0, count(limit)],
        Error::TankTooSmall { tank } => vec![3.0, count(tank)],
        _ => vec![4.0],
    })
}
