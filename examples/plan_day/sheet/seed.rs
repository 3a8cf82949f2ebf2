//! The orders: whose seed, and how much it is.

use hilum_job::document::{Job, Order, Out, Plan, PlannedOrder};

use super::MARGIN;
use super::words::{distinct, given};
use crate::number::{count, seeds};
use crate::table::Align::{Left, Right};
use crate::table::Table;

/// One line for each order.
pub(super) fn lines(job: &Job, plan: &Plan) -> Vec<String> {
    let unit = |of: fn(&PlannedOrder) -> Option<&Out>| {
        plan.orders.iter().find_map(of).map_or_else(String::new, |out| out.unit.to_string())
    };
    let mut table = Table::new([
        (Left, "order".to_owned()),
        (Left, "for".to_owned()),
        (Left, "lot".to_owned()),
        (Left, "crop".to_owned()),
        (Right, format!("seed\n{}", unit(|order| Some(&order.mass)))),
        (Right, "between".to_owned()),
        (Right, "seeds".to_owned()),
        (Right, "units".to_owned()),
        (Right, "bu".to_owned()),
        (Right, format!("sows\n{}", unit(|order| order.area.as_ref()))),
        (Right, "packages".to_owned()),
    ])
    .beside(MARGIN);
    let one_crop = distinct(job.orders.iter().map(|order| order.crop.as_deref().unwrap_or(""))).len() < 2;
    for (order, planned) in job.orders.iter().zip(&plan.orders) {
        table.row(cells(order, planned, one_crop));
    }
    table.lines()
}

fn cells(order: &Order, planned: &PlannedOrder, one_crop: bool) -> [String; 11] {
    let shown = |out: &Option<Out>| out.as_ref().map(count).unwrap_or_default();
    let between = match (&planned.mass_low, &planned.mass_high) {
        (Some(low), Some(high)) if count(low) != count(high) => format!("{} to {}", count(low), count(high)),
        _ => String::new(),
    };
    let holds = order.package.as_ref().map(|package| given(&package.holds));
    let packages = match (planned.packages, holds) {
        (Some(number), Some(holds)) => format!("{number} x {holds}"),
        (Some(number), None) => number.to_string(),
        _ => String::new(),
    };
    [
        planned.order.clone(),
        order.customer.clone().unwrap_or_default(),
        planned.lot.clone(),
        order.crop.clone().filter(|_| !one_crop).unwrap_or_default(),
        count(&planned.mass),
        between,
        seeds(&planned.seeds),
        shown(&planned.units),
        shown(&planned.bushels),
        shown(&planned.area),
        packages,
    ]
}
