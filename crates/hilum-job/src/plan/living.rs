//! How alive the seed is when it is treated and when it is planted, and until when it may be planted.

use alloc::vec::Vec;

use hilum::quantity::{Measure, Time};
use hilum::rate::{CellCount, PerSeed};
use hilum::viability::{Because, Life, Period, PlantBy, Survival, plant_by};

use super::batch::{Batches, since};
use super::clock::{Rounded, instant};
use super::draft::{Dose, Draft};
use super::out::Written;
use crate::document::{LivingCells, PlantByReason};
use crate::list::keep;
use crate::model::after::Planting;
use crate::model::living::Living;

/// A living product on one order's seed.
#[derive(Clone, Debug)]
pub(crate) struct LivingFacts {
    pub(crate) at_treating: PerSeed<CellCount>,
    /// On planting day, when that and the survival are known.
    pub(crate) at_planting: Option<PerSeed<CellCount>>,
    pub(crate) minimum: Option<PerSeed<CellCount>>,
    /// From the first seed treated to planting, when known; negative when planting comes first.
    pub(crate) planted_after: Option<f64>,
    /// The last moment to plant, as time since the first seed treated.
    pub(crate) plant_by: Option<(f64, Because)>,
    /// The shortest life on seed that is declared, its own or beside a partner.
    pub(crate) life: Option<Life>,
    /// Seconds of the planner's clock when the first seed is treated.
    pub(crate) treated_from: Option<f64>,
    /// The survival depends on a temperature that the storage does not say.
    pub(crate) storage_missing: bool,
}

/// By treatment and place in its line: nothing for what is not alive.
pub(crate) fn all(draft: &Draft<'_, '_>, batches: &Batches) -> Vec<Vec<Option<LivingFacts>>> {
    let mut all = Vec::new();
    for (t, line) in draft.lines.iter().enumerate() {
        let mut own = Vec::new();
        for dose in &line.doses {
            own.push(facts(draft, batches, t, dose));
        }
        all.push(own);
    }
    all
}

fn facts(draft: &Draft<'_, '_>, batches: &Batches, treatment: usize, dose: &Dose) -> Option<LivingFacts> {
    let treated_from = batches.first_seed.get(dose.order).copied().flatten();
    let planted_after = match draft.order(dose.order)?.after.planting {
        Some(Planting::After(time)) => Some(time.value),
        Some(Planting::On(planting)) => treated_from.map(|from| since(draft, planting) - from),
        None => None,
    };
    let facts = follow(draft, treatment, dose.order, dose.cells?, planted_after)?;
    Some(LivingFacts { treated_from, ..facts })
}

/// Follows so many living cells on each seed of an order from treating to planting.
pub(crate) fn follow(
    draft: &Draft<'_, '_>,
    treatment: usize,
    order: usize,
    at_treating: PerSeed<CellCount>,
    planted_after: Option<f64>,
) -> Option<LivingFacts> {
    let living = draft.lines.get(treatment)?.treatment.living.as_ref()?;
    let after = &draft.order(order)?.after;
    let storage: Vec<Period> = after.storage.iter().map(|(period, _)| *period).collect();
    let survival = living.survival.filter(|survival| !survival.needs_temperature() || !storage.is_empty());
    let at_planting = survival
        .zip(planted_after.filter(|time| *time >= 0.0))
        .and_then(|(survival, time)| survival.count(at_treating, &storage, Time::from_base(time)).ok());
    let partners = partners(draft, treatment, order);
    Some(LivingFacts {
        at_treating,
        at_planting,
        minimum: living.minimum,
        planted_after,
        plant_by: last_moment(living, survival, at_treating, &storage, &partners),
        life: partners
            .iter()
            .copied()
            .chain(living.on_seed_life)
            .min_by(|a, b| a.get().value.total_cmp(&b.get().value)),
        treated_from: None,
        storage_missing: living.survival.is_some() && survival.is_none(),
    })
}

/// What the partners on the same seed leave of its life.
fn partners(draft: &Draft<'_, '_>, living: usize, order: usize) -> Vec<Life> {
    let mut partners = Vec::new();
    for (_, line, _) in draft.on_order(order) {
        for with in line.treatment.with_living.iter().filter(|with| with.living == living) {
            keep(&mut partners, with.life);
        }
    }
    partners
}

fn last_moment(
    living: &Living,
    survival: Option<Survival>,
    at_treating: PerSeed<CellCount>,
    storage: &[Period],
    partners: &[Life],
) -> Option<(f64, Because)> {
    let crossing = survival
        .zip(living.minimum)
        .map(|(survival, minimum)| survival.crossing(at_treating, minimum, storage));
    match plant_by(living.on_seed_life, partners, crossing) {
        PlantBy::Within(time, because) => Some((time.value, because)),
        // Too few from the start: not a moment later than treating.
        PlantBy::NotAtAll => Some((0.0, Because::Minimum)),
        PlantBy::Unlimited => None,
    }
}

/// As a plan writes it.
pub(crate) fn written(draft: &Draft<'_, '_>, facts: &LivingFacts) -> LivingCells {
    let units = draft.units();
    let by = facts
        .treated_from
        .zip(facts.plant_by)
        .and_then(|(from, (time, because))| Some((instant(draft, from + time, Rounded::Down)?, because)));
    let because = by.as_ref().map(|(_, because)| reason(*because));
    LivingCells {
        at_treating: facts.at_treating.out(units),
        at_planting: facts.at_planting.map(|cells| cells.out(units)),
        minimum: facts.minimum.map(|cells| cells.out(units)),
        plant_by: by.map(|(by, _)| by),
        because,
    }
}

/// What sets the last moment to plant, as documents write it.
pub(crate) fn reason(because: Because) -> PlantByReason {
    match because {
        Because::OnSeedLife => PlantByReason::OnSeedLife,
        Because::Partner => PlantByReason::Partner,
        Because::Minimum => PlantByReason::Minimum,
    }
}
