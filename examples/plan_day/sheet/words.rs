//! Words that several sections share.

use hilum_job::document::{Job, Quantity};

/// Names in their first order, each once.
pub(super) fn distinct<'a>(names: impl Iterator<Item = &'a str>) -> Vec<&'a str> {
    let mut seen = Vec::new();
    for name in names {
        if !seen.contains(&name) {
            seen.push(name);
        }
    }
    seen
}

/// `1 order`, `6 orders`
pub(super) fn counted(count: usize, what: &str) -> String {
    format!("{count} {what}{}", if count == 1 { "" } else { "s" })
}

/// A quantity as the job writes it.
pub(super) fn given(quantity: &Quantity) -> String {
    match quantity {
        Quantity::Text(text) => text.clone(),
        Quantity::Pair { value, unit } => format!("{value} {unit}"),
    }
}

/// Orders by number; all of a job that has several as `all orders`.
pub(super) fn orders(job: &Job, numbers: &[&str]) -> String {
    if numbers.len() > 1 && numbers.len() == job.orders.len() {
        "all orders".to_owned()
    } else {
        numbers.join(", ")
    }
}

/// Neighbours that show the same, as one entry with the orders of both.
pub(super) fn together<T: PartialEq>(entries: impl Iterator<Item = (String, T)>) -> Vec<(Vec<String>, T)> {
    let mut groups: Vec<(Vec<String>, T)> = Vec::new();
    for (order, shown) in entries {
        match groups.last_mut() {
            Some((orders, last)) if *last == shown => orders.push(order),
            _ => groups.push((vec![order], shown)),
        }
    }
    groups
}
