//! A treatment: the dose its label states, what is in the product, and what its maker declares.

use alloc::format;
use alloc::vec::Vec;

use chrono::NaiveDate;
use hilum::Argument;
use hilum::error::positive;
use hilum::quantity::{MassPerVolume, Measure, Ratio};
use hilum::rate::{ActiveContent, Content, Density};
use hilum::seed::{Bushel, Share, UnitOfSeeds};
use hilum::text::Bases;
use hilum::viability::Life;

use super::ask::{Asked, field, shown};
use super::living::{self, Living};
use super::name_once;
use super::order::bushel;
use super::pack::{self, Pack};
use crate::document;
use crate::list::keep;
use crate::places::Places;
use crate::problem::{Gathered, Pointer, quoted};
use crate::read::unknown;

/// A treatment whose every field has been looked at, but for what depends on the order.
#[derive(Debug)]
pub(crate) struct Treatment<'j> {
    pub(crate) doc: &'j document::Treatment,
    pub(crate) tank: Option<usize>,
    pub(crate) stated: Stated<'j>,
    pub(crate) also: Vec<Asked<'j>>,
    pub(crate) min_rate: Option<Asked<'j>>,
    pub(crate) max_rate: Option<Asked<'j>>,
    pub(crate) label_unit: Option<UnitOfSeeds>,
    pub(crate) label_bushel: Option<Bushel>,
    pub(crate) density: Option<Density>,
    pub(crate) actives: Vec<(&'j str, Content)>,
    pub(crate) with_living: Vec<WithLiving>,
    pub(crate) living: Option<Living>,
    pub(crate) packs: Vec<Pack<'j>>,
    pub(crate) expires: Option<NaiveDate>,
}

/// The statement that governs.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Stated<'j> {
    Product(Asked<'j>),
    Active(Asked<'j>, Content),
    Cells(Asked<'j>),
}

/// What a maker declares of one living product.
#[derive(Clone, Copy, Debug)]
pub(crate) struct WithLiving {
    /// Index of the living treatment.
    pub(crate) living: usize,
    pub(crate) same_tank: bool,
    pub(crate) same_seed: Option<bool>,
    pub(crate) dry_between: bool,
    pub(crate) life: Option<Life>,
}

/// What treatments are read with.
pub(crate) struct Shed<'a, 'j> {
    pub(crate) job: &'j document::Job,
    /// Products by name.
    pub(crate) products: &'a Places<'j>,
    /// Tanks by name.
    pub(crate) tanks: &'a Places<'j>,
}

/// All treatments.
pub(crate) fn treatments<'j>(
    shed: &Shed<'_, 'j>,
    root: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Vec<Treatment<'j>> {
    let at = root.field("treatments");
    let mut treatments = Vec::new();
    for (i, doc) in shed.job.treatments.iter().enumerate() {
        keep(&mut treatments, treatment(doc, shed, &at.item(i), gathered));
    }
    treatments
}

fn treatment<'j>(
    doc: &'j document::Treatment,
    shed: &Shed<'_, 'j>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Treatment<'j>> {
    let tank = doc.tank.as_ref().and_then(|name| find(name, "tank", shed.tanks, &at.field("tank"), gathered));
    let density = density(doc.density.as_ref(), at, gathered);
    let actives = actives(doc, &at.field("actives"), gathered);
    let stated = stated(doc, actives.as_deref(), at, gathered);
    let label_unit =
        field(doc.label_unit.as_ref(), at, "label_unit").get("a number of seeds", UnitOfSeeds::new, gathered);
    let label_bushel = bushel(doc.label_bushel.as_ref(), at, "label_bushel", gathered);
    let also = asked_list(doc.also_stated.as_deref(), &at.field("also_stated"), gathered);
    let min_rate = field(doc.min_rate.as_ref(), at, "min_rate").asked(gathered);
    let max_rate = field(doc.max_rate.as_ref(), at, "max_rate").asked(gathered);
    let with_living = with_living(doc, shed, &at.field("with_living"), gathered);
    let living =
        doc.living.as_ref().and_then(|living| living::living(living, doc, &at.field("living"), gathered));
    let packs = pack::packs(doc, &at.field("packs"), gathered);
    let expires = date(doc.expires.as_deref(), &at.field("expires"), gathered);
    Some(Treatment {
        doc,
        tank,
        stated: stated?,
        also,
        min_rate,
        max_rate,
        label_unit,
        label_bushel,
        density,
        actives: actives?,
        with_living,
        living,
        packs,
        expires,
    })
}

