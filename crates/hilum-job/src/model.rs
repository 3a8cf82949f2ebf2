//! A job whose every field has been looked at: documents → values of the core.

pub(crate) mod after;
pub(crate) mod ask;
pub(crate) mod living;
pub(crate) mod order;
pub(crate) mod pack;
pub(crate) mod reading;
pub(crate) mod run;
pub(crate) mod tank;
pub(crate) mod treatment;
mod work;

use alloc::format;
use alloc::vec::Vec;

use hilum::Argument;
use hilum::error::positive;
use hilum::quantity::{MassPerArea, Measure, Ratio};
use hilum::rate::{ActivePerMass, ActivePerSeed, PerMass, PerSeed};
use hilum::seed::Share;
use hilum::text::Decimal;

use self::after::Instant;
use self::ask::field;
use self::order::Order;
use self::tank::{Tank, Treater};
use self::treatment::Treatment;
use crate::document::{self, Units};
use crate::places::Places;
use crate::problem::{Gathered, Pointer, Problems, moves, quoted};

/// By how much a product of a mix may be off, where a job does not say: common practice.
const USUAL_RECIPE_TOLERANCE: f64 = 0.02;

/// A job that can be planned.
#[derive(Debug)]
pub(crate) struct Model<'j> {
    pub(crate) job: &'j document::Job,
    pub(crate) units: Units,
    pub(crate) recipe_tolerance: Share,
    pub(crate) orders: Vec<Order<'j>>,
    pub(crate) treatments: Vec<Treatment<'j>>,
    pub(crate) actives: Vec<ActiveLimit<'j>>,
    /// Places in `actives`, by name.
    pub(crate) limits: Places<'j>,
    pub(crate) tanks: Vec<Tank<'j>>,
    pub(crate) treater: Treater,
    pub(crate) work: Vec<(Instant, Instant)>,
}

/// What limits one active ingredient.
#[derive(Debug)]
pub(crate) struct ActiveLimit<'j> {
    pub(crate) active: &'j str,
    pub(crate) season_limit: Option<MassPerArea>,
    pub(crate) season_used: MassPerArea,
    pub(crate) max_per_seed: Option<ActivePerSeed>,
    pub(crate) max_per_mass: Option<ActivePerMass>,
}

impl<'j> Model<'j> {
    /// Looks at every field of a job.
    pub(crate) fn of(job: &'j document::Job, decimal: Decimal) -> Result<Self, Problems> {
        let mut gathered = Gathered::reading(decimal);
        let model = Self::read(job, &mut gathered);
        let model = gathered.settle(model)?;
        work::bounded(&model)?;
        Ok(model)
    }

    fn read(job: &'j document::Job, gathered: &mut Gathered) -> Option<Self> {
        let root = Pointer::Root;
        if let Some(format) = job.format.filter(|format| *format != 1) {
            gathered.add(
                &root.field("format"),
                Some(format!("{format}")),
                "is not a format that is read; write 1",
            );
        }
        let recipe_tolerance =
            field(job.recipe_tolerance.as_ref(), &root, "recipe_tolerance").share(gathered);
        // First of all the names: what refers to one that stands twice would be told as unknown.
        unique_names(job, &root, gathered);
        let products = Places::of(&|i| Some(job.treatments.get(i)?.product.as_str()));
        let names = Places::of(&|i| Some(job.tanks.as_ref()?.get(i)?.tank.as_str()));
        let after = after::own(job.after.as_ref(), &root.field("after"), gathered);
        let shelf = order::Shelf { job, products: &products, after: &after };
        let orders = order::orders(&shelf, &root, gathered);
        let shed = treatment::Shed { job, products: &products, tanks: &names };
        let treatments = treatment::treatments(&shed, &root, gathered);
        let actives = actives(job, &root, gathered);
        let limits = Places::of(&|i| Some(actives.get(i)?.active));
        let tanks = tank::tanks(job, &root, gathered);
        let treater = tank::treater(job, &root, gathered);
        let work = work(job, &root, gathered);
        let usual = Share::new(Ratio::from_base(USUAL_RECIPE_TOLERANCE)).ok()?;
        Some(Self {
            job,
            units: job.units.unwrap_or(Units::Metric),
            recipe_tolerance: recipe_tolerance.unwrap_or(usual),
            orders,
            treatments,
            actives,
            limits,
            tanks,
            treater,
            work,
        })
    }
}

