//! Mixes of every tank on one timeline: the core's planner, asked and answered in the job's words.

use alloc::vec;
use alloc::vec::Vec;

use hilum::batch::{
    self, Content, Fill, Filling, Label, Memory, Mix, Need, Portion, Pour, Proof, Room, SetSize,
};
use hilum::quantity::{Mass, MassFlow, Measure, Time, Volume};
use hilum::treater::SeedFlow;

use super::added::Added;
use super::clock;
use super::draft::Draft;
use super::pack::{Size, objective};
use super::recipe::TankWork;
use crate::document::Refill;
use crate::limits::BATCHES;
use crate::list::keep;
use crate::model::after::Instant;
use crate::model::order::Order;
use crate::model::tank::{Feed, Tank};

/// The mixes of a job.
#[derive(Debug, Default)]
pub(crate) struct Batches {
    pub(crate) mixes: Vec<Mix>,
    pub(crate) portions: Vec<Portion>,
    /// Whether the mixes have instants.
    pub(crate) clock: bool,
    /// Seed treated, where there is no time for all of it.
    pub(crate) falls_short: Option<Mass>,
    pub(crate) proven: bool,
    /// Tanks that the smallest set, or nothing at all, fits into.
    pub(crate) too_small: Vec<usize>,
    /// By tank: the living product whose whole sets fill it.
    pub(crate) ruling: Vec<Option<usize>>,
    /// By order: when its first seed is treated, in seconds of the planner's clock.
    pub(crate) first_seed: Vec<Option<f64>>,
    /// Tanks whose product runs out.
    pub(crate) short: Vec<usize>,
}

/// More mixes than a plan may hold.
#[derive(Clone, Copy, Debug)]
pub(crate) struct TooMany;

/// Plans every mix.
pub(crate) fn batches(
    draft: &Draft<'_, '_>,
    tanks: &[TankWork],
    sizes: &[Vec<Size>],
) -> Result<Batches, TooMany> {
    let mut planned = Batches { proven: true, clock: !draft.model.work.is_empty(), ..Batches::default() };
    let (mut all_added, mut set_sizes) = (Vec::new(), Vec::new());
    for (k, (tank, work)) in draft.model.tanks.iter().zip(tanks).enumerate() {
        if tank.capacity <= tank.hold_up.get() && !work.orders.is_empty() {
            planned.too_small.push(k);
        }
        let ruling = ruling(draft, sizes, k);
        let added = ruling.map(|treatment| Added::of(draft, treatment, tank.capacity, work));
        let added = added.unwrap_or_default();
        planned.ruling.push(ruling);
        set_sizes.push(offered(draft, sizes, ruling, &added));
        all_added.push(added);
    }
    let mut orders = Vec::new();
    for order in &draft.model.orders {
        let speed = speed(draft, order);
        planned.clock &= speed.is_some();
        let changeover = draft.model.treater.changeover;
        orders.push(batch::Order { mass: order.seed.mass, speed, changeover });
    }
    let shifts = if planned.clock { shifts(draft) } else { Vec::new() };
    // A tank that nothing fits into is left out, one by one; the others are planned without it.
    for _ in 0..=tanks.len() {
        let mut specs = Vec::new();
        for (k, (tank, sets)) in draft.model.tanks.iter().zip(&set_sizes).enumerate() {
            specs.push(spec(draft, &planned, tank, sets, k));
        }
        let needs = needs(draft, tanks, &planned, &all_added);
        let job = batch::Job { orders: &orders, tanks: &specs, needs: &needs, shifts: &shifts };
        match solve(&job, &mut planned) {
            Ok(()) => {
                if !planned.short.is_empty() {
                    planned.falls_short = with_all_the_product(&job);
                }
                planned.name_packs(&all_added);
                return Ok(planned);
            }
            Err(batch::Error::TankTooSmall { tank }) if !planned.too_small.contains(&tank) => {
                planned.too_small.push(tank);
            }
            Err(_) => return Err(TooMany),
        }
    }
    Err(TooMany)
}

