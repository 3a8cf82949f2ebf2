//! What goes in each tank: the mix of every order, and which orders share one.

use alloc::format;
use alloc::vec::Vec;

use hilum::mix::{Slurry, keeps_recipe};
use hilum::rate::RatePerMass;
use hilum::seed::Share;
use hilum::treater::PumpSetting;

use super::dose::Rate;
use super::draft::Draft;
use super::out::{FLOW, LIQUID, LIQUID_PER_MASS};
use crate::digits::{Told, to_places};
use crate::document::{self, RecipePart, TankOrder};
use crate::list::keep;
use crate::model::ask::shown;
use crate::model::order::Order;
use crate::model::tank::{Feed, Tank, Treater};
use crate::problem::{Gathered, Pointer, Problems, quoted};

/// A tank's work.
#[derive(Debug)]
pub(crate) struct TankWork {
    /// The orders that draw from it, in running order.
    pub(crate) orders: Vec<Draw>,
    pub(crate) recipes: Vec<Recipe>,
}

/// One order's draw from a tank.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Draw {
    pub(crate) order: usize,
    pub(crate) slurry: Slurry,
    /// Which of the tank's recipes it gets.
    pub(crate) recipe: usize,
}

/// The composition of a mix.
#[derive(Debug)]
pub(crate) struct Recipe {
    pub(crate) orders: Vec<usize>,
    /// Treatments and their shares, in the job's order.
    pub(crate) parts: Vec<(usize, Share)>,
    pub(crate) water: Share,
}

impl Recipe {
    /// A product's share; none of it is 0.
    pub(crate) fn share(&self, treatment: usize) -> Share {
        self.parts.iter().find(|(t, _)| *t == treatment).map_or(Share::NONE, |(_, share)| *share)
    }
}

/// The work of every tank.
pub(crate) fn tanks(draft: &Draft<'_, '_>) -> Result<Vec<TankWork>, Problems> {
    let mut gathered = Gathered::default();
    let root = Pointer::Root;
    let at = root.field("tanks");
    let mut works = Vec::new();
    for (k, tank) in draft.model.tanks.iter().enumerate() {
        keep(&mut works, work(draft, k, tank, &at.item(k), &mut gathered));
    }
    gathered.settle(Some(works).filter(|works| works.len() == draft.model.tanks.len()))
}

fn work(
    draft: &Draft<'_, '_>,
    index: usize,
    tank: &Tank<'_>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<TankWork> {
    let mut work = TankWork { orders: Vec::new(), recipes: Vec::new() };
    for order in 0..draft.model.orders.len() {
        let mut products: Vec<(usize, RatePerMass)> = Vec::new();
        for (t, line, dose) in draft.on_order(order) {
            if let (true, Rate::Liquid(rate)) = (line.treatment.tank == Some(index), dose.rate) {
                products.push((t, rate));
            }
        }
        if products.is_empty() {
            continue;
        }
        let slurry = slurry(draft, order, &products, tank, at, gathered)?;
        let mut own: Vec<(usize, Share)> = Vec::new();
        for (t, rate) in products {
            own.push((t, slurry.share(rate).ok()?));
        }
        let kept = work.recipes.last_mut().filter(|recipe| keeps(recipe, &own, draft.model.recipe_tolerance));
        match kept {
            Some(recipe) => recipe.orders.push(order),
            None => {
                work.recipes.push(Recipe {
                    orders: alloc::vec![order],
                    parts: own,
                    water: slurry.water_share(),
                });
            }
        }
        let recipe = work.recipes.len().saturating_sub(1);
        work.orders.push(Draw { order, slurry, recipe });
    }
    Some(work)
}

fn slurry(
    draft: &Draft<'_, '_>,
    order: usize,
    products: &[(usize, RatePerMass)],
    tank: &Tank<'_>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Slurry> {
    Slurry::of(products.iter().map(|(_, rate)| *rate), tank.water)
        .map_err(|error| {
            let name = quoted(draft.order(order).map_or("", |order| order.doc.order.as_str()));
            let message = match error {
                hilum::Error::TooLittle { least, .. } => {
                    let least = LIQUID_PER_MASS.base(least, draft.units());
                    format!(
                        "is less than the products alone for order {name}; give {} {} or more",
                        // Never less than they are: what is told must be taken.
                        to_places(hilum::math::ceil(least.value * 1e4) / 1e4, 4),
                        least.unit
                    )
                }
                other => {
                    let other = Told(other);
                    format!("cannot be mixed for order {name}: {other}")
                }
            };
            let (field, doc) = match (&tank.doc.make_up_to, &tank.doc.water) {
                (None, Some(doc)) => ("water", Some(doc)),
                (doc, _) => ("make_up_to", doc.as_ref()),
            };
            gathered.add(&at.field(field), doc.map(shown), message);
        })
        .ok()
}

