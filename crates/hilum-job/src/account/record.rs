//! The record of one order's treating, and what is missing from it.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::order::Done;
use super::{Day, living};
use crate::document::{RecordedProduct, TreatingRecord};
use crate::model::run::RunOrder;
use crate::plan::out::SEED_MASS;
use crate::plan::{LivingFacts, record};
use crate::problem::quoted;

/// One order's record.
pub(crate) fn record(
    day: &Day<'_, '_>,
    read: &RunOrder<'_>,
    done: &Done,
    alive: &[(usize, LivingFacts)],
) -> Option<TreatingRecord> {
    let order = day.draft.order(done.order)?.doc;
    let draft = &day.draft;
    let instant = read.from.or(read.to);
    let mut record = TreatingRecord {
        products: products(day, done),
        actives: record::actives(draft, done.order),
        customer: order.customer.clone(),
        crop: order.crop.clone(),
        lot: order.lot.clone(),
        treated: SEED_MASS.of(done.seed.get(), draft.units()),
        treated_on: instant.map(|instant| instant.date_naive().to_string()),
        from: read.doc.from.clone(),
        to: read.doc.to.clone(),
        place: read.doc.place.clone(),
        operator: read.doc.operator.clone(),
        certificate: read.doc.certificate.clone(),
        inoculant_use_before: living::use_before(day, read, done, alive),
        cautions: record::cautions(draft, done.order),
        missing: Vec::new(),
    };
    record.missing = missing(day, done, &record);
    Some(record)
}

fn products(day: &Day<'_, '_>, done: &Done) -> Vec<RecordedProduct> {
    let units = day.draft.units();
    let mut products = Vec::new();
    for (t, line, _) in day.draft.on_order(done.order) {
        let doc = line.treatment.doc;
        products.push(RecordedProduct {
            product: doc.product.clone(),
            registration: doc.registration.clone(),
            lot_number: doc.lot_number.clone(),
            amount: done.of(t).map(|applied| applied.used.out(units)),
        });
    }
    products
}

/// What is empty, in the words of the plan's record.
fn missing(day: &Day<'_, '_>, done: &Done, record: &TreatingRecord) -> Vec<String> {
    let mut missing = Vec::new();
    let mut alive = false;
    for ((_, line, _), product) in day.draft.on_order(done.order).zip(&record.products) {
        let name = quoted(&product.product);
        if record::unnamed(line.treatment) {
            missing.push(format!("common name of the substance in {name}"));
        }
        if blank(product.registration.as_ref()) && !line.treatment.actives.is_empty() {
            missing.push(format!("registration number of {name}"));
        }
        if product.amount.is_none() {
            missing.push(format!("amount of {name} that was applied"));
        }
        alive |= line.treatment.living.is_some();
    }
    if alive && record.inoculant_use_before.is_none() {
        missing.push("day beyond which the inoculant is not claimed to be effective".into());
    }
    let facts = [
        ("crop", &record.crop),
        ("day of treating", &record.treated_on),
        ("place of treating", &record.place),
        ("applicator", &record.operator),
        ("certification number of the applicator", &record.certificate),
    ];
    for (name, fact) in facts {
        if blank(fact.as_ref()) {
            missing.push(name.into());
        }
    }
    missing
}

fn blank(fact: Option<&String>) -> bool {
    fact.is_none_or(|fact| fact.trim().is_empty())
}
