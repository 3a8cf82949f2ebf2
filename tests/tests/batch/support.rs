//! Jobs in kg, litres and seconds, planned with memory off the heap.

use hilum::batch::{
    Content, Error, Fill, Filling, Job, Label, Memory, Mix, Need, Order, Portion, Pour, Refill, Room,
    SetSize, Shift, Summary, Tank, plan,
};
use hilum::quantity::{
    Mass, MassFlow, Time, Volume, VolumePerMass, mass::kilogram, mass_flow::kilogram_per_second,
    time::second, volume::liter,
};

/// A plan with everything written out.
pub(crate) struct Planned {
    pub(crate) summary: Summary,
    pub(crate) mixes: Vec<Mix>,
    pub(crate) portions: Vec<Portion>,
    pub(crate) looks: u32,
    /// Of each order.
    pub(crate) first_seed: Vec<Option<Time>>,
}

pub(crate) fn run(job: Job<'_>) -> Result<Planned, Error> {
    let mut room = Room::of(&job);
    if let Some(labels) = std::env::var("HILUM_LABELS").ok().and_then(|it| it.parse::<usize>().ok()) {
        room.labels = labels;
        room.contents = labels * job.tanks.len();
    }
    loop {
        match run_in(job, room) {
            Err(Error::TooMany { counted: hilum::batch::Counted::Mixes, limit })
                if limit < hilum::batch::MAX_MIXES =>
            {
                room.pours = (room.pours * 8).min(hilum::batch::MAX_MIXES);
            }
            planned => return planned,
        }
    }
}

/// In so much memory.
pub(crate) fn run_in(job: Job<'_>, room: Room) -> Result<Planned, Error> {
    let mut numbers = vec![0.0; room.numbers];
    let mut fills = vec![Fill::default(); room.fills];
    let mut pours = vec![Pour::default(); room.pours];
    let mut labels = vec![Label::default(); room.labels];
    let mut contents = vec![Content::default(); room.contents];
    let memory = Memory {
        numbers: &mut numbers,
        fills: &mut fills,
        pours: &mut pours,
        labels: &mut labels,
        contents: &mut contents,
    };
    let plan = plan(job, memory)?;
    let (mixes, portions) = plan.room();
    let mut mixes = vec![Mix::default(); mixes];
    let mut portions = vec![Portion::default(); portions];
    let (m, p) = plan.write(&mut mixes, &mut portions)?;
    assert!((m, p) <= plan.room(), "the room asked for is enough");
    mixes.truncate(m);
    portions.truncate(p);
    let first_seed = (0..job.orders.len()).map(|order| plan.first_seed(order)).collect();
    Ok(Planned { summary: plan.summary(), mixes, portions, looks: plan.looks(), first_seed })
}

pub(crate) fn litres(value: f64) -> Volume {
    Volume::new::<liter>(value)
}

pub(crate) fn seconds(value: f64) -> Time {
    Time::new::<second>(value)
}

pub(crate) fn hours(value: f64) -> Time {
    seconds(value * 3600.0)
}

pub(crate) fn order(kg: f64, kg_per_hour: f64, changeover_minutes: f64) -> Order {
    Order {
        mass: Mass::new::<kilogram>(kg),
        speed: Some(MassFlow::new::<kilogram_per_second>(kg_per_hour / 3600.0)),
        changeover: seconds(changeover_minutes * 60.0),
    }
}

/// mL of slurry per kg.
#[expect(clippy::unnecessary_wraps, reason = "the planner's table holds needs and gaps")]
pub(crate) fn need(ml_per_kg: f64, recipe: u32, living: f64) -> Option<Need> {
    let per_mass: VolumePerMass = Volume::new::<liter>(ml_per_kg * 1e-3) / Mass::new::<kilogram>(1.0);
    Some(Need { per_mass, recipe, living })
}

pub(crate) fn set(litres_living: f64, rank: f64) -> SetSize {
    SetSize { adds: litres(litres_living), stock: None, ranks: [rank, 0.0] }
}

pub(crate) fn tank(
    capacity: f64,
    mixing_minutes: f64,
    pot_life_hours: Option<f64>,
    filling: Filling<'_>,
) -> Tank<'_> {
    Tank {
        capacity: litres(capacity),
        hold_up: litres(0.0),
        mixing: seconds(mixing_minutes * 60.0),
        refill: Refill::WhenEmpty,
        pot_life: pot_life_hours.map(hours),
        filling,
    }
}

pub(crate) fn shift(from_hour: f64, to_hour: f64) -> Shift {
    Shift { from: hours(from_hour), to: hours(to_hour) }
}
