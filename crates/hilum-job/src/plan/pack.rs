//! What to open of a product.

use alloc::vec::Vec;
use core::num::NonZeroU32;

use hilum::Error;
use hilum::pack::{
    Coverage, Objective, PackSize, Price, Proof, SetsNeeded, Supply, almost_covered, cases, choose,
};
use hilum::quantity::{Mass, Measure, Seeds};

use super::dose::{Amount, Label, Rate};
use super::draft::{Dose, Draft, Line};
use super::out::SEED_MASS;
use super::set::usable;
use crate::document::{Choose, OpenedPack};
use crate::model::pack::Pack;
use crate::problem::quoted;

/// A pack size against a product's whole need.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Size {
    /// Product that one set adds.
    pub(crate) adds: Amount,
    /// Seed that one set covers.
    pub(crate) covers: Coverage,
    /// Stated and computed coverage at the order's size where they lie furthest apart, where both are known.
    pub(crate) both: Option<(Coverage, Coverage)>,
}

/// Product that one set adds to a mix whose recipe is an order's: what can be got out of its parts, else
/// coverage × rate.
pub(crate) fn adds(
    draft: &Draft<'_, '_>,
    line: &Line<'_, '_>,
    pack: &Pack<'_>,
    dose: &Dose,
) -> Option<Amount> {
    if let Some(usable) = usable(line.treatment, pack).ok()? {
        return Some(usable);
    }
    let order = draft.order(dose.order)?;
    let label = line.label(order);
    dose.rate.needed(stated(&label, pack).ok()??.get()).ok()
}

/// What is opened of a product.
#[derive(Debug)]
pub(crate) struct Opened {
    /// Sets by pack size, in the job's order.
    pub(crate) sets: Vec<u64>,
    pub(crate) decided: Decided,
    pub(crate) supply: Supply,
    pub(crate) proof: Proof,
    /// Slightly more seed than one set fewer covers.
    pub(crate) almost: bool,
}

/// What decided which sets are opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Decided {
    /// The mixes that whole sets went into: what is opened is what is poured.
    ByMixes,
    /// The choice among pack sizes.
    ByChoice,
}

/// What stands in the way of a pack size.
#[derive(Clone, Debug)]
pub(crate) enum NoSize {
    /// `covers` cannot be measured for an order.
    Covers(alloc::string::String),
    /// Something of the set is missing or too large.
    Set(Error),
}

/// All pack sizes of a product, against what the orders take of it.
pub(crate) fn sizes(draft: &Draft<'_, '_>, line: &Line<'_, '_>) -> Vec<Result<Size, NoSize>> {
    let mut sizes = Vec::new();
    for pack in &line.treatment.packs {
        sizes.push(size(draft, line, pack));
    }
    sizes
}

fn size(draft: &Draft<'_, '_>, line: &Line<'_, '_>, pack: &Pack<'_>) -> Result<Size, NoSize> {
    let usable = usable(line.treatment, pack).map_err(NoSize::Set)?;
    let mut both: Option<(Coverage, Coverage)> = None;
    let mut coverages: Vec<(Mass, Coverage)> = Vec::new();
    for dose in &line.doses {
        let Some(order) = draft.order(dose.order) else { continue };
        let label = line.label(order);
        let stated = stated(&label, pack)?;
        let computed = usable.map(|set| computed(set, dose.rate)).transpose().map_err(NoSize::Set)?;
        if let (Some(stated), Some(computed)) = (stated, computed) {
            let apart = |(stated, computed): (Coverage, Coverage)| stated.difference(computed).abs();
            if both.is_none_or(|most| apart((stated, computed)) > apart(most)) {
                both = Some((stated, computed));
            }
        }
        let coverage =
            stated.or(computed).ok_or(NoSize::Set(Error::Needed { argument: hilum::Argument::Coverage }))?;
        coverages.push((order.seed.mass, coverage));
    }
    let all: f64 = coverages.iter().map(|(mass, _)| mass.value).sum();
    let needed = SetsNeeded::sum(coverages).map_err(NoSize::Set)?;
    let covers = Coverage::new(Mass::from_base(all / needed.number())).map_err(NoSize::Set)?;
    let adds = usable.unwrap_or(line.needed.like(line.needed.base() / needed.number()));
    Ok(Size { adds, covers, both })
}

fn computed(set: Amount, rate: Rate) -> Result<Coverage, Error> {
    match (set, rate) {
        (Amount::Liquid(set), Rate::Liquid(rate)) => Coverage::at(set, rate),
        (Amount::Dry(set), Rate::Dry(rate)) => Coverage::at(set, rate),
        _ => Err(Error::Needed { argument: hilum::Argument::Density }),
    }
}