/// Mass per volume.
#[inline(never)]
pub(crate) fn density(
    doc: Option<&document::Quantity>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Density> {
    field(doc, at, "density").get("a density, mass per volume,", Density::new, gathered)
}

/// The index of what a name refers to.
pub(crate) fn find(
    name: &str,
    what: &str,
    known: &Places<'_>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<usize> {
    let found = known.get(name);
    if found.is_none() {
        let names = known.names();
        let message = if names.is_empty() {
            format!("is an unknown {what}; the job lists none")
        } else {
            unknown(what, name, &names)
        };
        gathered.add(at, Some(quoted(name)), message);
    }
    found
}

fn asked_list<'j>(
    list: Option<&'j [document::Quantity]>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Vec<Asked<'j>> {
    let mut read = Vec::new();
    for (i, doc) in list.unwrap_or_default().iter().enumerate() {
        keep(&mut read, Asked::read(doc, &at.item(i), gathered));
    }
    read
}

/// Exactly one of `rate`, `active_rate` and `cells`.
fn stated<'j>(
    doc: &'j document::Treatment,
    actives: Option<&[(&str, Content)]>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Stated<'j>> {
    match (&doc.rate, &doc.active_rate, &doc.cells) {
        (Some(rate), None, None) => Asked::read(rate, &at.field("rate"), gathered).map(Stated::Product),
        (None, Some(active), None) => {
            let at = at.field("active_rate");
            let asked = Asked::read(&active.rate, &at.field("rate"), gathered);
            let content = actives?.iter().find(|(name, _)| *name == active.active);
            if content.is_none() {
                let mut known = Vec::new();
                for (name, _) in actives? {
                    known.push(*name);
                }
                let message = if known.is_empty() {
                    "is not listed; give the product's actives with their content".into()
                } else {
                    unknown("active of this product", &active.active, &known)
                };
                gathered.add(&at.field("active"), Some(quoted(&active.active)), message);
            }
            Some(Stated::Active(asked?, content?.1))
        }
        (None, None, Some(cells)) => {
            if doc.living.is_none() {
                let message = "is a dose of living cells; give the product's living titre";
                gathered.add(&at.field("cells"), Some(shown(cells)), message);
                return None;
            }
            Asked::read(cells, &at.field("cells"), gathered).map(Stated::Cells)
        }
        (None, None, None) => {
            gathered.missing(&at.field("rate"), "a rate such as \"2.5 fl oz/cwt\", or active_rate, or cells");
            None
        }
        (Some(_), _, _) => {
            let other = if doc.active_rate.is_some() { "active_rate" } else { "cells" };
            gathered.add(
                &at.field(other),
                None,
                "stands beside rate; state the dose once (others go into also_stated)",
            );
            None
        }
        (None, Some(_), Some(_)) => {
            gathered.add(&at.field("cells"), None, "stands beside active_rate; state the dose once");
            None
        }
    }
}

/// What is in the product; `None` where some of it is wrong.
fn actives<'j>(
    doc: &'j document::Treatment,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Vec<(&'j str, Content)>> {
    let list = doc.actives.as_deref().unwrap_or_default();
    let unique = name_once(&|i| Some(list.get(i)?.active.as_str()), "active", at, gathered);
    let mut read = Vec::new();
    for (i, active) in list.iter().enumerate() {
        if let Some(content) = content(&active.content, &at.item(i), gathered) {
            read.push((active.active.as_str(), content));
        }
    }
    (unique && read.len() == list.len()).then_some(read)
}

fn content(doc: &document::Quantity, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Content> {
    let check = |value, powers| {
        positive(Argument::ActiveContent, value)?;
        match powers {
            MassPerVolume::POWERS => {
                ActiveContent::new(MassPerVolume::from_base(value)).map(Content::PerVolume).map(Some)
            }
            Ratio::POWERS => Share::new(Ratio::from_base(value)).map(Content::ByMass).map(Some),
            _ => Ok(None),
        }
    };
    let wanted = "a content, mass per volume or a share by mass,";
    field(Some(doc), at, "content").one_of(&Bases::default(), wanted, check, gathered)
}

fn with_living(
    doc: &document::Treatment,
    shed: &Shed<'_, '_>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Vec<WithLiving> {
    let list = doc.with_living.as_deref().unwrap_or_default();
    name_once(&|i| Some(list.get(i)?.living.as_str()), "living", at, gathered);
    let mut read = Vec::new();
    for (i, with) in list.iter().enumerate() {
        let at = at.item(i);
        let living = living_product(&with.living, shed, &at.field("living"), gathered);
        if with.living == doc.product {
            let message = "is the product itself; name another, or leave this out";
            gathered.add(&at.field("living"), Some(quoted(&with.living)), message);
            continue;
        }
        let life = field(with.life.as_ref(), &at, "life").duration(gathered);
        let Some(living) = living else { continue };
        read.push(WithLiving {
            living,
            same_tank: with.same_tank.unwrap_or_default(),
            same_seed: with.same_seed,
            dry_between: with.dry_between.unwrap_or_default(),
            life: life.and_then(|life| Life::new(life).ok()),
        });
    }
    read
}

fn living_product(
    name: &str,
    shed: &Shed<'_, '_>,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<usize> {
    let index = find(name, "product", shed.products, at, gathered)?;
    let alive = shed.job.treatments.get(index).is_some_and(|treatment| treatment.living.is_some());
    if !alive {
        gathered.add(at, Some(quoted(name)), "is not a living product; give it living, or leave this out");
    }
    alive.then_some(index)
}

fn date(text: Option<&str>, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<NaiveDate> {
    let text = text?;
    let day = crate::instant::day(text);
    if day.is_none() {
        gathered.add(at, Some(quoted(text)), "is not a day; write year-month-day as in \"2027-09-30\"");
    }
    day
}
