//! An order: how much seed it is, and what is known about it.

use alloc::format;
use alloc::vec::Vec;

use hilum::error::positive;
use hilum::quantity::{
    Area, Mass, MassPerArea, MassPerSeed, Measure, Seeds, SeedsPerArea, SeedsPerMass, Temperature,
};
use hilum::rate::{ActivePerSeed, PerSeed};
use hilum::seed::{Bushel, SeedSize, SeedUnit, Share, Sown, UnitOfMass, UnitOfSeeds};
use hilum::text::Bases;
use hilum::treater::SeedFlow;
use hilum::{Argument, Error};

use super::after::{self, After};
use super::ask::{Asked, Field, field, shown};
use super::{name_once, named};
use crate::digits::Told;
use crate::document;
use crate::list::keep;
use crate::places::Places;
use crate::problem::{Gathered, Pointer, quoted};
use crate::read::unknown;

/// An order whose every field has been looked at.
#[derive(Debug)]
pub(crate) struct Order<'j> {
    pub(crate) doc: &'j document::Order,
    pub(crate) sowing: Option<Sowing>,
    pub(crate) bases: Bases,
    /// At its own size.
    pub(crate) seed: Seed,
    /// At the largest and the smallest size that its tolerance leaves possible.
    pub(crate) spread: Option<[Seed; 2]>,
    pub(crate) package: Option<Amount>,
    pub(crate) temperature: Option<Temperature>,
    pub(crate) seed_flow: Option<SeedFlow>,
    /// The treatments it gets, as indices, in the job's order.
    pub(crate) treat: Vec<usize>,
    pub(crate) on_seed: Vec<(&'j str, ActivePerSeed)>,
    pub(crate) after: After,
}

/// How an amount of seed is stated, once units and bushels are resolved.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Amount {
    Mass(Mass),
    Seeds(Seeds),
    Area(Area),
}

/// How a sowing rate is stated.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Sowing {
    Seeds(Sown),
    Mass(MassPerArea),
}

impl Sowing {
    pub(crate) fn sown(self, size: SeedSize) -> Result<Sown, Error> {
        match self {
            Self::Seeds(sown) => Ok(sown),
            Self::Mass(rate) => Sown::by_mass(rate, size),
        }
    }
}

/// An amount of seed at one size.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Seed {
    pub(crate) size: SeedSize,
    pub(crate) mass: Mass,
    pub(crate) seeds: Seeds,
    pub(crate) sown: Option<Sown>,
}

impl Seed {
    fn of(amount: Amount, size: SeedSize, sowing: Option<Sowing>) -> Result<Self, Error> {
        let sown = sowing.map(|sowing| sowing.sown(size)).transpose()?;
        let (mass, seeds) = match amount {
            Amount::Mass(mass) => (mass, size.count_in(mass)?),
            Amount::Seeds(seeds) => (size.mass_of(seeds)?, seeds),
            Amount::Area(area) => {
                let sown = sown.ok_or(Error::Needed { argument: Argument::Sown })?;
                let seeds = sown.seeds_for(area)?;
                (size.mass_of(seeds)?, seeds)
            }
        };
        // What is calculated from here on must stay within what can be calculated with.
        size.count_in(mass)?;
        size.mass_of(seeds)?;
        Ok(Self { size, mass, seeds, sown })
    }
}

/// What orders are read with.
pub(crate) struct Shelf<'a, 'j> {
    pub(crate) job: &'j document::Job,
    /// Products by name.
    pub(crate) products: &'a Places<'j>,
    /// The job's `after`.
    pub(crate) after: &'a after::Own,
}

/// All orders.
pub(crate) fn orders<'j>(
    shelf: &Shelf<'_, 'j>,
    root: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Vec<Order<'j>> {
    let at = root.field("orders");
    if shelf.job.orders.is_empty() {
        gathered.add(&at, None, "has no entry; a job needs at least one order");
    }
    name_once(&|i| Some(shelf.job.orders.get(i)?.order.as_str()), "order", &at, gathered);
    let mut orders = Vec::new();
    for (i, doc) in shelf.job.orders.iter().enumerate() {
        keep(&mut orders, order(doc, shelf, &at.item(i), gathered));
    }
    orders
}

