//! The sizes a product is sold in.

use alloc::vec::Vec;

use hilum::quantity::{Mass, Measure, Volume};

use super::ask::{Asked, optional};
use super::name_once;
use crate::document;
use crate::problem::{Gathered, Pointer};

/// A pack size whose every field has been looked at, but for coverage in units, which the order may define.
#[derive(Debug)]
pub(crate) struct Pack<'j> {
    pub(crate) doc: &'j document::Pack,
    pub(crate) parts: Vec<(&'j str, PartAmount)>,
    pub(crate) covers: Option<Asked<'j>>,
}

/// What can be got out of a part.
#[derive(Clone, Copy, Debug)]
pub(crate) enum PartAmount {
    Volume(Volume),
    Mass(Mass),
}

/// The pack sizes of a product.
pub(crate) fn packs<'j>(
    doc: &'j document::Treatment,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Vec<Pack<'j>>> {
    let list = doc.packs.as_deref().unwrap_or_default();
    let unique = name_once(list.iter().map(|pack| pack.pack.as_str()), "pack", at, gathered);
    let docs = list.iter().enumerate();
    let read: Vec<_> = docs.map(|(i, doc)| pack(doc, &at.item(i), gathered)).collect();
    unique.and(read.into_iter().collect())
}

fn pack<'j>(doc: &'j document::Pack, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Pack<'j>> {
    let parts = parts(doc, &at.field("parts"), gathered);
    let covers = optional!(doc.covers, |covers| Asked::read(covers, &at.field("covers"), gathered));
    if doc.per_case == Some(0) {
        gathered.add(&at.field("per_case"), Some("0".into()), "must be at least 1");
        return None;
    }
    if let Some(price) = doc.price {
        let checked = hilum::error::not_negative(hilum::Argument::Price, price);
        if let Err(error) = checked {
            gathered.add(&at.field("price"), Some(crate::digits::exact(price)), super::ask::refusal(error));
            return None;
        }
    }
    if doc.covers.is_none() && doc.parts.as_ref().is_none_or(Vec::is_empty) {
        gathered.add(at, None, "says neither what it covers nor what is in its parts; give covers or parts");
        return None;
    }
    Some(Pack { doc, parts: parts?, covers: covers? })
}

fn parts<'j>(
    doc: &'j document::Pack,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Vec<(&'j str, PartAmount)>> {
    let list = doc.parts.as_deref().unwrap_or_default();
    let unique = name_once(list.iter().map(|part| part.part.as_str()), "part", at, gathered);
    let docs = list.iter().enumerate();
    let read: Vec<_> = docs.map(|(i, part)| part_amount(part, &at.item(i), gathered)).collect();
    unique.and(read.into_iter().collect())
}

fn part_amount<'j>(
    part: &'j document::Part,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<(&'j str, PartAmount)> {
    let fill = content(&part.fill, &at.field("fill"), gathered);
    let usable = optional!(part.usable, |usable| content(usable, &at.field("usable"), gathered));
    let (fill, usable) = (fill?, usable?);
    let more = match (fill, usable) {
        (_, None) => return Some((part.part.as_str(), fill)),
        (PartAmount::Volume(fill), Some(PartAmount::Volume(usable))) => usable > fill,
        (PartAmount::Mass(fill), Some(PartAmount::Mass(usable))) => usable > fill,
        _ => {
            gathered.add(
                &at.field("usable"),
                None,
                "is measured otherwise than the fill; give both by volume or both by mass",
            );
            return None;
        }
    };
    if more {
        gathered.add(
            &at.field("usable"),
            part.usable.as_ref().map(super::ask::shown),
            "is more than the fill; check the two",
        );
        return None;
    }
    usable.map(|usable| (part.part.as_str(), usable))
}

/// A volume or a mass of product.
fn content(doc: &document::Quantity, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<PartAmount> {
    let wanted = "an amount of product, volume or mass,";
    let asked = Asked::read(doc, at, gathered)?;
    let (value, powers) = asked.measured(&hilum::text::Bases::default(), wanted, at, gathered)?;
    asked.checked(hilum::error::positive(hilum::Argument::ProductAmount, value), at, gathered)?;
    if powers == Volume::POWERS {
        return Some(PartAmount::Volume(Volume::from_base(value)));
    }
    if powers == Mass::POWERS {
        return Some(PartAmount::Mass(Mass::from_base(value)));
    }
    asked.wrong(powers, wanted, at, gathered);
    None
}
