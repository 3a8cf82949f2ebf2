//! Pump flows and settings while seed runs.

use hilum_job::document::{Job, Out, Plan, TankOrder};

use super::MARGIN;
use super::words::together;
use crate::number::{dose, product, with_unit};
use crate::table::Align::{Left, Right};
use crate::table::Table;

/// One line for each tank and each run of orders that are pumped alike.
pub(super) fn lines(_: &Job, plan: &Plan) -> Vec<String> {
    let unit = plan
        .tanks
        .iter()
        .flat_map(|tank| &tank.orders)
        .find_map(|order| order.flow.as_ref())
        .map_or("", |flow| flow.unit.as_ref());
    let mut table = Table::new([
        (Left, "tank".to_owned()),
        (Left, "orders".to_owned()),
        (Right, "slurry".to_owned()),
        (Right, format!("catch in a minute\n{unit}")),
        (Right, "set pump to".to_owned()),
        (Right, "each charge".to_owned()),
    ])
    .indented(MARGIN);
    for tank in &plan.tanks {
        let shown = tank.orders.iter().map(|order| (order.order.clone(), cells(order)));
        for (i, (orders, [slurry, flow, setting, charge])) in together(shown).into_iter().enumerate() {
            let name = if i == 0 { tank.tank.clone() } else { String::new() };
            table.row([name, orders.join(", "), slurry, flow, setting, charge]);
        }
    }
    table.lines()
}

fn cells(order: &TankOrder) -> [String; 4] {
    let flow = |out: &Out| dose(out.value);
    [
        with_unit(&order.slurry),
        order.flow.as_ref().map(flow).unwrap_or_default(),
        order.setting.map(|setting| format!("{setting:.1}")).unwrap_or_default(),
        order.per_charge.as_ref().map(product).unwrap_or_default(),
    ]
}