fn order<'j>(
    doc: &'j document::Order,
    shelf: &Shelf<'_, 'j>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Order<'j>> {
    let named = named(&doc.lot, &at.field("lot"), gathered);
    let bases = bases(doc, at, gathered);
    let size = size(doc, at, gathered);
    let sowing = sowing(doc, at, gathered);
    let known = bases.unwrap_or_default();
    let whole = amount(&field(Some(&doc.amount), at, "amount"), &known, doc.sowing.as_ref(), gathered);
    let package = doc.package.as_ref().and_then(|package| {
        // An area is no such amount.
        amount(&field(Some(&package.holds), &at.field("package"), "holds"), &known, None, gathered)
    });
    let tolerance = field(doc.size_tolerance.as_ref(), at, "size_tolerance").share(gathered);
    let purity = field(doc.purity.as_ref(), at, "purity").share(gathered);
    let temperature = field(doc.temperature.as_ref(), at, "temperature").temperature(gathered);
    let seed_flow = seed_flow(doc.seed_flow.as_ref(), at, gathered);
    let treat = treat(doc, shelf, &at.field("treat"), gathered);
    let on_seed = on_seed(doc, &at.field("on_seed"), gathered);
    let after = after::after(shelf.after, after::own(doc.after.as_ref(), &at.field("after"), gathered));
    // Seed is worked out of what is right, else one mistake is told as two.
    let right = named
        && doc.purity.is_some() == purity.is_some()
        && doc.size_tolerance.is_some() == tolerance.is_some();
    let (bases, sowing) = (bases.filter(|_| right)?, sowing?);
    let (seed, spread) = seed(doc, whole?, size?, sowing, tolerance, at, gathered)?;
    Some(Order { doc, sowing, bases, seed, spread, package, temperature, seed_flow, treat, on_seed, after })
}