/// The first living product of a tank that comes in sets.
fn ruling(draft: &Draft<'_, '_>, sizes: &[Vec<Size>], tank: usize) -> Option<usize> {
    let lines = draft.lines.iter().zip(sizes).enumerate();
    lines
        .filter(|(_, (line, sizes))| {
            let treatment = line.treatment;
            treatment.tank == Some(tank)
                && treatment.living.is_some()
                && !sizes.is_empty()
                && !line.doses.is_empty()
        })
        .map(|(t, _)| t)
        .next()
}

/// Seed flow × utilisation.
pub(crate) fn speed(draft: &Draft<'_, '_>, order: &Order<'_>) -> Option<MassFlow> {
    let treater = &draft.model.treater;
    let own: Option<SeedFlow> = order.seed_flow.or(match treater.feed {
        Some(Feed::Flow(flow)) => Some(flow),
        Some(Feed::Charges(batch)) => Some(batch.seed_flow()),
        _ => None,
    });
    own?.effective(treater.utilisation).ok().map(SeedFlow::get)
}

/// The sets of a tank's ruling product.
fn offered(
    draft: &Draft<'_, '_>,
    sizes: &[Vec<Size>],
    treatment: Option<usize>,
    added: &Added,
) -> Vec<SetSize> {
    let Some((line, sizes)) = treatment.and_then(|t| Some((draft.lines.get(t)?, sizes.get(t)?))) else {
        return Vec::new();
    };
    let goal = objective(line.treatment.doc.choose);
    let mut offered = Vec::new();
    for (place, adds) in &added.packs {
        let Some((pack, size)) = line.treatment.packs.get(*place).zip(sizes.get(*place)) else { continue };
        let (covers, price) = (size.covers.get().value, pack.doc.price.unwrap_or_default());
        let ranks = match goal {
            hilum::pack::Objective::LeastLeftover => [covers, price],
            hilum::pack::Objective::LeastCost => [price, covers],
            hilum::pack::Objective::FewestSets => [1.0, price],
        };
        offered.push(SetSize { adds: Volume::from_base(*adds), stock: pack.doc.on_hand, ranks });
    }
    offered
}

fn spec<'a>(
    draft: &Draft<'_, '_>,
    planned: &Batches,
    tank: &Tank<'_>,
    sets: &'a [SetSize],
    index: usize,
) -> batch::Tank<'a> {
    batch::Tank {
        capacity: tank.capacity,
        hold_up: if planned.too_small.contains(&index) { Volume::from_base(0.0) } else { tank.hold_up.get() },
        mixing: tank.mixing,
        refill: match tank.refill {
            Refill::WhenEmpty => batch::Refill::WhenEmpty,
            Refill::TopUp => batch::Refill::TopUp,
        },
        pot_life: pot_life(draft, index),
        filling: if sets.is_empty() { Filling::Measured } else { Filling::Sets(sets) },
    }
}

/// The shortest pot life of the living products that go into a tank.
pub(crate) fn pot_life(draft: &Draft<'_, '_>, tank: usize) -> Option<Time> {
    let lines = draft.lines.iter().filter(|line| line.treatment.tank == Some(tank) && !line.doses.is_empty());
    let lives = lines.filter_map(|line| line.treatment.living.as_ref()?.pot_life);
    lives.min_by(|a, b| a.value.total_cmp(&b.value))
}

fn needs(draft: &Draft<'_, '_>, tanks: &[TankWork], planned: &Batches, added: &[Added]) -> Vec<Option<Need>> {
    let width = tanks.len();
    let mut needs = vec![None; draft.model.orders.len().saturating_mul(width)];
    for (k, work) in tanks.iter().enumerate().filter(|(k, _)| !planned.too_small.contains(k)) {
        let ruling = planned.ruling.get(k).copied().flatten();
        let ruled = ruling.zip(added.get(k));
        for draw in &work.orders {
            let place = draw.order.saturating_mul(width).saturating_add(k);
            let living = ruled
                .zip(work.recipes.get(draw.recipe))
                .map_or(0.0, |((t, added), recipe)| added.share(draw.recipe, recipe.share(t).number()));
            let number = u32::try_from(draw.recipe).unwrap_or(u32::MAX);
            if let Some(need) = needs.get_mut(place) {
                *need = Some(Need { per_mass: draw.slurry.rate().get(), recipe: number, living });
            }
        }
    }
    needs
}

