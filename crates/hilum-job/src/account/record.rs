//! The record of one order's treating, and what is missing from it.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::Day;
use super::order::Done;
use crate::document::{RecordedProduct, TreatingRecord};
use crate::model::run::RunOrder;
use crate::model::treatment::Treatment;
use crate::plan::CAUTIONS;
use crate::plan::active::OnSeed;
use crate::plan::out::SEED_MASS;

/// One order's record.
pub(crate) fn record(
    day: &Day<'_, '_>,
    read: &RunOrder<'_>,
    done: &Done,
    on_seed: &[OnSeed<'_>],
) -> Option<TreatingRecord> {
    let order = day.draft.order(done.order)?.doc;
    let instant = read.from.or(read.to);
    let mut record = TreatingRecord {
        products: products(day, done),
        actives: actives(day, done, on_seed),
        crop: order.crop.clone(),
        lot: order.lot.clone(),
        treated: SEED_MASS.of(done.seed.get(), day.draft.units()),
        treated_on: instant.map(|instant| instant.date_naive().to_string()),
        from: read.doc.from.clone(),
        to: read.doc.to.clone(),
        place: read.doc.place.clone(),
        operator: read.doc.operator.clone(),
        certificate: read.doc.certificate.clone(),
        cautions: CAUTIONS.iter().map(ToString::to_string).collect(),
        missing: Vec::new(),
    };
    record.missing = missing(day, done, &record);
    Some(record)
}

fn products(day: &Day<'_, '_>, done: &Done) -> Vec<RecordedProduct> {
    let units = day.draft.units();
    let product = |(t, treatment): (usize, &Treatment<'_>)| RecordedProduct {
        product: treatment.doc.product.clone(),
        registration: treatment.doc.registration.clone(),
        lot_number: treatment.doc.lot_number.clone(),
        amount: done.applied().find(|applied| applied.treatment == t).map(|applied| applied.used.out(units)),
    };
    day.draft.on_order(done.order).map(|(t, line, _)| product((t, line.treatment))).collect()
}

/// The substances' names: those on the seed, and those of products whose amount is not known.
fn actives(day: &Day<'_, '_>, done: &Done, on_seed: &[OnSeed<'_>]) -> Vec<String> {
    let in_products = day.draft.on_order(done.order).flat_map(|(_, line, _)| &line.treatment.actives);
    let mut names: Vec<String> = Vec::new();
    for name in in_products.map(|(name, _)| *name).chain(on_seed.iter().map(|on_seed| on_seed.active)) {
        if !names.iter().any(|known| known == name) {
            names.push(name.into());
        }
    }
    names
}

/// What is empty. A registration is asked of what has an active ingredient; an active ingredient of what is
/// neither a living product nor a colourant.
fn missing(day: &Day<'_, '_>, done: &Done, record: &TreatingRecord) -> Vec<String> {
    let mut missing = Vec::new();
    for ((_, line, _), product) in day.draft.on_order(done.order).zip(&record.products) {
        let doc = line.treatment.doc;
        if blank(product.registration.as_ref()) && !line.treatment.actives.is_empty() {
            missing.push(format!("registration number of {}", product.product));
        }
        if line.treatment.actives.is_empty() && doc.living.is_none() && doc.colourant != Some(true) {
            missing.push(format!("active ingredient of {}", product.product));
        }
        if product.amount.is_none() {
            missing.push(format!("amount of {} that was applied", product.product));
        }
    }
    let facts = [
        ("crop", &record.crop),
        ("day of treating", &record.treated_on),
        ("place of treating", &record.place),
        ("name of the applicator", &record.operator),
        ("certification number of the applicator", &record.certificate),
    ];
    missing.extend(facts.iter().filter(|(_, fact)| blank(fact.as_ref())).map(|(name, _)| name.to_string()));
    missing
}

fn blank(fact: Option<&String>) -> bool {
    fact.is_none_or(|fact| fact.trim().is_empty())
}
