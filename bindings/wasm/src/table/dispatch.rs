//! Which call of the core a row is, for the quantities that it is given.

use super::{applied, label, living, seed, shed};
use crate::give::Given;
use crate::refusal::Refusal;
use crate::slot::{Slot, Slots};
use crate::take::Wanted;

/// One way to calculate something.
pub(crate) struct Way {
    pub(super) inputs: &'static [Wanted],
    pub(super) given: Given,
    /// NaN is never a result, so it says that there is none, and the slots why.
    pub(super) run: fn(&Slots) -> f64,
}

/// A calculation: on liquid and on dry product where it is made for both.
pub(crate) type Row = &'static [Way];

/// The topics' rows, in the order of [`crate::CALCULATORS`].
const ROWS: &[&[Row]] = &[seed::ROWS, label::ROWS, shed::ROWS, living::ROWS, applied::ROWS];

/// The calculation of a number.
pub(crate) fn row(number: usize) -> Option<Row> {
    ROWS.iter().copied().flatten().nth(number).copied()
}

fn way(row: Row, slots: &Slots) -> Option<&'static Way> {
    let is_dry = !crate::take::is_liquid(slots.get(0));
    row.get(usize::from(is_dry)).or(row.first())
}

/// Calculates, in base units; which way, the first input says.
pub(crate) fn calculate(row: Row, slots: &Slots) -> Result<f64, Refusal> {
    let way = way(row, slots).ok_or(Refusal::NONE)?;
    let looked = slots.look(way.inputs).map(|()| (way.run)(slots));
    looked.ok().filter(|result| !result.is_nan()).ok_or(slots.refusal())
}

/// A result and what it measures.
pub(crate) fn given(row: Row, slots: &Slots, result: f64) -> Slot {
    match way(row, slots).map_or(Given::Number, |way| way.given) {
        Given::Number => Slot::Number(result),
        Given::Quantity(powers) => Slot::Quantity(result, powers),
        Given::Said => slots.said(),
    }
}
