//! The dose of each product in every basis that a label may use.

use hilum_job::document::{Job, Out, Plan, PlannedDose};

use super::MARGIN;
use super::group::{self, Column};
use crate::table::Align::{Left, Right};
use crate::table::Table;

/// One basis of a dose.
type Basis = fn(&PlannedDose) -> Option<&Out>;

const BASES: [Basis; 5] = [
    |dose| Some(&dose.per_mass),
    |dose| Some(&dose.per_seed),
    |dose| dose.per_unit.as_ref(),
    |dose| dose.per_bushel.as_ref(),
    |dose| dose.per_area.as_ref(),
];

/// One line for each product and each run of orders that get the same.
pub(super) fn lines(job: &Job, plan: &Plan) -> Vec<String> {
    let mut table = Table::new([
        (Left, "product"),
        (Right, "by mass"),
        (Right, "by seed"),
        (Right, "by unit"),
        (Right, "by bushel"),
        (Right, "by area"),
    ])
    .beside(MARGIN);
    for treatment in &plan.treatments {
        let numbers: Vec<&str> = treatment.orders.iter().map(|dose| dose.order.as_str()).collect();
        let columns = BASES.map(|basis| Column::of(treatment.orders.iter().map(basis)));
        group::add(&mut table, job, &treatment.product, &numbers, &columns);
    }
    table.lines()
}
