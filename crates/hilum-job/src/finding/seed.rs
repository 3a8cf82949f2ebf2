//! Is the seed fit to be treated?

use alloc::format;

use hilum::viability::storage::{FROZEN, frozen};

use super::Found;
use super::words::{degrees, order_name};
use crate::document::{Code, Severity, Units};
use crate::plan::Worked;
use crate::problem::quoted;

pub(super) fn findings(worked: &Worked<'_, '_>, found: &mut Found) {
    let draft = &worked.draft;
    for (o, order) in draft.model.orders.iter().enumerate() {
        let wet = || draft.on_order(o).any(|(_, line, _)| line.treatment.tank.is_some());
        let Some(seed) = order.temperature.filter(|seed| frozen(*seed) && wet()) else { continue };
        let message = format!(
            "The seed of order {} is at {} and is to get a liquid, which freezes on it. Warm it above {} ({}) before it is treated.",
            quoted(order_name(worked, o)),
            degrees(seed, draft.units()),
            degrees(FROZEN, Units::Us),
            degrees(FROZEN, Units::Metric),
        );
        found.add(Severity::Stop, Code::FrozenSeed, format!("/orders/{o}/temperature"), message);
    }
}
