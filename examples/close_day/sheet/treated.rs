//! How much seed was treated, and when.

use hilum_job::document::{Account, AccountedOrder};

use super::{MARGIN, signed, unit};
use crate::clock::moment;
use crate::number::count;
use crate::table::Align::{Left, Right};
use crate::table::Table;

/// One line for each order.
pub(super) fn lines(account: &Account) -> Vec<String> {
    let mass = unit(account.orders.iter().map(|order| &order.mass));
    let mut table = Table::new([
        (Left, "order".to_owned()),
        (Left, "lot".to_owned()),
        (Right, format!("seed treated\n{mass}")),
        (Right, "give or take".to_owned()),
        (Right, format!("ordered\n{mass}")),
        (Right, "off".to_owned()),
        (Left, "from".to_owned()),
        (Left, "to".to_owned()),
    ])
    .beside(MARGIN);
    for order in &account.orders {
        table.row(cells(order));
    }
    table.lines()
}

fn cells(order: &AccountedOrder) -> [String; 8] {
    let instant = |text: &Option<String>| text.as_deref().map(moment).unwrap_or_default();
    [
        order.order.clone(),
        order.lot.clone(),
        count(&order.mass),
        order.mass_uncertainty.as_ref().map(count).unwrap_or_default(),
        count(&order.ordered),
        signed(order.mass.value / order.ordered.value - 1.0),
        instant(&order.record.from),
        instant(&order.record.to),
    ]
}