/// Whether an order may be treated with the mix that is there.
fn keeps(recipe: &Recipe, own: &[(usize, Share)], tolerance: Share) -> bool {
    let share = |t: usize| own.iter().find(|(own, _)| *own == t).map_or(Share::NONE, |(_, share)| *share);
    let there = recipe.parts.iter().map(|(t, in_recipe)| (*in_recipe, share(*t)));
    let missing = own.iter().filter(|(t, _)| recipe.parts.iter().all(|(part, _)| part != t));
    keeps_recipe(there.chain(missing.map(|(_, own)| (Share::NONE, *own))), tolerance)
}

/// A tank's recipes as a plan writes them.
pub(crate) fn recipes(draft: &Draft<'_, '_>, work: &TankWork) -> Vec<document::Recipe> {
    let mut written = Vec::new();
    for recipe in &work.recipes {
        let mut orders = Vec::new();
        for order in &recipe.orders {
            if let Some(order) = draft.order(*order) {
                orders.push(order.doc.order.clone());
            }
        }
        written.push(document::Recipe { orders, parts: parts(draft, recipe) });
    }
    written
}

fn parts(draft: &Draft<'_, '_>, recipe: &Recipe) -> Vec<RecipePart> {
    let mut parts = Vec::new();
    for (t, share) in &recipe.parts {
        let product = draft.lines.get(*t).map(|line| line.treatment.doc.product.clone());
        parts.push(RecipePart { product, water: None, share: share.number() });
    }
    let share = recipe.water.number();
    if share > 0.0 {
        parts.push(RecipePart { product: None, water: Some(true), share });
    }
    parts
}

/// What the pump must do for an order.
pub(crate) struct PumpWork {
    pub(crate) flow: Option<hilum::treater::Flow>,
    pub(crate) setting: Option<PumpSetting>,
}

/// The pump's flow and setting for a draw.
pub(crate) fn pump(tank: &Tank<'_>, treater: &Treater, order: &Order<'_>, draw: &Draw) -> PumpWork {
    let own = order.seed_flow.or(match treater.feed {
        Some(Feed::Flow(flow)) => Some(flow),
        _ => None,
    });
    let flow = own.map(|seed| seed.liquid(draw.slurry.rate()));
    let curve = tank.pump.as_ref().and_then(|pump| pump.curve.as_ref());
    PumpWork { flow, setting: curve.zip(flow).map(|(curve, flow)| curve.setting(flow)) }
}

/// A tank's draws as a plan writes them.
pub(crate) fn draws(draft: &Draft<'_, '_>, tank: &Tank<'_>, work: &TankWork) -> Vec<TankOrder> {
    let treater = &draft.model.treater;
    let units = draft.units();
    let mut written = Vec::new();
    for draw in &work.orders {
        let Some(order) = draft.order(draw.order) else { continue };
        let pump = pump(tank, treater, order, draw);
        let per_charge = match (treater.feed, order.seed_flow) {
            (_, Some(_)) => None,
            (Some(Feed::Charges(batch)), _) => Some(batch.per_charge(draw.slurry.rate())),
            (Some(Feed::Charge(charge)), _) => draw.slurry.rate().needed(charge).ok(),
            _ => None,
        };
        written.push(TankOrder {
            order: order.doc.order.clone(),
            slurry: LIQUID_PER_MASS.of(draw.slurry.rate().get(), units),
            flow: pump.flow.map(|flow| FLOW.of(flow.get(), units)),
            setting: match pump.setting {
                Some(PumpSetting::Inside(setting)) => Some(setting.number()),
                _ => None,
            },
            per_charge: per_charge.map(|volume| LIQUID.of(volume, units)),
        });
    }
    written
}
