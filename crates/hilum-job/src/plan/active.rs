//! Active ingredients on each order's seed, summed over products and what is already there.

use alloc::vec;
use alloc::vec::Vec;

use hilum::limit::{SeasonLimit, total_on_seed};
use hilum::rate::{ActivePerMass, ActivePerSeed};

use super::draft::Draft;
use super::out::{SOWING, Written};
use crate::document::PlannedActive;
use crate::list::keep;
use crate::model::ActiveLimit;
use crate::places::Places;

/// One active on one order's seed.
#[derive(Clone, Copy, Debug)]
pub(crate) struct OnSeed<'j> {
    pub(crate) active: &'j str,
    pub(crate) order: usize,
    pub(crate) per_seed: ActivePerSeed,
    pub(crate) per_mass: ActivePerMass,
    /// Place in the job's list of limits.
    pub(crate) limit: Option<usize>,
    pub(crate) season: Option<SeasonLimit>,
}

/// Every active on every order's seed, in running order.
pub(crate) fn on_seed<'j>(draft: &Draft<'_, 'j>) -> Vec<OnSeed<'j>> {
    let mut all = Vec::new();
    for order in 0..draft.model.orders.len() {
        all.append(&mut of_order(draft, order));
    }
    all
}

fn of_order<'j>(draft: &Draft<'_, 'j>, index: usize) -> Vec<OnSeed<'j>> {
    let Some(order) = draft.order(index) else { return Vec::new() };
    let size = order.seed.size;
    let mut doses: Vec<(&'j str, ActivePerSeed)> = Vec::new();
    for (_, line, dose) in draft.on_order(index) {
        for ((name, _), rate) in line.treatment.actives.iter().zip(&dose.actives) {
            keep(&mut doses, rate.map(|rate| (*name, rate.per_seed(size))));
        }
    }
    summed(draft, index, doses)
}

/// The sums of the doses of actives on an order's seed, with what was on it before.
pub(crate) fn summed<'j>(
    draft: &Draft<'_, 'j>,
    index: usize,
    mut doses: Vec<(&'j str, ActivePerSeed)>,
) -> Vec<OnSeed<'j>> {
    let Some(order) = draft.order(index) else { return Vec::new() };
    let size = order.seed.size;
    doses.extend_from_slice(&order.on_seed);
    // In the order in which they were met, each with its doses.
    let mut places = Places::default();
    let mut actives: Vec<(&'j str, Vec<ActivePerSeed>)> = Vec::new();
    for (name, dose) in doses {
        let place = places.first(name, actives.len());
        match actives.get_mut(place) {
            Some((_, doses)) => doses.push(dose),
            None => actives.push((name, vec![dose])),
        }
    }
    let mut sums = Vec::new();
    for (active, doses) in actives {
        let Ok(per_seed) = total_on_seed(doses) else { continue };
        let limit = draft.model.limits.get(active);
        let season = limit.and_then(|limit| draft.model.actives.get(limit)).and_then(season);
        sums.push(OnSeed {
            active,
            order: index,
            per_seed,
            per_mass: per_seed.per_mass(size),
            limit,
            season,
        });
    }
    sums
}

fn season(limit: &ActiveLimit<'_>) -> Option<SeasonLimit> {
    SeasonLimit::new(limit.season_limit?, limit.season_used).ok()
}

/// An active as a plan writes it.
pub(crate) fn active(draft: &Draft<'_, '_>, on_seed: &OnSeed<'_>) -> Option<PlannedActive> {
    let order = draft.order(on_seed.order)?;
    let units = draft.units();
    let sown = order.seed.sown;
    Some(PlannedActive {
        active: on_seed.active.into(),
        order: order.doc.order.clone(),
        per_seed: on_seed.per_seed.out(units),
        per_mass: on_seed.per_mass.out(units),
        per_area: sown.map(|sown| on_seed.per_seed.per_area(sown).out(units)),
        share_of_season_limit: on_seed
            .season
            .zip(sown)
            .map(|(season, sown)| season.share(on_seed.per_seed, sown)),
        max_sowing: on_seed.season.map(|season| SOWING.of(season.max_sowing(on_seed.per_seed), units)),
    })
}
