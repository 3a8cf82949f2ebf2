//! The facts of a bag tag and of the treating record, per order.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::Worked;
use crate::document::Record;

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
    let treated_with = draft.on_order(order).map(|(_, line, _)| line.treatment.doc.product.clone()).collect();
    let on_seed = worked.on_seed.iter().filter(|on_seed| on_seed.order == order);
    Record {
        treated_with,
        actives: on_seed.map(|on_seed| on_seed.active.to_string()).collect(),
        cautions: CAUTIONS.iter().map(ToString::to_string).collect(),
        treated_on: None,
        inoculant_use_before: None,
        max_sowing: None,
        missing: Vec::<String>::new(),
    }
}
