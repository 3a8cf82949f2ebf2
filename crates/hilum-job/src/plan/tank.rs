//! A tank as a plan writes it: recipes, draws, and every mix with what to pour.

use alloc::vec::Vec;

use hilum::batch::{Mix, Portion};
use hilum::quantity::{Measure, Volume};

use super::batch::Batches;
use super::clock::{Rounded, instant};
use super::draft::Draft;
use super::out::{DRY, LIQUID, SEED_MASS};
use super::recipe::{Recipe, TankWork, draws, recipes};
use crate::document::{Batch, BatchOrder, BatchSets, PlannedTank, Pour};

/// One tank.
pub(crate) fn tank(
    draft: &Draft<'_, '_>,
    work: &TankWork,
    batches: &Batches,
    index: usize,
) -> Option<PlannedTank> {
    let tank = draft.model.tanks.get(index)?;
    let written = batches.of_tank(index).filter_map(|(mix, portions)| {
        batch(draft, work, batches.ruling.get(index).copied().flatten(), mix, portions)
    });
    Some(PlannedTank {
        tank: tank.doc.tank.clone(),
        recipes: recipes(draft, work),
        orders: draws(draft, tank, work),
        batches: written.collect(),
    })
}

/// The recipe that a mix follows: its first order's.
pub(crate) fn recipe<'w>(work: &'w TankWork, portions: &[Portion]) -> Option<&'w Recipe> {
    let order = portions.first()?.order;
    let place = work.orders.partition_point(|draw| draw.order < order);
    work.recipes.get(work.orders.get(place)?.recipe)
}

fn batch(
    draft: &Draft<'_, '_>,
    work: &TankWork,
    ruling: Option<usize>,
    mix: &Mix,
    portions: &[Portion],
) -> Option<Batch> {
    let units = draft.units();
    let recipe = recipe(work, portions)?;
    let times = mix.times;
    Some(Batch {
        number: mix.number,
        mix_at: times.and_then(|times| instant(draft, times.mix_at.value, Rounded::Down)),
        ready_at: times.and_then(|times| instant(draft, times.ready_at.value, Rounded::Up)),
        done_at: times.and_then(|times| instant(draft, times.done_at.value, Rounded::Up)),
        use_by: times.and_then(|times| instant(draft, times.use_by?.value, Rounded::Down)),
        pour: pours(draft, recipe, mix),
        mixed: LIQUID.of(mix.mixed, units),
        sets: sets(draft, ruling, mix),
        orders: portions
            .iter()
            .filter_map(|portion| {
                let order = draft.order(portion.order)?.doc.order.clone();
                Some(BatchOrder { order, mass: SEED_MASS.of(portion.mass, units) })
            })
            .collect(),
        applied: LIQUID.of(mix.applied, units),
        hold_up: LIQUID.of(mix.hold_up, units),
        discarded: LIQUID.of(mix.discarded, units),
    })
}

/// Each part of the recipe, in its order, water last.
fn pours(draft: &Draft<'_, '_>, recipe: &Recipe, mix: &Mix) -> Vec<Pour> {
    let units = draft.units();
    let share = |share: hilum::seed::Share| Volume::from_base(share.number() * mix.mixed.value);
    let product = |(t, part): &(usize, hilum::seed::Share)| {
        let treatment = draft.lines.get(*t)?.treatment;
        let volume = share(*part);
        let mass = treatment.density.map(|density| DRY.of(volume * density.get(), units));
        let product = Some(treatment.doc.product.clone());
        Some(Pour { product, water: None, volume: LIQUID.of(volume, units), mass })
    };
    let water = (recipe.water.number() > 0.0).then(|| Pour {
        product: None,
        water: Some(true),
        volume: LIQUID.of(share(recipe.water), units),
        mass: None,
    });
    recipe.parts.iter().filter_map(product).chain(water).collect()
}

fn sets(draft: &Draft<'_, '_>, ruling: Option<usize>, mix: &Mix) -> Vec<BatchSets> {
    let Some(line) = ruling.and_then(|t| draft.lines.get(t)) else { return Vec::new() };
    let packs = line.treatment.packs.iter().zip(mix.sets);
    packs
        .filter(|(_, sets)| *sets > 0)
        .map(|(pack, sets)| BatchSets { pack: pack.doc.pack.clone(), sets })
        .collect()
}
