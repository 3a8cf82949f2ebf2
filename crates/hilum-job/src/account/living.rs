//! How alive the seed is at the rate that was achieved, and until when it may be planted.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::Day;
use super::order::{Applied, Done};
use crate::document::AppliedCells;
use crate::model::after::Planting;
use crate::model::run::RunOrder;
use crate::plan::clock::{self, Rounded};
use crate::plan::out::Written;
use crate::plan::{LivingFacts, draft, follow, reason};

/// Each living product that was read, by its place in the job.
pub(crate) fn all(day: &Day<'_, '_>, read: &RunOrder<'_>, done: &Done) -> Vec<(usize, LivingFacts)> {
    let mut all = Vec::new();
    for applied in done.applied() {
        if let Some(facts) = facts(day, read, done, applied) {
            all.push((applied.treatment, facts));
        }
    }
    all
}

fn facts(day: &Day<'_, '_>, read: &RunOrder<'_>, done: &Done, applied: &Applied) -> Option<LivingFacts> {
    let draft = &day.draft;
    let line = draft.lines.get(applied.treatment)?;
    let order = draft.order(done.order)?;
    let label = line.label(order);
    let cells = draft::cells(&label, applied.rate).ok().flatten()?;
    let planted_after = match order.after.planting {
        Some(Planting::After(time)) => Some(time.value),
        Some(Planting::On(planting)) => read.from.map(|from| clock::between(from, planting)),
        None => None,
    };
    follow(draft, applied.treatment, done.order, cells, planted_after)
}

/// As an account writes it.
pub(crate) fn written(
    day: &Day<'_, '_>,
    read: &RunOrder<'_>,
    (treatment, facts): &(usize, LivingFacts),
) -> Option<AppliedCells> {
    let units = day.draft.units();
    let by = read.from.zip(facts.plant_by).and_then(|(from, (time, because))| {
        Some((clock::after(from, time, Rounded::Down)?, reason(because)))
    });
    let (plant_by, because) = by.unzip();
    Some(AppliedCells {
        product: day.draft.lines.get(*treatment)?.treatment.doc.product.clone(),
        at_treating: facts.at_treating.out(units),
        at_planting: facts.at_planting.map(|cells| cells.out(units)),
        minimum: facts.minimum.map(|minimum| minimum.out(units)),
        plant_by,
        because,
    })
}

/// The day before which the inoculants work: the earliest last moment of all of them. Nothing is promised
/// where one of them was not read or states no life.
pub(crate) fn use_before(
    day: &Day<'_, '_>,
    read: &RunOrder<'_>,
    done: &Done,
    alive: &[(usize, LivingFacts)],
) -> Option<String> {
    let products = day.draft.on_order(done.order).filter(|(_, line, _)| line.treatment.living.is_some());
    if products.count() != alive.len() {
        return None;
    }
    let mut earliest: Option<f64> = None;
    for (_, facts) in alive {
        let (last, _) = facts.plant_by?;
        earliest = Some(earliest.map_or(last, |earliest| earliest.min(last)));
    }
    Some(clock::day_after(read.from?, earliest?)?.to_string())
}
