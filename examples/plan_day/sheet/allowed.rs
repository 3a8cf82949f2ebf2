//! Limits and how much of them is used.

use hilum_job::document::{Job, Plan, PlannedActive, PlannedOrder};

use super::MARGIN;
use super::group::{self, Column};
use super::words::distinct;
use crate::number::{at_most, percent};
use crate::table::Align::{Left, Right};
use crate::table::Table;

/// Liquid, then active ingredients.
pub(super) fn lines(job: &Job, plan: &Plan) -> Vec<String> {
    let liquid = liquid(job, plan);
    let actives = actives(job, plan);
    let between = if liquid.is_empty() || actives.is_empty() { vec![] } else { vec![String::new()] };
    [liquid, between, actives].concat()
}

fn liquid(job: &Job, plan: &Plan) -> Vec<String> {
    let titles = [(Left, "liquid"), (Right, "by mass"), (Right, "at most"), (Right, "used")];
    let mut table = Table::new(titles).beside(MARGIN);
    let wet: Vec<&PlannedOrder> =
        plan.orders.iter().filter(|order| order.liquid.per_mass.value > 0.0).collect();
    let numbers: Vec<&str> = wet.iter().map(|order| order.order.as_str()).collect();
    let used = |order: &&PlannedOrder| {
        let limit = order.liquid.limit.as_ref();
        limit.map(|limit| percent(order.liquid.per_mass.value / limit.value)).unwrap_or_default()
    };
    let columns = [
        Column::of(wet.iter().map(|order| Some(&order.liquid.per_mass))),
        Column::of(wet.iter().map(|order| order.liquid.limit.as_ref())),
        Column { unit: String::new(), cells: wet.iter().map(used).collect() },
    ];
    group::add(&mut table, job, "all tanks", &numbers, &columns);
    table.lines()
}

fn actives(job: &Job, plan: &Plan) -> Vec<String> {
    let mut table = Table::new([
        (Left, "active"),
        (Right, "by seed"),
        (Right, "by mass"),
        (Right, "by area"),
        (Right, "of the season"),
        (Right, "sow at most"),
    ])
    .beside(MARGIN);
    for name in distinct(plan.actives.iter().map(|active| active.active.as_str())) {
        let on: Vec<&PlannedActive> = plan.actives.iter().filter(|active| active.active == name).collect();
        let numbers: Vec<&str> = on.iter().map(|active| active.order.as_str()).collect();
        group::add(&mut table, job, name, &numbers, &columns(&on));
    }
    table.lines()
}

fn columns(on: &[&PlannedActive]) -> [Column; 5] {
    let season = |active: &&PlannedActive| active.share_of_season_limit.map(percent).unwrap_or_default();
    let sow = |active: &&PlannedActive| {
        active.max_sowing.as_ref().map(|rate| at_most(rate.value)).unwrap_or_default()
    };
    let sow_unit = on.iter().find_map(|active| active.max_sowing.as_ref()).map(|rate| rate.unit.to_string());
    [
        Column::of(on.iter().map(|active| Some(&active.per_seed))),
        Column::of(on.iter().map(|active| Some(&active.per_mass))),
        Column::of(on.iter().map(|active| active.per_area.as_ref())),
        Column { unit: String::new(), cells: on.iter().map(season).collect() },
        Column { unit: sow_unit.unwrap_or_default(), cells: on.iter().map(sow).collect() },
    ]
}
