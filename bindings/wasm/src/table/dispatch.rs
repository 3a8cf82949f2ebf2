//! Which call of the core a row is, for the quantities that it is given.

use super::{applied, label, living, seed, shed, survival, treater};
use crate::slot::{Column, Of, Rows};
use crate::take::Wanted;

/// One way to calculate something.
pub(crate) struct Way {
    pub(crate) inputs: &'static [Wanted],
    /// What the result is, unless the inputs decide it.
    pub(crate) given: Option<Of>,
    pub(crate) run: fn(&Rows<'_>, &mut Column),
}

/// A calculation: on liquid and on dry product where it is made for both.
pub(crate) type Row = &'static [Way];

/// The topics' rows, in the order of [`crate::CALCULATORS`].
const ROWS: &[&[Row]] =
    &[seed::ROWS, label::ROWS, shed::ROWS, living::ROWS, survival::ROWS, treater::ROWS, applied::ROWS];

/// The calculation of a number.
pub(crate) fn row(number: usize) -> Option<Row> {
    ROWS.iter().copied().flatten().nth(number).copied()
}
