//! An order: how much seed it is, and what is known about it.

use alloc::format;
use alloc::vec::Vec;

use hilum::quantity::{
    Area, Mass, MassFlow, MassPerArea, MassPerSeed, Measure, Seeds, SeedsPerArea, SeedsPerMass, Temperature,
};
use hilum::rate::{ActivePerSeed, PerSeed};
use hilum::seed::{Bushel, SeedSize, SeedUnit, Share, Sown, UnitOfMass, UnitOfSeeds};
use hilum::text::Bases;
use hilum::treater::SeedFlow;
use hilum::{Argument, Error};

use super::after::{self, After};
use super::ask::{Asked, Field, optional};
use super::{name_once, named};
use crate::digits::Told;
use crate::document;
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
}

/// All orders.
pub(crate) fn orders<'j>(
    shelf: &Shelf<'_, 'j>,
    root: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Vec<Order<'j>>> {
    let at = root.field("orders");
    if shelf.job.orders.is_empty() {
        gathered.add(&at, None, "has no entry; a job needs at least one order");
    }
    let names = shelf.job.orders.iter().map(|order| order.order.as_str());
    let unique = name_once(names, "order", &at, gathered).is_some();
    let read: Vec<_> = shelf
        .job
        .orders
        .iter()
        .enumerate()
        .map(|(i, doc)| order(doc, shelf, &at.item(i), gathered))
        .collect();
    read.into_iter().collect::<Option<_>>().filter(|_| unique)
}

fn order<'j>(
    doc: &'j document::Order,
    shelf: &Shelf<'_, 'j>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Order<'j>> {
    let lot = named(&doc.lot, &at.field("lot"), gathered);
    let bases = bases(doc, at, gathered);
    let size = size(doc, at, gathered);
    let sowing = sowing(doc, at, gathered);
    let bases_known = bases.unwrap_or_default();
    let amount = amount(&doc.amount, &bases_known, doc.sowing.as_ref(), &at.field("amount"), gathered);
    let package = optional!(doc.package, |package| {
        let at = at.field("package");
        package_holds(package, &bases_known, &at.field("holds"), gathered)
    });
    let tolerance = optional!(doc.size_tolerance, |doc| field(doc, at, "size_tolerance").share(gathered));
    let purity = optional!(doc.purity, |doc| field(doc, at, "purity").share(gathered));
    let temperature = optional!(doc.temperature, |doc| field(doc, at, "temperature").temperature(gathered));
    let seed_flow = optional!(doc.seed_flow, |doc| seed_flow(doc, &at.field("seed_flow"), gathered));
    let treat = treat(doc, shelf, &at.field("treat"), gathered);
    let on_seed = on_seed(doc, &at.field("on_seed"), gathered);
    let after = after::after(shelf.job.after.as_ref(), doc.after.as_ref(), &at.field("after"), gathered);
    lot.and(purity)?;
    bases?;
    let (seed, spread) = seed(doc, amount?, size?, sowing?, tolerance?, at, gathered)?;
    Some(Order {
        doc,
        sowing: sowing?,
        bases: bases?,
        seed,
        spread,
        package: package?,
        temperature: temperature?,
        seed_flow: seed_flow?,
        treat: treat?,
        on_seed: on_seed?,
        after: after?,
    })
}

/// A field of an order or of another object.
#[inline(never)]
pub(crate) fn field<'a, 'j>(
    doc: &'j document::Quantity,
    at: &'a Pointer<'a>,
    name: &'a str,
) -> Field<'a, 'j> {
    Field { doc, at: at.field(name) }
}