/// The stated coverage at an order's size: mass, or seeds.
fn stated(label: &Label<'_, '_>, pack: &Pack<'_>) -> Result<Option<Coverage>, NoSize> {
    use hilum::text::{Measured, TextError};
    let Some(covers) = &pack.covers else { return Ok(None) };
    let mass = match covers.written.measured(&label.bases()) {
        Ok(Measured::Quantity { value, powers }) if powers == Mass::POWERS => Mass::from_base(value),
        Ok(Measured::Quantity { value, powers }) if powers == Seeds::POWERS => {
            label.seed.size.mass_of(Seeds::from_base(value)).map_err(NoSize::Set)?
        }
        Ok(_) => return Err(NoSize::Covers("is no amount of seed; write a mass, units or seeds".into())),
        Err(TextError::UnitNotGiven) => {
            return Err(NoSize::Covers(alloc::format!(
                "is in units, but neither label_unit nor the unit of order {} says how many seeds that is; give label_unit",
                quoted(&label.order.doc.order)
            )));
        }
        Err(error) => return Err(NoSize::Covers(alloc::format!("{error}"))),
    };
    Coverage::new(mass).map(Some).map_err(NoSize::Set)
}

/// The best choice of sets for a product: for what the orders take, and what stays in lines.
pub(crate) fn choice(
    line: &Line<'_, '_>,
    sizes: &[Size],
    not_applied: f64,
    treated: Mass,
) -> Result<Option<Opened>, Error> {
    if sizes.is_empty() || line.doses.is_empty() {
        return Ok(None);
    }
    let mut offered = Vec::new();
    for (size, pack) in sizes.iter().zip(&line.treatment.packs) {
        // What stays in the lines is taken from every set alike.
        let needed = treated.value / size.covers.get().value;
        let all = needed + not_applied / size.adds.base();
        let covers = Coverage::new(Mass::from_base(treated.value / all))?;
        let price = pack.doc.price.map(Price::new).transpose()?;
        offered.push(PackSize { covers, stock: pack.doc.on_hand, price });
    }
    let choice = choose(treated, &offered, objective(line.treatment.doc.choose))?;
    let opened = choice.sets().zip(offered.iter().map(|size| size.covers));
    let almost = almost(treated, choice.covered, opened)?;
    Ok(Some(Opened {
        sets: choice.sets().collect(),
        decided: Decided::ByChoice,
        supply: choice.supply,
        proof: choice.proof,
        almost,
    }))
}

/// The objective in the core's words.
pub(crate) fn objective(choose: Option<Choose>) -> Objective {
    match choose {
        None | Some(Choose::LeastLeftover) => Objective::LeastLeftover,
        Some(Choose::LeastCost) => Objective::LeastCost,
        Some(Choose::FewestSets) => Objective::FewestSets,
    }
}

/// Whether one of the opened sets is there for at most a hundredth of the need.
pub(crate) fn almost(
    need: Mass,
    covered: Mass,
    opened: impl IntoIterator<Item = (u64, Coverage)>,
) -> Result<bool, Error> {
    for (sets, covers) in opened {
        if sets > 0 && almost_covered(need, covered, covers)? {
            return Ok(true);
        }
    }
    Ok(false)
}

/// Opened sets as a plan writes them, sizes of which none is opened left out.
pub(crate) fn opened(
    draft: &Draft<'_, '_>,
    line: &Line<'_, '_>,
    sizes: &[Size],
    sets: &[u64],
) -> Vec<OpenedPack> {
    let mut opened = Vec::new();
    for ((pack, size), sets) in line.treatment.packs.iter().zip(sizes).zip(sets) {
        let Some(number) = u32::try_from(*sets).ok().filter(|sets| *sets > 0) else { continue };
        let per_case = pack.doc.per_case.and_then(NonZeroU32::new);
        opened.push(OpenedPack {
            pack: pack.doc.pack.clone(),
            sets: number,
            cases: per_case.and_then(|per_case| u32::try_from(cases(*sets, per_case)).ok()),
            covers: SEED_MASS.of(size.covers.get() * count(*sets), draft.units()),
        });
    }
    opened
}

/// A count as a number to multiply with.
pub(crate) fn count(sets: u64) -> f64 {
    // Exact: a plan holds fewer than 2^32 sets of a size.
    u32::try_from(sets).map_or(f64::from(u32::MAX), f64::from)
}
