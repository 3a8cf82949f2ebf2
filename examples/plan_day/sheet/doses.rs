//! The dose of each product in every basis that a label may use.

use hilum_job::document::{Job, Out, Plan, PlannedDose};

use super::MARGIN;
use super::words::{orders, together};
use crate::number::with_unit;
use crate::table::Align::{Left, Right};
use crate::table::Table;

/// One line for each product and each run of orders that get the same.
pub(super) fn lines(job: &Job, plan: &Plan) -> Vec<String> {
    let mut table = Table::new([
        (Left, "product"),
        (Left, "orders"),
        (Right, "by mass"),
        (Right, "by seed"),
        (Right, "by unit"),
        (Right, "by bushel"),
        (Right, "by area"),
    ])
    .beside(MARGIN);
    for treatment in &plan.treatments {
        let shown = treatment.orders.iter().map(|dose| (dose.order.clone(), cells(dose)));
        for (i, (numbers, [mass, seed, unit, bushel, area])) in together(shown).into_iter().enumerate() {
            let name = if i == 0 { treatment.product.clone() } else { String::new() };
            table.row([name, orders(job, &numbers), mass, seed, unit, bushel, area]);
        }
    }
    table.lines()
}

fn cells(dose: &PlannedDose) -> [String; 5] {
    let shown = |out: &Option<Out>| out.as_ref().map(with_unit).unwrap_or_default();
    [
        with_unit(&dose.per_mass),
        with_unit(&dose.per_seed),
        shown(&dose.per_unit),
        shown(&dose.per_bushel),
        shown(&dose.per_area),
    ]
}