/// Shifts in seconds since the first one's whole second.
pub(crate) fn shifts(draft: &Draft<'_, '_>) -> Vec<batch::Shift> {
    let mut shifts = Vec::new();
    for (from, to) in &draft.model.work {
        let seconds = |instant: &Instant| Time::from_base(since(draft, *instant));
        shifts.push(batch::Shift { from: seconds(from), to: seconds(to) });
    }
    shifts
}

/// Seconds of an instant since the whole second in which the first shift starts.
pub(crate) fn since(draft: &Draft<'_, '_>, instant: Instant) -> f64 {
    draft.model.work.first().map_or(0.0, |(first, _)| clock::between(*first, instant))
}

/// What the shifts leave untreated if nothing runs out: who fetches more product wants to know that, too.
fn with_all_the_product(job: &batch::Job<'_>) -> Option<Mass> {
    let mut sizes = Vec::new();
    for tank in job.tanks {
        let mut unlimited = if let Filling::Sets(sizes) = tank.filling { sizes.to_vec() } else { Vec::new() };
        for size in &mut unlimited {
            size.stock = None;
        }
        sizes.push(unlimited);
    }
    let mut tanks = job.tanks.to_vec();
    for (tank, sizes) in tanks.iter_mut().zip(&sizes).filter(|(_, sizes)| !sizes.is_empty()) {
        tank.filling = Filling::Sets(sizes);
    }
    let mut planned = Batches::default();
    // Where more than can be planned would be treated, time is not what lacks first.
    solve(&batch::Job { tanks: &tanks, ..*job }, &mut planned).ok()?;
    planned.falls_short
}

fn solve(job: &batch::Job<'_>, planned: &mut Batches) -> Result<(), batch::Error> {
    let room = Room::of(job);
    let mut numbers = vec![Default::default(); room.numbers];
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
            Ok(plan) => {
                let (mixes, portions) = plan.room();
                planned.mixes = vec![Mix::default(); mixes];
                planned.portions = vec![Portion::default(); portions];
                let (mixes, portions) = plan.write(&mut planned.mixes, &mut planned.portions)?;
                planned.mixes.truncate(mixes);
                planned.portions.truncate(portions);
                planned.first_seed = Vec::new();
                for order in 0..job.orders.len() {
                    planned.first_seed.push(plan.first_seed(order).map(|time| time.value));
                }
                let summary = plan.summary();
                planned.proven = summary.proof != Proof::Bounded;
                let short_of_time = !summary.all_treated && summary.short_of_stock == 0;
                planned.falls_short = short_of_time.then_some(summary.treated);
                planned.short = Vec::new();
                for tank in (0..u32::BITS).filter(|tank| summary.short_of_stock >> tank & 1 == 1) {
                    keep(&mut planned.short, usize::try_from(tank).ok());
                }
                return Ok(());
            }
            Err(batch::Error::TooMany { counted: batch::Counted::Mixes, limit }) if limit < BATCHES => {
                enough = enough.saturating_mul(8).min(BATCHES);
            }
            Err(error) => return Err(error),
        }
    }
}

impl Batches {
    /// From the planner's offered sizes to the product's packs.
    fn name_packs(&mut self, added: &[Added]) {
        for mix in &mut self.mixes {
            let Some(added) = added.get(mix.tank) else { continue };
            let mut named = [0; batch::MAX_SIZES];
            for ((place, _), sets) in added.packs.iter().zip(mix.sets) {
                if let Some(of_pack) = named.get_mut(*place) {
                    *of_pack = sets;
                }
            }
            mix.sets = named;
        }
        self.proven &= added.iter().all(|added| added.left_out == 0);
    }

    /// The mixes of one tank, in order, each with its portions.
    pub(crate) fn of_tank(&self, tank: usize) -> impl Iterator<Item = (&Mix, &[Portion])> {
        self.mixes.iter().enumerate().filter(move |(_, mix)| mix.tank == tank).map(|(i, mix)| {
            let start = self.portions.partition_point(|portion| portion.mix < i);
            let end = self.portions.partition_point(|portion| portion.mix <= i);
            (mix, self.portions.get(start..end).unwrap_or_default())
        })
    }
}
