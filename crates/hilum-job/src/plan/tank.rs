//! A tank as a plan writes it: recipes, draws, and every mix with what to pour.

use alloc::vec::Vec;

use hilum::batch::{Mix, Portion};
use hilum::quantity::{Measure, Volume};
use hilum::seed::Share;

use super::batch::Batches;
use super::clock::{Rounded, instant};
use super::draft::Draft;
use super::out::{DRY, LIQUID, SEED_MASS};
use super::recipe::{Recipe, TankWork, draws, recipes};
use crate::document::{Batch, BatchOrder, BatchSets, PlannedTank, Pour};
use crate::model::tank::Tank;

/// One tank.
pub(crate) fn tank(
    draft: &Draft<'_, '_>,
    tank: &Tank<'_>,
    work: &TankWork,
    planned: &Batches,
    index: usize,
) -> PlannedTank {
    let ruling = planned.ruling.get(index).copied().flatten();
    let mut batches = Vec::new();
    for (mix, portions) in planned.of_tank(index) {
        if let Some(recipe) = recipe(work, portions) {
            batches.push(batch(draft, recipe, ruling, mix, portions));
        }
    }
    PlannedTank {
        tank: tank.doc.tank.clone(),
        recipes: recipes(draft, work),
        orders: draws(draft, tank, work),
        batches,
    }
}

/// The recipe that a mix follows: its first order's.
pub(crate) fn recipe<'w>(work: &'w TankWork, portions: &[Portion]) -> Option<&'w Recipe> {
    let order = portions.first()?.order;
    let place = work.orders.partition_point(|draw| draw.order < order);
    work.recipes.get(work.orders.get(place)?.recipe)
}

fn batch(
    draft: &Draft<'_, '_>,
    recipe: &Recipe,
    ruling: Option<usize>,
    mix: &Mix,
    portions: &[Portion],
) -> Batch {
    let units = draft.units();
    let times = mix.times;
    Batch {
        number: mix.number,
        mix_at: times.and_then(|times| instant(draft, times.mix_at.value, Rounded::Down)),
        ready_at: times.and_then(|times| instant(draft, times.ready_at.value, Rounded::Up)),
        done_at: times.and_then(|times| instant(draft, times.done_at.value, Rounded::Up)),
        use_by: times.and_then(|times| instant(draft, times.use_by?.value, Rounded::Down)),
        pour: pours(draft, recipe, mix),
        mixed: LIQUID.of(mix.mixed, units),
        sets: sets(draft, ruling, mix),
        orders: orders(draft, portions),
        applied: LIQUID.of(mix.applied, units),
        hold_up: LIQUID.of(mix.hold_up, units),
        discarded: LIQUID.of(mix.discarded, units),
    }
}

fn orders(draft: &Draft<'_, '_>, portions: &[Portion]) -> Vec<BatchOrder> {
    let mut orders = Vec::new();
    for portion in portions {
        let Some(order) = draft.order(portion.order) else { continue };
        let mass = SEED_MASS.of(portion.mass, draft.units());
        orders.push(BatchOrder { order: order.doc.order.clone(), mass });
    }
    orders
}

/// Each part of the recipe, in its order, water last.
fn pours(draft: &Draft<'_, '_>, recipe: &Recipe, mix: &Mix) -> Vec<Pour> {
    let units = draft.units();
    let volume = |share: Share| Volume::from_base(share.number() * mix.mixed.value);
    let mut pours = Vec::new();
    for (t, share) in &recipe.parts {
        let Some(line) = draft.lines.get(*t) else { continue };
        let volume = volume(*share);
        pours.push(Pour {
            product: Some(line.treatment.doc.product.clone()),
            water: None,
            volume: LIQUID.of(volume, units),
            mass: line.treatment.density.map(|density| DRY.of(volume * density.get(), units)),
        });
    }
    if recipe.water.number() > 0.0 {
        let volume = LIQUID.of(volume(recipe.water), units);
        pours.push(Pour { product: None, water: Some(true), volume, mass: None });
    }
    pours
}

fn sets(draft: &Draft<'_, '_>, ruling: Option<usize>, mix: &Mix) -> Vec<BatchSets> {
    let mut opened = Vec::new();
    let Some(line) = ruling.and_then(|t| draft.lines.get(t)) else { return opened };
    for (pack, sets) in line.treatment.packs.iter().zip(mix.sets) {
        if sets > 0 {
            opened.push(BatchSets { pack: pack.doc.pack.clone(), sets });
        }
    }
    opened
}
