//! Rows under a name that carries their units.

use hilum_job::document::{Job, Out};

use super::words::{orders, together, under};
use crate::number::aligned;
use crate::table::Table;

/// A column of a group: its unit, and a cell for each order.
#[derive(Clone, Debug)]
pub(super) struct Column {
    pub(super) unit: String,
    pub(super) cells: Vec<String>,
}

impl Column {
    /// Quantities of one unit.
    pub(super) fn of<'a>(quantities: impl Iterator<Item = Option<&'a Out>>) -> Self {
        let quantities: Vec<Option<&Out>> = quantities.collect();
        let unit = quantities.iter().flatten().map(|out| out.unit.to_string()).next().unwrap_or_default();
        let values: Vec<Option<f64>> = quantities.iter().map(|out| out.map(|out| out.value)).collect();
        Self { unit, cells: aligned(&values) }
    }
}

/// Adds a name with the units of its columns, and a row for each run of orders that show the same.
pub(super) fn add(table: &mut Table, job: &Job, name: &str, numbers: &[&str], columns: &[Column]) {
    if numbers.is_empty() {
        return;
    }
    let units = columns.iter().map(|column| column.unit.clone());
    table.row(std::iter::once(name.to_owned()).chain(units));
    let row = |i: usize| columns.iter().map(move |column| column.cells.get(i).cloned().unwrap_or_default());
    let rows =
        numbers.iter().enumerate().map(|(i, number)| ((*number).to_owned(), row(i).collect::<Vec<_>>()));
    for (numbers, cells) in together(rows) {
        table.row(std::iter::once(under(&orders(job, &numbers))).chain(cells));
    }
}
