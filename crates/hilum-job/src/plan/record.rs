//! The facts of a bag tag and of the treating record, per order.
//!
//! What they must say is asked by:
//! - 7 CFR 201.31a (a) and (b): that the seed is treated, and the commonly accepted name of each substance.
//! - 7 CFR 201.24a: the month and year beyond which an inoculant on the seed is no longer claimed to work.
//! - 7 CFR 201.7a: the name of every substance in the complete record of a lot, and a sample of it.
//! - 7 CFR 110.3 (a): product and registration number, total amount, place, crop, day, and the applicator
//!   with certification number, of a restricted-use pesticide. Part 110 was rescinded with effect from
//!   11 July 2025 (90 FR, 12 May 2025, FR Doc. 2025-08220; seen in summaries only); states and 40 CFR
//!   171.303(b)(7) go on asking for these facts, the latter of commercial applicators (seen in a summary
//!   only).
//!
//! A product's lot number is in none of them, so it is not missed here.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use hilum::quantity::{Measure, SeedsPerArea};

use super::draft::Draft;
use super::out::SOWING;
use super::{Worked, clock};
use crate::document::Record;
use crate::model::treatment::Treatment;
use crate::places::Places;
use crate::problem::quoted;

/// The standing cautions: common practice, and what seed laws ask of a tag (7 CFR 201.31a).
pub(crate) const CAUTIONS: [&str; 7] = [
    "The product labels, local codes and licensed practice come before this sheet.",
    "Treated seed is not food, feed or oil; keep it from people and animals.",
    "Wear the protective equipment that each label asks for.",
    "Treated seed must be coloured; leftover treated seed is never mixed with grain.",
    "Keep the treating record and a sample of every treated lot.",
    "Dispose of leftover mix, rinse water, packs and seed as the labels say.",
    "Live counts are estimates, not a promise of potency.",
];

/// One order's record.
pub(crate) fn record(worked: &Worked<'_, '_>, order: usize) -> Record {
    let draft = &worked.draft;
    let begun = worked.batches.first_seed.get(order).copied().flatten();
    let treated_on = begun.and_then(|seconds| clock::day(draft, seconds)).map(|day| day.to_string());
    let use_before = use_before(worked, order);
    let mut treated_with = Vec::new();
    for (_, line, _) in draft.on_order(order) {
        treated_with.push(line.treatment.doc.product.clone());
    }
    Record {
        treated_with,
        actives: actives(draft, order),
        cautions: cautions(draft, order),
        missing: missing(worked, order, treated_on.is_some(), use_before.is_some()),
        treated_on,
        inoculant_use_before: use_before,
        max_sowing: max_sowing(worked, order).map(|most| SOWING.of(most, draft.units())),
    }
}

/// Common names of all that is on the seed, whether or not its amount is known.
pub(crate) fn actives(draft: &Draft<'_, '_>, order: usize) -> Vec<String> {
    let (mut seen, mut actives) = (Places::default(), Vec::new());
    let mut add = |name| {
        if seen.first(name, actives.len()) == actives.len() {
            actives.push(name.into());
        }
    };
    for (_, line, _) in draft.on_order(order) {
        line.treatment.actives.iter().for_each(|(name, _)| add(name));
    }
    if let Some(order) = draft.order(order) {
        order.on_seed.iter().for_each(|(name, _)| add(name));
    }
    actives
}

/// The standing ones, and what must dry before a living product follows or the reverse.
pub(crate) fn cautions(draft: &Draft<'_, '_>, order: usize) -> Vec<String> {
    let gets = |living: usize| draft.on_order(order).any(|(t, ..)| t == living);
    let product = |t: usize| draft.lines.get(t).map_or("", |line| line.treatment.doc.product.as_str());
    let mut cautions: Vec<String> = CAUTIONS.map(String::from).into();
    for (_, line, _) in draft.on_order(order) {
        for with in line.treatment.with_living.iter().filter(|with| with.dry_between && gets(with.living)) {
            let (own, living) = (quoted(&line.treatment.doc.product), quoted(product(with.living)));
            cautions.push(format!("Let the seed dry between {own} and {living}."));
        }
    }
    cautions
}

/// The day before which the inoculants work: the earliest last moment of all of them, rounded down. Nothing
/// is promised where one of them states no life, and no day after treating where its cells are too few already.
fn use_before(worked: &Worked<'_, '_>, order: usize) -> Option<String> {
    let doses = worked.draft.of_order.get(order)?;
    let mut earliest: Option<f64> = None;
    for facts in doses.iter().filter_map(|(t, place)| worked.living(*t, *place)) {
        let few = facts.minimum.is_some_and(|minimum| facts.at_treating.falls_below(minimum));
        let lasts = if few { 0.0 } else { facts.plant_by?.0 };
        let last = facts.treated_from? + lasts;
        earliest = Some(earliest.map_or(last, |earliest| earliest.min(last)));
    }
    clock::day(&worked.draft, earliest?).map(|day| day.to_string())
}

/// The sowing rate at which the first of the actives meets its season limit.
fn max_sowing(worked: &Worked<'_, '_>, order: usize) -> Option<SeedsPerArea> {
    let start = worked.on_seed.partition_point(|on_seed| on_seed.order < order);
    let own = worked.on_seed.iter().skip(start).take_while(|on_seed| on_seed.order == order);
    own.filter_map(|on_seed| Some(on_seed.season?.max_sowing(on_seed.per_seed).to_base()))
        .reduce(f64::min)
        .map(SeedsPerArea::from_base)
}

/// What a tag or a record asks for and the job does not say. A registration, a place and an applicator are
/// asked of what has an active ingredient.
fn missing(worked: &Worked<'_, '_>, order: usize, dated: bool, promised: bool) -> Vec<String> {
    let draft = &worked.draft;
    let on_seed: Vec<&Treatment<'_>> = draft.on_order(order).map(|(_, line, _)| line.treatment).collect();
    let mut missing = Vec::new();
    if draft.order(order).is_some_and(|order| blank(order.doc.crop.as_ref())) {
        missing.push("crop".into());
    }
    if !dated {
        missing.push("day of treating".into());
    }
    for treatment in &on_seed {
        let name = quoted(&treatment.doc.product);
        if unnamed(treatment) {
            missing.push(format!("common name of the substance in {name}"));
        }
        if !treatment.actives.is_empty() && blank(treatment.doc.registration.as_ref()) {
            missing.push(format!("registration number of {name}"));
        }
    }
    if !promised && on_seed.iter().any(|treatment| treatment.living.is_some()) {
        missing.push("day beyond which the inoculant is not claimed to be effective".into());
    }
    if on_seed.iter().any(|treatment| !treatment.actives.is_empty()) {
        let of_run = ["place of treating", "applicator", "certification number of the applicator"];
        missing.extend(of_run.map(String::from));
    }
    missing
}

fn blank(fact: Option<&String>) -> bool {
    fact.is_none_or(|fact| fact.trim().is_empty())
}

/// A product whose label names no active is known by its name; the tag wants the common one.
pub(crate) fn unnamed(treatment: &Treatment<'_>) -> bool {
    treatment.actives.is_empty() && treatment.living.is_none() && !treatment.doc.colourant.unwrap_or_default()
}
