//! A run whose every field has been looked at.

use alloc::format;
use alloc::vec::Vec;

use hilum::account::{Measured, USUAL_TOLERANCE};
use hilum::quantity::{Mass, Measure};
use hilum::rate::Density;
use hilum::seed::Share;
use hilum::text::Decimal;

use super::after::{Instant, instant};
use super::ask::{field, shown};
use super::name_once;
use super::reading::{Drawdown, Drawn, Resolved, Scale, amount};
use super::treatment::{density, find};
use crate::document::{self, Weighed};
use crate::list::keep;
use crate::places::Places;
use crate::problem::{Gathered, Pointer, Problems, quoted};

/// What was read while a job was run.
#[derive(Debug)]
pub(crate) struct Run<'r> {
    pub(crate) tolerance: Share,
    pub(crate) orders: Vec<RunOrder<'r>>,
}

/// What was read while one order was run.
#[derive(Debug)]
pub(crate) struct RunOrder<'r> {
    pub(crate) doc: &'r document::RunOrder,
    /// Its place in the job.
    pub(crate) order: usize,
    /// As it was weighed.
    pub(crate) seed: Measured<Mass>,
    pub(crate) seed_resolved: Resolved,
    pub(crate) weighed: Weighed,
    pub(crate) tanks: Vec<TankRead>,
    pub(crate) dry: Vec<DryRead>,
    pub(crate) from: Option<Instant>,
    pub(crate) to: Option<Instant>,
}

/// What one tank gave.
#[derive(Clone, Copy, Debug)]
pub(crate) struct TankRead {
    /// Its place in the job.
    pub(crate) tank: usize,
    pub(crate) drawn: Drawn,
    pub(crate) resolved: Resolved,
    pub(crate) density: Option<Density>,
}

/// What was used of a product that is applied dry.
#[derive(Clone, Copy, Debug)]
pub(crate) struct DryRead {
    /// Its place in the job.
    pub(crate) treatment: usize,
    pub(crate) used: Measured<Mass>,
    pub(crate) resolved: Resolved,
}

/// What the names of a run refer to.
struct Names<'r> {
    orders: Places<'r>,
    tanks: Places<'r>,
    products: Places<'r>,
}

impl<'r> Names<'r> {
    fn of(job: &'r document::Job) -> Self {
        Self {
            orders: Places::of(&|i| Some(job.orders.get(i)?.order.as_str())),
            tanks: Places::of(&|i| Some(job.tanks.as_ref()?.get(i)?.tank.as_str())),
            products: Places::of(&|i| Some(job.treatments.get(i)?.product.as_str())),
        }
    }
}

impl<'r> Run<'r> {
    /// Looks at every field of a run but those of its job.
    pub(crate) fn of(run: &'r document::Run, decimal: Decimal) -> Result<Self, Problems> {
        let mut gathered = Gathered::reading(decimal);
        let read = Self::read(run, &mut gathered);
        gathered.settle(Some(read))
    }

    fn read(run: &'r document::Run, gathered: &mut Gathered) -> Self {
        let root = Pointer::Root;
        if let Some(format) = run.format.filter(|format| *format != 1) {
            let message = "is not a format that is read; write 1";
            gathered.add(&root.field("format"), Some(format!("{format}")), message);
        }
        let tolerance = field(run.tolerance.as_ref(), &root, "tolerance").share(gathered);
        let at = root.field("orders");
        if run.orders.is_empty() {
            gathered.add(&at, None, "has no entry; a run needs at least one order");
        }
        let names = Names::of(&run.job);
        name_once(&|i| Some(run.orders.get(i)?.order.as_str()), "order", &at, gathered);
        let mut orders = Vec::new();
        for (i, doc) in run.orders.iter().enumerate() {
            keep(&mut orders, order(doc, &names, &at.item(i), gathered));
        }
        Self { tolerance: tolerance.unwrap_or(USUAL_TOLERANCE), orders }
    }
}

fn order<'r>(
    doc: &'r document::RunOrder,
    names: &Names<'r>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<RunOrder<'r>> {
    let order = find(&doc.order, "order", &names.orders, &at.field("order"), gathered);
    let seed = seed(&doc.seed, &at.field("seed"), gathered);
    let tanks = tanks(doc, names, &at.field("tanks"), gathered);
    let dry = dry(doc, names, &at.field("dry"), gathered);
    let from = instant(doc.from.as_deref(), &at.field("from"), gathered);
    let to = instant(doc.to.as_deref(), &at.field("to"), gathered);
    if from.zip(to).is_some_and(|(from, to)| to < from) {
        let message = "is before the order's from; check the two";
        gathered.add(&at.field("to"), doc.to.as_deref().map(quoted), message);
    }
    let (seed, seed_resolved) = seed?;
    Some(RunOrder {
        doc,
        order: order?,
        seed,
        seed_resolved,
        weighed: doc.seed.weighed.unwrap_or(Weighed::Before),
        tanks,
        dry,
        from,
        to,
    })
}

