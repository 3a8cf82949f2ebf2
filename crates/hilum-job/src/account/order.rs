//! What one order's seed really got.

use alloc::format;
use alloc::vec::Vec;

use hilum::account::{Achieved, Measured};
use hilum::mix::{WATER, density};
use hilum::quantity::{Mass, Volume};
use hilum::rate::{Density, Dry, Liquid, RatePerMass};

use super::Day;
use crate::document::Weighed;
use crate::list::keep;
use crate::model::ask::shown;
use crate::model::reading::{Drawn, Resolved};
use crate::model::run::{DryRead, RunOrder, TankRead};
use crate::plan::dose::{Amount, Rate};
use crate::plan::draft::Dose;
use crate::plan::recipe::{Draw, Recipe, TankWork};
use crate::problem::{Gathered, Pointer, quoted};

/// One order, worked out.
#[derive(Debug)]
pub(crate) struct Done {
    /// Its place in the job.
    pub(crate) order: usize,
    /// Seed before treating.
    pub(crate) seed: Measured<Mass>,
    pub(crate) resolved: Resolved,
    /// As the run lists them.
    pub(crate) tanks: Vec<TankDone>,
    pub(crate) dry: Vec<DryDone>,
}

impl Done {
    /// Every product that was read, tank by tank, then the dry ones.
    pub(crate) fn applied(&self) -> impl Iterator<Item = &Applied> {
        self.tanks.iter().flat_map(|tank| &tank.products).chain(self.dry.iter().map(|dry| &dry.product))
    }

    /// A product that was read.
    #[inline(never)]
    pub(crate) fn of(&self, treatment: usize) -> Option<&Applied> {
        self.applied().find(|applied| applied.treatment == treatment)
    }
}

/// What one tank gave.
#[derive(Debug)]
pub(crate) struct TankDone {
    /// Its place in the job.
    pub(crate) tank: usize,
    pub(crate) used: Measured<Volume>,
    pub(crate) achieved: Achieved<Liquid>,
    pub(crate) target: RatePerMass,
    pub(crate) resolved: Resolved,
    pub(crate) products: Vec<Applied>,
}

/// What was used of one product that is applied dry.
#[derive(Debug)]
pub(crate) struct DryDone {
    pub(crate) achieved: Achieved<Dry>,
    pub(crate) resolved: Resolved,
    pub(crate) product: Applied,
}

/// One product on the seed.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Applied {
    /// Its place in the job.
    pub(crate) treatment: usize,
    pub(crate) used: Amount,
    pub(crate) rate: Rate,
    pub(crate) target: Rate,
}

/// Mix that was used, before it is known on how much seed.
struct Poured {
    tank: usize,
    draw: Draw,
    used: Measured<Volume>,
    /// Where the mix's density is known.
    mass: Option<Measured<Mass>>,
    resolved: Resolved,
}

/// Works out one order.
pub(crate) fn done(
    day: &Day<'_, '_>,
    read: &RunOrder<'_>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Done> {
    let list = at.field("tanks");
    let mut mixes = Vec::new();
    for (j, tank) in read.tanks.iter().enumerate() {
        keep(&mut mixes, poured(day, read, *tank, &list.item(j), gathered));
    }
    let asked = dry_doses(day, read, &at.field("dry"), gathered);
    if mixes.len() < read.tanks.len() || asked.len() < read.dry.len() {
        return None;
    }
    let seed = match read.weighed {
        Weighed::Before => read.seed,
        Weighed::After => before_treating(day, read, &mixes, at, gathered)?,
    };
    let worked = worked(day, read, seed, &mixes, &asked);
    if worked.is_none() {
        let message = "is too little seed to calculate a rate on; check the readings";
        gathered.add(&at.field("seed"), None, message);
    }
    worked
}

fn worked(
    day: &Day<'_, '_>,
    read: &RunOrder<'_>,
    seed: Measured<Mass>,
    mixes: &[Poured],
    asked: &[(DryRead, &Dose)],
) -> Option<Done> {
    let (mut tanks, mut all_dry) = (Vec::new(), Vec::new());
    for poured in mixes {
        tanks.push(tank(day, read.order, poured, seed)?);
    }
    for (read, dose) in asked {
        all_dry.push(dry(*read, dose, seed)?);
    }
    Some(Done { order: read.order, seed, resolved: read.seed_resolved, tanks, dry: all_dry })
}