fn bases(doc: &document::Order, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Bases> {
    let unit = optional!(doc.unit, |unit| seed_unit(unit, &at.field("unit"), gathered));
    let bushel = optional!(doc.bushel, |bushel| field(bushel, at, "bushel").get(
        "a bushel, a mass,",
        Bushel::new,
        gathered
    ));
    Some(Bases { unit: unit?, bushel: bushel? })
}

fn seed_unit(doc: &document::Quantity, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<SeedUnit> {
    let wanted = "a number of seeds or a mass";
    let asked = Asked::read(doc, at, gathered)?;
    let (value, powers) = asked.measured(&Bases::default(), wanted, at, gathered)?;
    let unit = if powers == Seeds::POWERS {
        UnitOfSeeds::new(Seeds::from_base(value)).map(SeedUnit::Count)
    } else if powers == Mass::POWERS {
        UnitOfMass::new(Mass::from_base(value)).map(SeedUnit::Mass)
    } else {
        asked.wrong(powers, wanted, at, gathered);
        return None;
    };
    asked.checked(unit, at, gathered)
}

fn size(doc: &document::Order, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<SeedSize> {
    let at = at.field("size");
    let wanted = "a seed size, seeds per mass or the mass of a number of seeds,";
    let asked = Asked::read(&doc.size, &at, gathered)?;
    let (value, powers) = asked.measured(&Bases::default(), wanted, &at, gathered)?;
    let size = if powers == SeedsPerMass::POWERS {
        SeedSize::new(SeedsPerMass::from_base(value))
    } else if powers == MassPerSeed::POWERS {
        SeedSize::of_seed(MassPerSeed::from_base(value))
    } else {
        asked.wrong(powers, wanted, &at, gathered);
        return None;
    };
    asked.checked(size, &at, gathered)
}

/// An amount of seed: mass, seeds, units, bushels, or an area to sow.
fn amount(
    doc: &document::Quantity,
    bases: &Bases,
    sowing: Option<&document::Sowing>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Amount> {
    let wanted = "an amount of seed (mass, seeds, units, bushels or area)";
    let asked = Asked::read(doc, at, gathered)?;
    let (value, powers) = asked.measured(bases, wanted, at, gathered)?;
    asked.checked(hilum::error::positive(Argument::SeedMass, value), at, gathered)?;
    if powers == Mass::POWERS {
        return Some(Amount::Mass(Mass::from_base(value)));
    }
    if powers == Seeds::POWERS {
        return Some(Amount::Seeds(Seeds::from_base(value)));
    }
    if powers == Area::POWERS {
        if sowing.is_none() {
            asked.refuse(at, gathered, "is an area, which needs a sowing rate; give this order its sowing");
            return None;
        }
        return Some(Amount::Area(Area::from_base(value)));
    }
    asked.wrong(powers, wanted, at, gathered);
    None
}

/// What a package holds; an area is no such amount.
fn package_holds(
    doc: &document::Package,
    bases: &Bases,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Amount> {
    amount(&doc.holds, bases, None, at, gathered)
}

fn sowing(doc: &document::Order, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Option<Sowing>> {
    let germination = optional!(doc.germination, |doc| field(doc, at, "germination").share(gathered))?;
    let Some(sowing) = &doc.sowing else { return Some(None) };
    let at = at.field("sowing");
    match (&sowing.rate, &sowing.stand, &sowing.emergence) {
        (Some(rate), None, None) => sowing_rate(rate, &at.field("rate"), gathered).map(Some),
        (None, Some(stand), Some(emergence)) => {
            let wanted = "a stand, plants per area,";
            let stand = {
                let at = at.field("stand");
                let asked = Asked::read_stand(stand, &at, gathered);
                asked.and_then(|asked| {
                    let stand = asked.quantity::<SeedsPerArea>(&Bases::default(), wanted, &at, gathered)?;
                    asked.checked(Sown::new(stand), &at, gathered)
                })
            };
            let emergence = field(emergence, &at, "emergence").share(gathered);
            let Some(germination) = germination else {
                gathered.add(
                    &at.field("stand"),
                    None,
                    "needs the order's germination; give it, as in \"92 %\"",
                );
                return None;
            };
            if let Ok(sown) = Sown::for_stand(stand?, germination, emergence?) {
                Some(Some(Sowing::Seeds(sown)))
            } else {
                gathered.add(&at, None, "wants plants from seed of which none comes up; germination and emergence must be more than 0 %");
                None
            }
        }
        (None, Some(_), None) => {
            gathered.missing(
                &at.field("emergence"),
                "the share of viable seed that gives a plant, \"85 %\", as a stand needs it",
            );
            None
        }
        _ => {
            gathered.add(&at, None, "must say either rate, or stand and emergence");
            None
        }
    }
}

fn sowing_rate(doc: &document::Quantity, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Sowing> {
    let wanted = "a sowing rate, seeds or mass per area,";
    let asked = Asked::read(doc, at, gathered)?;
    let (value, powers) = asked.measured(&Bases::default(), wanted, at, gathered)?;
    asked.checked(hilum::error::positive(Argument::SowingRate, value), at, gathered)?;
    if powers == SeedsPerArea::POWERS {
        let sown = Sown::new(SeedsPerArea::from_base(value));
        return asked.checked(sown, at, gathered).map(Sowing::Seeds);
    }
    if powers == MassPerArea::POWERS {
        return Some(Sowing::Mass(MassPerArea::from_base(value)));
    }
    asked.wrong(powers, wanted, at, gathered);
    None
}

/// Mass of seed per time.
pub(crate) fn seed_flow(
    doc: &document::Quantity,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<SeedFlow> {
    Field { doc, at: *at }.get::<MassFlow, _>("a seed flow, mass per time,", SeedFlow::new, gathered)
}

/// The treatments of an order, in the job's order.
fn treat(
    doc: &document::Order,
    shelf: &Shelf<'_, '_>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Vec<usize>> {
    let Some(names) = &doc.treat else {
        return Some((0..shelf.job.treatments.len()).collect());
    };
    name_once(names.iter().map(alloc::string::String::as_str), "", at, gathered)?;
    let mut treated = alloc::vec![false; shelf.job.treatments.len()];
    for (i, name) in names.iter().enumerate() {
        if let Some(treated) = shelf.products.get(name).and_then(|index| treated.get_mut(index)) {
            *treated = true;
        } else {
            let known = shelf.products.names();
            gathered.add(&at.item(i), Some(quoted(name)), unknown("product", name, &known));
            return None;
        }
    }
    Some(treated.iter().enumerate().filter(|(_, treated)| **treated).map(|(index, _)| index).collect())
}

fn on_seed<'j>(
    doc: &'j document::Order,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Vec<(&'j str, ActivePerSeed)>> {
    let list = doc.on_seed.as_deref().unwrap_or_default();
    name_once(list.iter().map(|on| on.active.as_str()), "active", at, gathered)?;
    let mut read = Vec::new();
    for (i, on) in list.iter().enumerate() {
        let at = at.item(i);
        let per_seed = field(&on.per_seed, &at, "per_seed").get(
            "active ingredient per seed, mass per seed,",
            PerSeed::new,
            gathered,
        );
        read.push((on.active.as_str(), per_seed?));
    }
    Some(read)
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
            doc.size_tolerance.as_ref().map(super::ask::shown),
            "must be less than 100 %",
        ),
        error => {
            let error = Told(error);
            gathered.add(
                &at.field("amount"),
                Some(super::ask::shown(&doc.amount)),
                format!("gives, at this size, seed beyond what can be calculated with: {error}"),
            );
        }
    })
    .ok()
}