/// The seed as it was weighed: a mass, or the difference of two readings, whichever way they go.
fn seed(
    doc: &document::SeedReadings,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<(Measured<Mass>, Resolved)> {
    let scale = Scale::of(doc.resolution.as_ref(), Mass::POWERS, "a mass of seed", at, gathered);
    match (&doc.start, &doc.end, &doc.mass) {
        (None, None, Some(mass)) => {
            let at = at.field("mass");
            let shown = scale?.read(mass, &at, gathered)?;
            some_seed(shown.reading()?.into(), shown.resolved(), mass, &at, gathered)
        }
        (Some(start), Some(end), None) => {
            let scale = scale?;
            let first = scale.read(start, &at.field("start"), gathered);
            let last = scale.read(end, &at.field("end"), gathered);
            let (first, last) = (first?, last?);
            let resolved = first.resolved().and(last.resolved());
            let (first, last) = (first.reading()?, last.reading()?);
            // A bin falls, a totaliser rises.
            let seed =
                Measured::used(first, last, &[], &[]).or_else(|_| Measured::used(last, first, &[], &[]));
            some_seed(seed.ok()?, resolved, end, &at.field("end"), gathered)
        }
        (start, end, None) if start.is_some() != end.is_some() => {
            let lacks = if start.is_some() { "end" } else { "start" };
            gathered.missing(&at.field(lacks), "both start and end, or mass alone");
            None
        }
        (_, _, None) => {
            gathered.add(at, None, "must say how much was treated: start and end, or mass");
            None
        }
        (_, _, Some(_)) => {
            gathered.add(&at.field("mass"), None, "stands beside start or end; say it one way");
            None
        }
    }
}

fn some_seed(
    seed: Measured<Mass>,
    resolved: Resolved,
    reading: &document::Reading,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<(Measured<Mass>, Resolved)> {
    if seed.get().value > 0.0 {
        return Some((seed, resolved));
    }
    let message = "says that no seed was treated; check the reading, or leave the order out";
    gathered.add(at, Some(shown(amount(reading).0)), message);
    None
}

fn tanks(
    doc: &document::RunOrder,
    names: &Names<'_>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Vec<TankRead> {
    let list = doc.tanks.as_deref().unwrap_or_default();
    name_once(&|i| Some(list.get(i)?.tank.as_str()), "tank", at, gathered);
    let mut tanks = Vec::new();
    for (i, doc) in list.iter().enumerate() {
        keep(&mut tanks, tank(doc, names, &at.item(i), gathered));
    }
    tanks
}

fn tank(
    doc: &document::TankReadings,
    names: &Names<'_>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<TankRead> {
    let tank = find(&doc.tank, "tank", &names.tanks, &at.field("tank"), gathered);
    let readings = Drawdown {
        start: &doc.start,
        end: &doc.end,
        added: doc.added.as_ref(),
        lost: doc.lost.as_ref(),
        resolution: doc.resolution.as_ref(),
    };
    let drawn = readings.drawn(at, gathered);
    let density = density(doc.density.as_ref(), at, gathered);
    let (drawn, resolved) = drawn?;
    Some(TankRead { tank: tank?, drawn, resolved, density })
}

fn dry(
    doc: &document::RunOrder,
    names: &Names<'_>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Vec<DryRead> {
    let list = doc.dry.as_deref().unwrap_or_default();
    name_once(&|i| Some(list.get(i)?.product.as_str()), "product", at, gathered);
    let mut dry = Vec::new();
    for (i, doc) in list.iter().enumerate() {
        let at = at.item(i);
        let treatment = find(&doc.product, "product", &names.products, &at.field("product"), gathered);
        let readings = Drawdown {
            start: &doc.start,
            end: &doc.end,
            added: doc.added.as_ref(),
            lost: doc.lost.as_ref(),
            resolution: doc.resolution.as_ref(),
        };
        let used = readings.used("a mass of product", &at, gathered);
        let Some((treatment, (used, resolved))) = treatment.zip(used) else { continue };
        dry.push(DryRead { treatment, used, resolved });
    }
    dry
}