/// Mix that a tank gave, by volume.
fn poured(
    day: &Day<'_, '_>,
    read: &RunOrder<'_>,
    tank: TankRead,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Poured> {
    let work = day.tanks.get(tank.tank)?;
    let Some(draw) = draw(work, read.order) else {
        let name = day.draft.model.tanks.get(tank.tank).map(|tank| quoted(&tank.doc.tank));
        let message = format!(
            "is not a tank of order {}, which gets no product from it; list it under the order that it served, \
             or put its products into the order's treat",
            quoted(&read.doc.order)
        );
        gathered.add(&at.field("tank"), name, message);
        return None;
    };
    let recipe = work.recipes.get(draw.recipe)?;
    let density = tank.density.map_or_else(|| mix_density(day, recipe), Ok);
    let (used, mass) = match (tank.drawn, &density) {
        (Drawn::Volume(used), density) => (used, density.as_ref().ok().map(|density| used.weighed(*density))),
        (Drawn::Mass(mass), Ok(density)) => (mass.measured(*density), Some(mass)),
        (Drawn::Mass(_), Err(product)) => {
            no_density(product, "the tank was read by mass", at, gathered);
            return None;
        }
    };
    if read.weighed == Weighed::After
        && let Err(product) = &density
    {
        no_density(product, "the seed was weighed after treating", at, gathered);
        return None;
    }
    Some(Poured { tank: tank.tank, draw: *draw, used, mass, resolved: tank.resolved })
}

fn no_density(product: &str, because: &str, at: &Pointer<'_>, gathered: &mut Gathered) {
    let give =
        format!("the density of the mix here, or that of {} in the job, because {because}", quoted(product));
    gathered.missing(&at.field("density"), &give);
}

/// The density of a mix from those of its parts; else the product that lacks one.
fn mix_density<'d>(day: &'d Day<'_, '_>, recipe: &Recipe) -> Result<Density, &'d str> {
    let mut parts = Vec::new();
    for (t, share) in &recipe.parts {
        let Some(line) = day.draft.lines.get(*t) else { continue };
        let density = line.treatment.density.ok_or(line.treatment.doc.product.as_str())?;
        parts.push((*share, density));
    }
    parts.push((recipe.water, WATER));
    density(parts).map_err(|_| "")
}

/// The dry products that were read, each with the dose that the order asks for.
fn dry_doses<'d>(
    day: &'d Day<'_, '_>,
    read: &RunOrder<'_>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Vec<(DryRead, &'d Dose)> {
    let mut doses = Vec::new();
    for (j, dry) in read.dry.iter().enumerate() {
        if let Some(dose) = day.draft.on(read.order, dry.treatment)
            && matches!(dose.rate, Rate::Dry(_))
        {
            doses.push((*dry, dose));
            continue;
        }
        let name = day.draft.lines.get(dry.treatment).map(|line| quoted(&line.treatment.doc.product));
        let message = format!(
            "is not applied dry to order {}; list it under the order that it served, or its tank under tanks",
            quoted(&read.doc.order)
        );
        gathered.add(&at.item(j).field("product"), name, message);
    }
    doses
}

/// Seed that was weighed with everything on it.
fn before_treating(
    day: &Day<'_, '_>,
    read: &RunOrder<'_>,
    poured: &[Poured],
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Measured<Mass>> {
    let unread = unread_tanks(day, read.order, |k| poured.iter().any(|poured| poured.tank == k));
    if let Some(tank) = unread.first() {
        let message = format!(
            "lacks tank {}, whose mix was weighed with the seed; give its readings, or the seed's mass before treating",
            quoted(tank)
        );
        gathered.add(&at.field("tanks"), None, message);
        return None;
    }
    let mut on_seed = Vec::new();
    for poured in poured {
        keep(&mut on_seed, poured.mass);
    }
    for dry in &read.dry {
        on_seed.push(dry.used);
    }
    let seed = read.seed.before_treating(&on_seed).map_err(|_| {
        let seed = &read.doc.seed;
        let message = "weighs no more than what was put on it; check the readings of seed and tanks";
        let doc = seed.mass.as_ref().or(seed.end.as_ref());
        let value = doc.map(|doc| shown(crate::model::reading::amount(doc).0));
        let name = if seed.mass.is_some() { "mass" } else { "end" };
        gathered.add(&at.field("seed").field(name), value, message);
    });
    seed.ok()
}

/// The tanks that an order draws from and that are not among those read.
pub(crate) fn unread_tanks<'d>(
    day: &'d Day<'_, '_>,
    order: usize,
    read: impl Fn(usize) -> bool,
) -> Vec<&'d str> {
    let mut unread = Vec::new();
    for (k, (work, tank)) in day.tanks.iter().zip(&day.draft.model.tanks).enumerate() {
        if draw(work, order).is_some() && !read(k) {
            unread.push(tank.doc.tank.as_str());
        }
    }
    unread
}

/// What an order draws from a tank.
fn draw(work: &TankWork, order: usize) -> Option<&Draw> {
    // Draws stand in running order.
    work.orders.get(work.orders.partition_point(|draw| draw.order < order)).filter(|draw| draw.order == order)
}

fn tank(day: &Day<'_, '_>, order: usize, poured: &Poured, seed: Measured<Mass>) -> Option<TankDone> {
    let recipe = day.tanks.get(poured.tank)?.recipes.get(poured.draw.recipe)?;
    let mut products = Vec::new();
    for (t, share) in &recipe.parts {
        let used = poured.used.share(*share);
        products.push(Applied {
            treatment: *t,
            used: Amount::Liquid(used.get()),
            rate: Rate::Liquid(Achieved::on(used, seed).ok()?.rate()),
            target: day.draft.on(order, *t)?.rate,
        });
    }
    Some(TankDone {
        tank: poured.tank,
        used: poured.used,
        achieved: Achieved::on(poured.used, seed).ok()?,
        target: poured.draw.slurry.rate(),
        resolved: poured.resolved,
        products,
    })
}

fn dry(read: DryRead, dose: &Dose, seed: Measured<Mass>) -> Option<DryDone> {
    let achieved = Achieved::on(read.used, seed).ok()?;
    Some(DryDone {
        achieved,
        resolved: read.resolved,
        product: Applied {
            treatment: read.treatment,
            used: Amount::Dry(read.used.get()),
            rate: Rate::Dry(achieved.rate()),
            target: dose.rate,
        },
    })
}