/// Products and tanks, which other fields refer to, have names of their own.
fn unique_names(job: &document::Job, root: &Pointer<'_>, gathered: &mut Gathered) {
    let product = |i: usize| Some(job.treatments.get(i)?.product.as_str());
    name_once(&product, "product", &root.field("treatments"), gathered);
    let tank = |i: usize| Some(job.tanks.as_ref()?.get(i)?.tank.as_str());
    name_once(&tank, "tank", &root.field("tanks"), gathered);
}

fn actives<'j>(job: &'j document::Job, root: &Pointer<'_>, gathered: &mut Gathered) -> Vec<ActiveLimit<'j>> {
    let at = root.field("actives");
    let list = job.actives.as_deref().unwrap_or_default();
    name_once(&|i| Some(list.get(i)?.active.as_str()), "active", &at, gathered);
    let mut actives = Vec::new();
    for (i, doc) in list.iter().enumerate() {
        actives.push(active(doc, &at.item(i), gathered));
    }
    actives
}

fn active<'j>(doc: &'j document::ActiveLimit, at: &Pointer<'_>, gathered: &mut Gathered) -> ActiveLimit<'j> {
    let wanted = "active ingredient per area, mass per area,";
    let season_limit = field(doc.season_limit.as_ref(), at, "season_limit").get(
        wanted,
        |limit: MassPerArea| positive(Argument::SeasonLimit, limit.value).map(MassPerArea::from_base),
        gathered,
    );
    let season_used = field(doc.season_used.as_ref(), at, "season_used");
    let season_used = season_used.not_negative(MassPerArea::POWERS, wanted, gathered);
    let wanted = "active ingredient per seed, mass per seed,";
    let max_per_seed =
        field(doc.max_per_seed.as_ref(), at, "max_per_seed").get(wanted, PerSeed::new, gathered);
    let wanted = "active ingredient per mass of seed, mass per mass,";
    let max_per_mass =
        field(doc.max_per_mass.as_ref(), at, "max_per_mass").get(wanted, PerMass::new, gathered);
    let season_used = MassPerArea::from_base(season_used.unwrap_or_default());
    ActiveLimit { active: &doc.active, season_limit, season_used, max_per_seed, max_per_mass }
}

fn work(job: &document::Job, root: &Pointer<'_>, gathered: &mut Gathered) -> Vec<(Instant, Instant)> {
    let at = root.field("work");
    let mut shifts: Vec<(Instant, Instant)> = Vec::new();
    for (i, shift) in job.work.as_deref().unwrap_or_default().iter().enumerate() {
        let at = at.item(i);
        let from = after::instant(Some(&shift.from), &at.field("from"), gathered);
        let to = after::instant(Some(&shift.to), &at.field("to"), gathered);
        let Some((from, to)) = from.zip(to) else { continue };
        if to <= from {
            let message = "is not after the shift's from; check the two";
            gathered.add(&at.field("to"), Some(quoted(&shift.to)), message);
        }
        if shifts.last().is_some_and(|(_, last)| from < *last) {
            let message = "is before the end of the shift above; order the shifts, apart from each other";
            gathered.add(&at.field("from"), Some(quoted(&shift.from)), message);
        }
        shifts.push((from, to));
    }
    shifts
}

/// Notes names that stand in a list more than once, or show nothing, and tells whether all are right. The list is asked
/// for its names one by one, not to have a copy of this for every type of list; `field` holds the name, if any does.
pub(crate) fn name_once<'a>(
    name: &dyn Fn(usize) -> Option<&'a str>,
    field: &str,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> bool {
    let mut seen = Places::default();
    let mut right = true;
    for (i, name) in (0..).map_while(|i| Some((i, name(i)?))) {
        let item = at.item(i);
        let place = item.field(field);
        let place = if field.is_empty() { &item } else { &place };
        if !named(name, place, gathered) {
            right = false;
            continue;
        }
        let first = seen.first(name, i);
        if first < i {
            let message =
                format!("stands already in entry {first} of this list, counted from 0; names must differ");
            gathered.add(place, Some(quoted(name)), message);
            right = false;
        }
    }
    right
}

/// Notes a name of which a person would see nothing.
pub(crate) fn named(name: &str, at: &Pointer<'_>, gathered: &mut Gathered) -> bool {
    let seen = name.chars().any(|c| !c.is_whitespace() && !moves(c));
    if !seen {
        gathered.add(at, Some(quoted(name)), "shows nothing; write a name that people can read");
    }
    seen
}
