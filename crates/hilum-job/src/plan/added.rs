//! What whole sets of a tank's living product add to its mixes.
//!
//! What can be got out of a set's parts is the same in every mix; coverage × rate is not: it follows the dose,
//! and so the recipe. The planner knows one volume per set and takes the rest from the product's share of the
//! recipe, which holds for packs whose volumes change alike from recipe to recipe. Packs that change otherwise
//! (one covers a mass, another a number of seeds) cannot be offered together: the plan then keeps to those that
//! go together, and is not said to be the best.

use alloc::vec::Vec;

use hilum::quantity::Volume;

use super::draft::Draft;
use super::pack::adds;
use super::recipe::{Recipe, TankWork};
use crate::list::keep;

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
        let mut all = Vec::new();
        for (place, pack) in line.treatment.packs.iter().enumerate() {
            let added = |recipe: &Recipe| {
                let dose = draft.on(*recipe.orders.first()?, treatment)?;
                // The most that a set may add to a recipe.
                let room = capacity.value * recipe.share(treatment).number() * (1.0 + SAME);
                Some((adds(draft, line, pack, dose)?.base(), room))
            };
            keep(&mut all, volumes(work, place, pack.doc.on_hand, added));
        }
        let mut lead: Option<(&Volumes, Merit)> = None;
        for own in &all {
            let merit = merit(own, &all);
            // Of equals the first.
            if lead.is_none_or(|(_, most)| merit > most) {
                lead = Some((own, merit));
            }
        }
        let Some((lead, _)) = lead else { return Self::default() };
        let mut packs = Vec::new();
        for pack in all.iter().filter(|other| alike(lead, other)) {
            packs.push((pack.place, pack.least));
        }
        let left_out = all.len().saturating_sub(packs.len());
        Self { packs, over_least: lead.over_least.clone(), left_out }
    }

    /// The product's share of a recipe by which the planner's volume of a set becomes slurry.
    pub(crate) fn share(&self, recipe: usize, own: f64) -> f64 {
        own / self.over_least.get(recipe).copied().unwrap_or(1.0)
    }
}

/// What speaks for offering a pack and those that go together with it: the best use of one of them, how many
/// always are of use, and how many there are.
type Merit = (Usage, usize, usize);

fn merit(own: &Volumes, all: &[Volumes]) -> Merit {
    let mut merit = (Usage::None, 0_usize, 0_usize);
    for other in all.iter().filter(|other| alike(own, other)) {
        let always = usize::from(other.usage == Usage::Always);
        merit = (merit.0.max(other.usage), merit.1.saturating_add(always), merit.2.saturating_add(1));
    }
    merit
}

/// What a pack's set adds to each recipe, where that and the most it may be are told.
fn volumes(
    work: &TankWork,
    place: usize,
    on_hand: Option<u32>,
    added: impl Fn(&Recipe) -> Option<(f64, f64)>,
) -> Option<Volumes> {
    let (mut over_least, mut least, mut fits) = (Vec::new(), None, true);
    for recipe in &work.recipes {
        let added = added(recipe);
        over_least.push(added.map(|(added, _)| added));
        if let Some((added, room)) = added {
            least = Some(least.map_or(added, |least: f64| least.min(added)));
            fits &= added <= room;
        }
    }
    let least = least?;
    let over_least = over_least.iter().map(|added| added.map_or(1.0, |added| added / least)).collect();
    let usage = match on_hand {
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
