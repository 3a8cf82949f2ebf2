//! The sizes a product is sold in.

use alloc::vec::Vec;

use hilum::Argument;
use hilum::error::{not_negative, positive};
use hilum::quantity::{Mass, Measure, Volume};
use hilum::text::Bases;

use super::ask::{Asked, field, refusal, shown};
use super::name_once;
use crate::digits::exact;
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
) -> Vec<Pack<'j>> {
    let list = doc.packs.as_deref().unwrap_or_default();
    name_once(&|i| Some(list.get(i)?.pack.as_str()), "pack", at, gathered);
    let mut packs = Vec::new();
    for (i, doc) in list.iter().enumerate() {
        packs.push(pack(doc, &at.item(i), gathered));
    }
    packs
}

fn pack<'j>(doc: &'j document::Pack, at: &Pointer<'_>, gathered: &mut Gathered) -> Pack<'j> {
    let parts = parts(doc, &at.field("parts"), gathered);
    let covers = field(doc.covers.as_ref(), at, "covers").asked(gathered);
    let price = doc.price.map_or(Ok(0.0), |price| not_negative(Argument::Price, price));
    if doc.per_case == Some(0) {
        gathered.add(&at.field("per_case"), Some("0".into()), "must be at least 1");
    } else if let Err(error) = price {
        let value = doc.price.map(exact);
        gathered.add(&at.field("price"), value, refusal(error));
    } else if doc.covers.is_none() && doc.parts.as_ref().is_none_or(Vec::is_empty) {
        gathered.add(at, None, "says neither what it covers nor what is in its parts; give covers or parts");
    }
    Pack { doc, parts, covers }
}

fn parts<'j>(
    doc: &'j document::Pack,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Vec<(&'j str, PartAmount)> {
    let list = doc.parts.as_deref().unwrap_or_default();
    name_once(&|i| Some(list.get(i)?.part.as_str()), "part", at, gathered);
    let mut parts = Vec::new();
    for (i, part) in list.iter().enumerate() {
        if let Some(usable) = usable(part, &at.item(i), gathered) {
            parts.push((part.part.as_str(), usable));
        }
    }
    parts
}

/// What can be got out of a part: the fill, where it does not say.
fn usable(part: &document::Part, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<PartAmount> {
    let fill = content(Some(&part.fill), at, "fill", gathered);
    let usable = content(part.usable.as_ref(), at, "usable", gathered);
    let fill = fill?;
    let Some(usable) = usable else { return Some(fill) };
    let more = match (fill, usable) {
        (PartAmount::Volume(fill), PartAmount::Volume(usable)) => usable > fill,
        (PartAmount::Mass(fill), PartAmount::Mass(usable)) => usable > fill,
        _ => {
            let message = "is measured otherwise than the fill; give both by volume or both by mass";
            gathered.add(&at.field("usable"), None, message);
            return None;
        }
    };
    if more {
        let value = part.usable.as_ref().map(shown);
        gathered.add(&at.field("usable"), value, "is more than the fill; check the two");
    }
    Some(usable)
}

/// A volume or a mass of product.
fn content(
    doc: Option<&document::Quantity>,
    at: &Pointer<'_>,
    name: &str,
    gathered: &mut Gathered,
) -> Option<PartAmount> {
    let check = |value, powers| {
        positive(Argument::ProductAmount, value)?;
        Ok(match powers {
            Volume::POWERS => Some(PartAmount::Volume(Volume::from_base(value))),
            Mass::POWERS => Some(PartAmount::Mass(Mass::from_base(value))),
            _ => None,
        })
    };
    let wanted = "an amount of product, volume or mass,";
    field(doc, at, name).one_of(&Bases::default(), wanted, check, gathered)
}
