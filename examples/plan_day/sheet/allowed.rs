//! Limits and how much of them is used.

use hilum_job::document::{Job, Out, Plan, PlannedActive};

use super::MARGIN;
use super::words::{orders, together};
use crate::number::{percent, with_unit};
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
    let mut table =
        Table::new([(Left, "orders"), (Right, "all liquid"), (Right, "takes up"), (Right, "used")])
            .beside(MARGIN);
    let wet = plan.orders.iter().filter(|order| order.liquid.per_mass.value > 0.0);
    let shown = wet.map(|order| {
        let limit = order.liquid.limit.as_ref();
        let used = limit.map(|limit| percent(order.liquid.per_mass.value / limit.value));
        let limit = limit.map(with_unit).unwrap_or_default();
        (order.order.clone(), [with_unit(&order.liquid.per_mass), limit, used.unwrap_or_default()])
    });
    for (numbers, [all, limit, used]) in together(shown) {
        table.row([orders(job, &numbers), all, limit, used]);
    }
    table.lines()
}

fn actives(job: &Job, plan: &Plan) -> Vec<String> {
    let mut table = Table::new([
        (Left, "active"),
        (Left, "orders"),
        (Right, "by seed"),
        (Right, "by mass"),
        (Right, "by area"),
        (Right, "of season"),
        (Right, "sow at most"),
    ])
    .beside(MARGIN);
    let mut sorted: Vec<&PlannedActive> = plan.actives.iter().collect();
    let first = |name: &str| plan.actives.iter().position(|active| active.active == name);
    sorted.sort_by_key(|active| first(&active.active));
    let shown = sorted.iter().map(|active| (active.order.clone(), cells(active)));
    let mut last = String::new();
    for (numbers, [name, seed, mass, area, season, sow]) in together(shown) {
        let shown_name = if name == last { String::new() } else { name.clone() };
        last = name;
        table.row([shown_name, orders(job, &numbers), seed, mass, area, season, sow]);
    }
    table.lines()
}

fn cells(active: &PlannedActive) -> [String; 6] {
    let shown = |out: &Option<Out>| out.as_ref().map(with_unit).unwrap_or_default();
    [
        active.active.clone(),
        with_unit(&active.per_seed),
        with_unit(&active.per_mass),
        shown(&active.per_area),
        active.share_of_season_limit.map(percent).unwrap_or_default(),
        shown(&active.max_sowing),
    ]
}
