//! Entry `hilum/numbers`: calculations on numbers in base units.
//!
//! Only numbers cross the border, so no memory is asked for.

use crate::refusal::Refusal;
use crate::slot::{Slot, Slots};
use crate::table::{calculate, row};

/// Calculates number `number` of the table; NaN is never a result, so it says that there is none.
#[unsafe(no_mangle)]
#[must_use]
pub extern "C" fn once(number: usize, a: f64, b: f64, c: f64, d: f64, e: f64, f: f64, g: f64) -> f64 {
    result(number, [a, b, c, d, e, f, g]).unwrap_or(f64::NAN)
}

/// Why there is none: the code (`what` is 0), the number of the input (1; -1 is none), its value (2) or the
/// bound that it passed (3).
#[unsafe(no_mangle)]
#[must_use]
pub extern "C" fn why(
    number: usize,
    what: u32,
    a: f64,
    b: f64,
    c: f64,
    d: f64,
    e: f64,
    f: f64,
    g: f64,
) -> f64 {
    match result(number, [a, b, c, d, e, f, g]) {
        Ok(_) => f64::NAN,
        Err(refusal) => refusal.number(what),
    }
}

#[inline(never)]
fn result(number: usize, inputs: [f64; 7]) -> Result<f64, Refusal> {
    let mut slots = Slots::new();
    for (at, value) in inputs.into_iter().enumerate() {
        slots.set(at, Slot::Number(value));
    }
    calculate(row(number).ok_or(Refusal::NONE)?, &slots)
}
