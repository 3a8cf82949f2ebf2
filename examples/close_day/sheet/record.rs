//! The record of each order's treating, and what to write in.

use hilum_job::document::{Account, RecordedProduct, TreatingRecord};

use super::MARGIN;
use crate::clock::moment;
use crate::number::{product, seed};
use crate::table::labelled;

/// The facts of each order, then what is missing.
pub(super) fn lines(account: &Account) -> Vec<String> {
    let mut lines = Vec::new();
    for order in &account.orders {
        let label = format!("{}: ", order.order);
        lines.extend(labelled(MARGIN, &label, &facts(&order.record)));
        if !order.record.missing.is_empty() {
            let indent = " ".repeat(label.chars().count());
            let text = format!("Write in: {}.", order.record.missing.join(", "));
            lines.extend(labelled(MARGIN, &indent, &text));
        }
    }
    lines
}

fn facts(record: &TreatingRecord) -> String {
    let mut facts = vec![format!(
        "{} of {}, lot {}",
        seed(&record.treated),
        record.crop.as_deref().unwrap_or("seed"),
        record.lot
    )];
    match (&record.from, &record.to) {
        (Some(from), Some(to)) => facts.push(format!("{} to {}", moment(from), moment(to))),
        (Some(one), None) | (None, Some(one)) => facts.push(moment(one)),
        (None, None) => {}
    }
    facts.extend(record.place.clone());
    facts.extend(record.customer.as_ref().map(|customer| format!("for {customer}")));
    facts.extend(record.operator.as_ref().map(|operator| match &record.certificate {
        Some(certificate) => format!("applied by {operator}, certificate {certificate}"),
        None => format!("applied by {operator}"),
    }));
    let products: Vec<String> = record.products.iter().map(treated_with).collect();
    facts.push(format!("treated with {}", products.join(" and with ")));
    if !record.actives.is_empty() {
        facts.push(format!("active: {}", record.actives.join(", ")));
    }
    facts.extend(record.inoculant_use_before.as_ref().map(|day| format!("inoculant: use before {day}")));
    facts.join("; ") + "."
}

fn treated_with(recorded: &RecordedProduct) -> String {
    let mut words = vec![recorded.product.clone()];
    words.extend(recorded.amount.as_ref().map(product));
    words.extend(recorded.registration.as_ref().map(|number| format!("registration {number}")));
    words.extend(recorded.lot_number.as_ref().map(|lot| format!("lot {lot}")));
    words.join(", ")
}
