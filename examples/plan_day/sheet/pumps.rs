//! Pump flows and settings while seed runs.

use std::collections::BTreeMap;

use hilum_job::document::{Job, Plan, Quantity, TankOrder, Treater};

use super::MARGIN;
use super::group::{self, Column};
use super::words::given;
use crate::number::product;
use crate::table::Align::{Left, Right};
use crate::table::Table;

/// One line for each tank and each run of orders that are pumped alike.
pub(super) fn lines(job: &Job, plan: &Plan) -> Vec<String> {
    let mut table = Table::new([
        (Left, "tank"),
        (Right, "seed at"),
        (Right, "slurry"),
        (Right, "catch in a minute"),
        (Right, "set pump to"),
        (Right, "each charge"),
    ])
    .beside(MARGIN);
    let own: BTreeMap<&str, &Quantity> = job
        .orders
        .iter()
        .filter_map(|order| Some((order.order.as_str(), order.seed_flow.as_ref()?)))
        .collect();
    for tank in &plan.tanks {
        let numbers: Vec<&str> = tank.orders.iter().map(|order| order.order.as_str()).collect();
        let speed = |number: &&str| seed_speed(job.treater.as_ref(), own.get(number).copied());
        let speeds = Column { unit: String::new(), cells: numbers.iter().map(speed).collect() };
        let [slurry, flow, setting, charge] = columns(&tank.orders);
        group::add(&mut table, job, &tank.tank, &numbers, &[speeds, slurry, flow, setting, charge]);
    }
    table.lines()
}

/// How fast seed runs: by time, or charge by charge.
fn seed_speed(treater: Option<&Treater>, own: Option<&Quantity>) -> String {
    let flow = own.or_else(|| treater.and_then(|treater| treater.seed_flow.as_ref()));
    let charge = treater.and_then(|treater| Some((treater.charge.as_ref()?, treater.cycle.as_ref())));
    match (flow, charge) {
        (Some(flow), _) => given(flow),
        (None, Some((charge, Some(cycle)))) => format!("{} in {}", given(charge), given(cycle)),
        (None, Some((charge, None))) => given(charge),
        (None, None) => String::new(),
    }
}

fn columns(orders: &[TankOrder]) -> [Column; 4] {
    let setting =
        |order: &TankOrder| order.setting.map(|setting| format!("{setting:.1}")).unwrap_or_default();
    let charge = |order: &TankOrder| order.per_charge.as_ref().map(product).unwrap_or_default();
    let flow = Column::of(orders.iter().map(|order| order.flow.as_ref()));
    // What is caught in a minute is read off a measure.
    let caught = flow.unit.trim_end_matches("/min").to_owned();
    [
        Column::of(orders.iter().map(|order| Some(&order.slurry))),
        Column { unit: caught, ..flow },
        Column { unit: String::new(), cells: orders.iter().map(setting).collect() },
        Column { unit: String::new(), cells: orders.iter().map(charge).collect() },
    ]
}
