//! What does the bus say?

pub mod amount;
pub mod dose;

use core::mem::MaybeUninit;

use hilum::ddi::{self, Row};

use crate::call::{Answer, Out, give};
use crate::quantity::Quantity;
use crate::status::Status;
use crate::unit::hilum_powers;

fn row(number: i32) -> Answer<Row> {
    u16::try_from(number).ok().and_then(ddi::find).ok_or(Status::NO_SUCH_DDI)
}

/// The entry of a number, if it measures a `Q`.
fn row_of<Q: Quantity>(number: i32) -> Answer<Row> {
    let row = row(number)?;
    if row.powers == Q::POWERS { Ok(row) } else { Err(Status::WRONG_DIMENSION) }
}

/// The integer for a quantity.
pub(crate) fn to_bus<Q: Quantity>(out: Out<'_, i32>, quantity: Q, ddi: i32) -> i32 {
    give(out, || Ok(row_of::<Q>(ddi)?.encode(quantity.base())?))
}

/// The quantity of an integer; `make` puts base units into the structure, for 0 is no dose but may be said.
pub(crate) fn from_bus<Q: Quantity>(out: Out<'_, Q>, steps: i32, ddi: i32, make: fn(f64) -> Q) -> i32 {
    give(out, || Ok(make(row_of::<Q>(ddi)?.decode(steps)?)))
}

/// What an entry measures. Errors: HILUM_NO_SUCH_DDI.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_ddi_powers(ddi: i32, out: Option<&mut MaybeUninit<hilum_powers>>) -> i32 {
    give(out, || Ok(row(ddi)?.powers.into()))
}

/// The integer for a value in base units (degrees Celsius for a temperature): value / resolution, rounded to the
/// nearest, halves up. For programs that learn the number as they run; where you know it, use the function
/// of the quantity, which knows its unit.
///
/// Errors: HILUM_NO_SUCH_DDI; a value that is not finite or negative; HILUM_NOT_FOR_THE_BUS beyond what the entry carries,
/// or for less than half a step without being 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_ddi_encode(ddi: i32, value: f64, out: Option<&mut MaybeUninit<i32>>) -> i32 {
    give(out, || Ok(row(ddi)?.encode(value)?))
}

/// The value in base units (degrees Celsius for a temperature) of an integer: integer x resolution.
/// Errors: HILUM_NO_SUCH_DDI; HILUM_NEGATIVE; HILUM_NOT_FOR_THE_BUS beyond what the entry carries.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_ddi_decode(ddi: i32, steps: i32, out: Option<&mut MaybeUninit<f64>>) -> i32 {
    give(out, || Ok(row(ddi)?.decode(steps)?))
}
