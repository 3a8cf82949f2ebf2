//! What does the label mean? One dose in every basis.

pub mod active;
pub mod cells;
pub mod dry;
pub mod liquid;

use hilum::rate::Agreement;

/// Statements agree within rounding: up to 2 % apart.
pub const HILUM_CLOSE: i32 = 1;
/// More than 2 % apart: the label was written for seed of another size.
pub const HILUM_APART: i32 = 2;
/// More than 10 % apart: one of the statements may be wrong.
pub const HILUM_FAR_APART: i32 = 3;

/// Statements of a dose that differ by more than this share are worth a note.
pub const HILUM_WORTH_A_NOTE: f64 = 0.02;
/// Statements of a dose that differ by more than this share are worth a warning.
pub const HILUM_WORTH_A_WARNING: f64 = 0.1;

pub(crate) const fn agreement(agreement: Agreement) -> i32 {
    match agreement {
        Agreement::Close => HILUM_CLOSE,
        Agreement::Apart => HILUM_APART,
        Agreement::FarApart => HILUM_FAR_APART,
    }
}
