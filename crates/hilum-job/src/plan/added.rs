//! What whole sets of a tank's living product add to its mixes.
//!
//! What can be got out of a set's parts is the same in every mix; coverage × rate is not: it follows the dose,
//! and so the recipe. The planner knows one volume per set and takes the rest from the product's share of the
//! recipe, which holds for packs whose volumes change alike from recipe to recipe. Packs that change otherwise
//! (one covers a mass, another a number of seeds) cannot be offered together: the plan then keeps to those that
//! go together, and is not said to be the best.

use alloc::vec::Vec;

use hilum::quantity::Volume;

use super::draft::{Dose, Draft, Line};
use super::pack::adds;
use super::recipe::{Recipe, TankWork};

/// Volumes nearer than this are the same.
const SAME: f64 = 1e-9;

/// The packs that a tank's mixes are filled from.
#[derive(Debug, Default)]
pub(crate) struct Added {
    /// Each offered pack's place among the product's, and the least that its set adds to any recipe, in m³.
    pub(crate) packs: Vec<(usize, f64)>,
    /// By recipe: what a set adds to it, over that least.
    over_least: Vec<f64>,
    /// Packs that could not be offered beside these.
    pub(crate) left_out: usize,
}

/// What one pack's set adds.
struct Volumes {
    place: usize,
    least: f64,
    over_least: Vec<f64>,
    usage: Usage,
}

/// What a pack is good for in its tank.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Usage {
    /// A set's mix does not fit into it in every recipe, or there is no set.
    None,
    /// As long as the stock lasts.
    Stocked,
    Always,
}

impl Added {
    /// The packs of a product for a tank's recipes: of packs that do not go together, those that fit
    /// and do not run out.
    pub(crate) fn of(draft: &Draft<'_, '_>, treatment: usize, capacity: Volume, work: &TankWork) -> Self {
        let Some(line) = draft.lines.get(treatment) else { return Self::default() };
        let doses: Vec<Option<&Dose>> = work
            .recipes
            .iter()
            .map(|recipe| recipe.orders.first().and_then(|order| dose_on(line, *order)))
            .collect();
        let packs = 0..line.treatment.packs.len();
        // The most that a set may add to each recipe.
        let room = |recipe: &Recipe| capacity.value * recipe.share(treatment).number() * (1.0 + SAME);
        let rooms: Vec<f64> = work.recipes.iter().map(room).collect();
        let volumes: Vec<Volumes> =
            packs.filter_map(|place| volumes(draft, line, &doses, &rooms, place)).collect();
        let together = |own: &Volumes| volumes.iter().filter(|other| alike(own, other)).count();
        let best = |own: &Volumes| {
            let usages = volumes.iter().filter(|other| alike(own, other)).map(|other| other.usage);
            (usages.clone().max(), usages.filter(|usage| *usage == Usage::Always).count())
        };
        // Of equals the first: `max_by_key` would take the last.
        let Some(lead) = volumes.iter().rev().max_by_key(|own| (best(own), together(own))) else {
            return Self::default();
        };
        let offered: Vec<_> = volumes.iter().filter(|other| alike(lead, other)).collect();
        Self {
            left_out: volumes.len().saturating_sub(offered.len()),
            packs: offered.iter().map(|pack| (pack.place, pack.least)).collect(),
            over_least: lead.over_least.clone(),
        }
    }

    /// The product's share of a recipe by which the planner's volume of a set becomes slurry.
    pub(crate) fn share(&self, recipe: usize, own: f64) -> f64 {
        own / self.over_least.get(recipe).copied().unwrap_or(1.0)
    }
}

/// The dose of a product on an order.
fn dose_on<'l>(line: &'l Line<'_, '_>, order: usize) -> Option<&'l Dose> {
    let place = line.doses.partition_point(|dose| dose.order < order);
    line.doses.get(place).filter(|dose| dose.order == order)
}

fn volumes(
    draft: &Draft<'_, '_>,
    line: &Line<'_, '_>,
    doses: &[Option<&Dose>],
    rooms: &[f64],
    place: usize,
) -> Option<Volumes> {
    let pack = line.treatment.packs.get(place)?;
    let added = |dose: Option<&Dose>| {
        dose.and_then(|dose| adds(draft, line, pack, dose)).map(super::dose::Amount::base)
    };
    let added: Vec<Option<f64>> = doses.iter().copied().map(added).collect();
    let least = added.iter().copied().flatten().reduce(f64::min)?;
    let over_least = added.iter().map(|added| added.map_or(1.0, |added| added / least)).collect();
    let fits = added.iter().zip(rooms).all(|(added, room)| added.is_none_or(|added| added <= *room));
    let usage = match pack.doc.on_hand {
        None if fits => Usage::Always,
        Some(1..) if fits => Usage::Stocked,
        _ => Usage::None,
    };
    Some(Volumes { place, least, over_least, usage })
}

/// Whether what two packs' sets add changes alike from recipe to recipe.
fn alike(one: &Volumes, other: &Volumes) -> bool {
    one.over_least.iter().zip(&other.over_least).all(|(a, b)| (a / b - 1.0).abs() <= SAME)
}
