//! What the tag on the bag and the treating record must say.

use hilum_job::document::{Job, Plan, Record};

use super::MARGIN;
use super::words::{distinct, orders};
use crate::number::{at_most, joined};
use crate::table::labelled;

/// Orders with the same facts together, then what is missing.
pub(super) fn lines(job: &Job, plan: &Plan) -> Vec<String> {
    let mut groups: Vec<(Vec<&str>, String)> = Vec::new();
    for order in &plan.orders {
        let facts = facts(&order.record);
        match groups.iter_mut().find(|(_, known)| *known == facts) {
            Some((numbers, _)) => numbers.push(&order.order),
            None => groups.push((vec![&order.order], facts)),
        }
    }
    let mut lines: Vec<String> = groups
        .iter()
        .flat_map(|(numbers, facts)| labelled(MARGIN, "", &format!("{}: {facts}", orders(job, numbers))))
        .collect();
    let missing = distinct(plan.orders.iter().flat_map(|order| &order.record.missing).map(String::as_str));
    if !missing.is_empty() {
        lines.extend(labelled(MARGIN, "Write in: ", &missing.join(", ")));
    }
    lines
}

fn facts(record: &Record) -> String {
    let mut facts = vec![format!("treated with {}", record.treated_with.join(", "))];
    if !record.actives.is_empty() {
        facts.push(format!("active: {}", record.actives.join(", ")));
    }
    facts.extend(record.treated_on.as_ref().map(|day| format!("treated on {day}")));
    facts.extend(record.inoculant_use_before.as_ref().map(|day| format!("inoculant: use before {day}")));
    facts.extend(
        record
            .max_sowing
            .as_ref()
            .map(|rate| format!("sow at most {}", joined(&at_most(rate.value), &rate.unit))),
    );
    facts.join("; ") + "."
}
