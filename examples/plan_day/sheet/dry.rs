//! Products that go on without a tank.

use hilum_job::document::{Job, Plan};

use super::MARGIN;
use crate::number::product;
use crate::table::Align::{Left, Right};
use crate::table::Table;

/// What each order takes.
pub(super) fn lines(_: &Job, plan: &Plan) -> Vec<String> {
    let mut table = Table::new([(Left, "product"), (Left, "order"), (Right, "weigh out")]).beside(MARGIN);
    for dry in plan.dry.iter().flatten() {
        for (i, order) in dry.orders.iter().enumerate() {
            let name = if i == 0 { dry.product.clone() } else { String::new() };
            table.row([name, order.order.clone(), product(&order.mass)]);
        }
    }
    table.lines()
}
