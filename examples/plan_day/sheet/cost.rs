//! What is opened and what goes on seed, in money.

use hilum_job::document::{Job, Plan};

use super::MARGIN;
use crate::number::money;
use crate::table::Align::{Left, Right};
use crate::table::{Table, plain};

/// Each product, then all.
pub(super) fn lines(job: &Job, plan: &Plan) -> Vec<String> {
    let Some(cost) = &plan.cost else { return Vec::new() };
    let currency = plain(job.currency.as_deref().unwrap_or(""));
    let mut table = Table::new([
        (Left, currency.as_str()),
        (Right, "opened"),
        (Right, "on the seed"),
        (Right, "by unit"),
        (Right, "by area"),
    ])
    .beside(MARGIN);
    let shown = |value: Option<f64>| value.map(money).unwrap_or_default();
    for treatment in plan.treatments.iter().filter(|treatment| treatment.cost_opened.is_some()) {
        let [opened, applied] = [treatment.cost_opened, treatment.cost_applied].map(shown);
        table.row([treatment.product.clone(), opened, applied, String::new(), String::new()]);
    }
    let [opened, applied] = [cost.opened, cost.applied].map(money);
    table.row(["= all".to_owned(), opened, applied, shown(cost.per_unit), shown(cost.per_area)]);
    table.lines()
}
