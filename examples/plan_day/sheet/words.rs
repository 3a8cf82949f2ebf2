//! Words that several sections share.

use std::borrow::Borrow;

use hilum_job::document::{Job, Quantity};

use crate::number::{JOIN, joined};

/// More names than this are not listed one by one.
const MANY: usize = 12;

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
        Quantity::Text(text) => text.replace(' ', &JOIN.to_string()),
        Quantity::Pair { value, unit } => joined(&value.to_string(), unit),
    }
}

/// Orders by number; all of a job as `all orders`.
pub(super) fn orders<S: Borrow<str>>(job: &Job, numbers: &[S]) -> String {
    if numbers.len() > 1 && numbers.len() == job.orders.len() {
        "all orders".to_owned()
    } else {
        listed(numbers)
    }
}

/// Names with commas; of very many the first and the last.
pub(super) fn listed<S: Borrow<str>>(names: &[S]) -> String {
    match names {
        [first, second, .., last] if names.len() > MANY => {
            let [first, second, last] = [first, second, last].map(Borrow::borrow);
            format!("{first}, {second}, ... {last} ({} in all)", names.len())
        }
        _ => names.join(", "),
    }
}

/// A text under a name.
pub(super) fn under(text: &str) -> String {
    format!("  {text}")
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
