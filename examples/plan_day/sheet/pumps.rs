//! Pump flows and settings while seed runs.

use std::collections::BTreeMap;

use hilum_job::document::{Job, Out, Plan, Quantity, TankOrder, Treater};

use super::MARGIN;
use super::words::{given, orders, together};
use crate::number::{dose, product, with_unit};
use crate::table::Align::{Left, Right};
use crate::table::Table;

/// One line for each tank and each run of orders that are pumped alike.
pub(super) fn lines(job: &Job, plan: &Plan) -> Vec<String> {
    let unit = plan
        .tanks
        .iter()
        .flat_map(|tank| &tank.orders)
        .find_map(|order| order.flow.as_ref())
        .map_or("", |flow| flow.unit.as_ref());
    let mut table = Table::new([
        (Left, "tank".to_owned()),
        (Left, "orders".to_owned()),
        (Right, "seed at".to_owned()),
        (Right, "slurry".to_owned()),
        (Right, format!("catch in a minute\n{unit}")),
        (Right, "set pump to".to_owned()),
        (Right, "each charge".to_owned()),
    ])
    .beside(MARGIN);
    let own: BTreeMap<&str, &Quantity> = job
        .orders
        .iter()
        .filter_map(|order| Some((order.order.as_str(), order.seed_flow.as_ref()?)))
        .collect();
    let speed = |order: &str| seed_speed(job.treater.as_ref(), own.get(order).copied());
    for tank in &plan.tanks {
        let shown = tank.orders.iter().map(|order| (order.order.clone(), cells(order, speed(&order.order))));
        for (i, (numbers, [speed, slurry, flow, setting, charge])) in together(shown).into_iter().enumerate()
        {
            let name = if i == 0 { tank.tank.clone() } else { String::new() };
            table.row([name, orders(job, &numbers), speed, slurry, flow, setting, charge]);
        }
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

fn cells(order: &TankOrder, seed_speed: String) -> [String; 5] {
    let flow = |out: &Out| dose(out.value);
    [
        seed_speed,
        with_unit(&order.slurry),
        order.flow.as_ref().map(flow).unwrap_or_default(),
        order.setting.map(|setting| format!("{setting:.1}")).unwrap_or_default(),
        order.per_charge.as_ref().map(product).unwrap_or_default(),
    ]
}