fn bases(doc: &document::Order, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Bases> {
    let unit = seed_unit(&field(doc.unit.as_ref(), at, "unit"), gathered);
    let bushel = bushel(doc.bushel.as_ref(), at, "bushel", gathered);
    let right = doc.unit.is_some() == unit.is_some() && doc.bushel.is_some() == bushel.is_some();
    right.then_some(Bases { unit, bushel })
}

/// What a bushel weighs.
#[inline(never)]
pub(crate) fn bushel(
    doc: Option<&document::Quantity>,
    at: &Pointer<'_>,
    name: &str,
    gathered: &mut Gathered,
) -> Option<Bushel> {
    field(doc, at, name).get("a bushel, a mass,", Bushel::new, gathered)
}

fn seed_unit(field: &Field<'_, '_>, gathered: &mut Gathered) -> Option<SeedUnit> {
    let check = |value, powers| match powers {
        Seeds::POWERS => UnitOfSeeds::new(Seeds::from_base(value)).map(SeedUnit::Count).map(Some),
        Mass::POWERS => UnitOfMass::new(Mass::from_base(value)).map(SeedUnit::Mass).map(Some),
        _ => Ok(None),
    };
    field.one_of(&Bases::default(), "a number of seeds or a mass", check, gathered)
}

fn size(doc: &document::Order, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<SeedSize> {
    let wanted = "a seed size, seeds per mass or the mass of a number of seeds,";
    let check = |value, powers| match powers {
        SeedsPerMass::POWERS => SeedSize::new(SeedsPerMass::from_base(value)).map(Some),
        MassPerSeed::POWERS => SeedSize::of_seed(MassPerSeed::from_base(value)).map(Some),
        _ => Ok(None),
    };
    field(Some(&doc.size), at, "size").one_of(&Bases::default(), wanted, check, gathered)
}

/// An amount of seed: mass, seeds, units, bushels, or an area to sow.
fn amount(
    field: &Field<'_, '_>,
    bases: &Bases,
    sowing: Option<&document::Sowing>,
    gathered: &mut Gathered,
) -> Option<Amount> {
    let wanted = "an amount of seed (mass, seeds, units, bushels or area)";
    let check = |value, powers| {
        positive(Argument::SeedMass, value)?;
        Ok(match powers {
            Mass::POWERS => Some(Amount::Mass(Mass::from_base(value))),
            Seeds::POWERS => Some(Amount::Seeds(Seeds::from_base(value))),
            Area::POWERS => Some(Amount::Area(Area::from_base(value))),
            _ => None,
        })
    };
    let amount = field.one_of(bases, wanted, check, gathered)?;
    if matches!(amount, Amount::Area(_)) && sowing.is_none() {
        let message = "is an area, which needs a sowing rate; give this order its sowing";
        gathered.add(&field.at, field.doc.map(shown), message);
        return None;
    }
    Some(amount)
}

fn sowing(doc: &document::Order, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Option<Sowing>> {
    let germination = field(doc.germination.as_ref(), at, "germination").share(gathered);
    if doc.germination.is_some() && germination.is_none() {
        return None;
    }
    let Some(sowing) = &doc.sowing else { return Some(None) };
    let at = at.field("sowing");
    match (&sowing.rate, &sowing.stand, &sowing.emergence) {
        (Some(_), None, None) => {
            return sowing_rate(&field(sowing.rate.as_ref(), &at, "rate"), gathered).map(Some);
        }
        (None, Some(stand), Some(emergence)) => {
            return for_stand(stand, emergence, germination, &at, gathered).map(Some);
        }
        (None, Some(_), None) => {
            let give = "the share of viable seed that gives a plant, \"85 %\", as a stand needs it";
            gathered.missing(&at.field("emergence"), give);
        }
        _ => gathered.add(&at, None, "must say either rate, or stand and emergence"),
    }
    None
}

/// The sowing of a stand of plants.
fn for_stand(
    stand: &document::Quantity,
    emergence: &document::Quantity,
    germination: Option<Share>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Sowing> {
    let place = at.field("stand");
    let asked = Asked::read_stand(stand, &place, gathered);
    let stand = asked.and_then(|asked| {
        let wanted = "a stand, plants per area,";
        let stand = asked.quantity::<SeedsPerArea>(&Bases::default(), wanted, &place, gathered)?;
        asked.checked(Sown::new(stand), &place, gathered)
    });
    let emergence = field(Some(emergence), at, "emergence").share(gathered);
    let Some(germination) = germination else {
        gathered.add(&place, None, "needs the order's germination; give it, as in \"92 %\"");
        return None;
    };
    let sown = Sown::for_stand(stand?, germination, emergence?).map(Sowing::Seeds).ok();
    if sown.is_none() {
        gathered.add(
            at,
            None,
            "wants plants from seed of which none comes up; germination and emergence must be more than 0 %",
        );
    }
    sown
}

fn sowing_rate(field: &Field<'_, '_>, gathered: &mut Gathered) -> Option<Sowing> {
    let check = |value, powers| {
        positive(Argument::SowingRate, value)?;
        match powers {
            SeedsPerArea::POWERS => Sown::new(SeedsPerArea::from_base(value)).map(Sowing::Seeds).map(Some),
            MassPerArea::POWERS => Ok(Some(Sowing::Mass(MassPerArea::from_base(value)))),
            _ => Ok(None),
        }
    };
    field.one_of(&Bases::default(), "a sowing rate, seeds or mass per area,", check, gathered)
}

/// Mass of seed per time.
#[inline(never)]
pub(crate) fn seed_flow(
    doc: Option<&document::Quantity>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<SeedFlow> {
    field(doc, at, "seed_flow").get("a seed flow, mass per time,", SeedFlow::new, gathered)
}

/// The treatments of an order, in the job's order.
fn treat(
    doc: &document::Order,
    shelf: &Shelf<'_, '_>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Vec<usize> {
    let all = 0..shelf.job.treatments.len();
    let Some(names) = &doc.treat else { return all.collect() };
    let mut treated = Vec::new();
    if !name_once(&|i| Some(names.get(i)?.as_str()), "", at, gathered) {
        return treated;
    }
    for (i, name) in names.iter().enumerate() {
        let Some(index) = shelf.products.get(name) else {
            let known = shelf.products.names();
            gathered.add(&at.item(i), Some(quoted(name)), unknown("product", name, &known));
            break;
        };
        let place = treated.partition_point(|other| *other < index);
        treated.insert(place, index);
    }
    treated
}

fn on_seed<'j>(
    doc: &'j document::Order,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Vec<(&'j str, ActivePerSeed)> {
    let list = doc.on_seed.as_deref().unwrap_or_default();
    let mut read = Vec::new();
    if !name_once(&|i| Some(list.get(i)?.active.as_str()), "active", at, gathered) {
        return read;
    }
    for (i, on) in list.iter().enumerate() {
        let wanted = "active ingredient per seed, mass per seed,";
        let per_seed = field(Some(&on.per_seed), &at.item(i), "per_seed").get(wanted, PerSeed::new, gathered);
        let Some(per_seed) = per_seed else { break };
        read.push((on.active.as_str(), per_seed));
    }
    read
}

/// The seed at its own size, and at the ends of the size's tolerance.
fn seed(
    doc: &document::Order,
    amount: Amount,
    size: SeedSize,
    sowing: Option<Sowing>,
    tolerance: Option<Share>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<(Seed, Option<[Seed; 2]>)> {
    let seed = (|| {
        let seed = Seed::of(amount, size, sowing)?;
        let Some(tolerance) = tolerance else { return Ok((seed, None)) };
        let (low, high) = size.within(tolerance)?;
        Ok((seed, Some([Seed::of(amount, low, sowing)?, Seed::of(amount, high, sowing)?])))
    })();
    seed.map_err(|error| match error {
        Error::NotAShare { .. } => gathered.add(
            &at.field("size_tolerance"),
            doc.size_tolerance.as_ref().map(shown),
            "must be less than 100 %",
        ),
        error => gathered.add(
            &at.field("amount"),
            Some(shown(&doc.amount)),
            format!("gives, at this size, seed beyond what can be calculated with: {}", Told(error)),
        ),
    })
    .ok()
}
