//! Entry `hilum/numbers`: calculations on numbers in base units.
//!
//! Each calculation is an export that takes and gives numbers, so that the script's compiler calls it directly, and another one
//! that runs it over columns. Only NaN is no result; why there is none is asked afterwards.

use core::cell::UnsafeCell;

use hilum::many::each;
use hilum::quantity::ratio;
use hilum::{Argument, Error};

use crate::refusal::Refusal;
use crate::table::CHECKS;
use crate::take::Wanted;
use crate::value::{MOST, Of, Value, look};

/// So many rows are calculated at a time: few enough to stay near the processor.
const ROWS: usize = 1024;

/// What lies between script and calculation: the columns of the inputs, and behind them the results'.
struct Columns(UnsafeCell<[[f64; ROWS]; MOST + 1]>);

// SAFETY: the wasm has one thread.
unsafe impl Sync for Columns {}

static COLUMNS: Columns = Columns(UnsafeCell::new([[0.0; ROWS]; MOST + 1]));

/// Where the first column lies; the others follow, [`ROWS`] numbers each, the results last.
#[unsafe(no_mangle)]
#[must_use]
pub extern "C" fn columns() -> *mut f64 {
    COLUMNS.0.get().cast()
}

/// The code of what is wrong with a number that a calculation looks at, 0 when nothing is.
#[unsafe(no_mangle)]
#[must_use]
pub extern "C" fn refused(check: usize, value: f64) -> f64 {
    let Some(check) = CHECKS.get(check) else { return 0.0 };
    look(Value { number: value, of: Of::NUMBER }, Wanted::of(ratio::POWERS, *check))
        .map_or_else(Refusal::code, |_| 0.0)
}

/// 16 × the code of what else was wrong with the last calculation, + the number of the input.
#[unsafe(no_mangle)]
#[must_use]
pub extern "C" fn why() -> f64 {
    crate::slots::why()
}

/// The words for the argument are the script's.
#[inline(always)]
fn positive(value: f64) -> Result<f64, Error> {
    hilum::error::positive(Argument::Share, value)
}

/// Whether the first rows of a column are all more than 0, as far as they may be; [`rows`] takes no others.
#[unsafe(no_mangle)]
#[must_use]
pub extern "C" fn are_positive(column: usize, pairs: usize) -> u32 {
    // SAFETY: nothing else is at work on the columns: the script waits.
    let columns = unsafe { &*COLUMNS.0.get() };
    let rows = columns.get(column).and_then(|column| column.get(..2 * pairs.min(ROWS / 2))).unwrap_or(&[]);
    u32::from(each(rows, |number| number, |number| positive(number).map(|_| ()), |_| ()).is_ok())
}

/// Calculates the first rows of columns of which [`are_positive`] said so; tells whether one of them has no result.
#[inline(always)]
pub(crate) fn rows<const N: usize>(pairs: usize, calculate: impl Fn([f64; N]) -> Option<f64>) -> u32 {
    // SAFETY: nothing else is at work on the columns: the script waits, and `calculate` knows nothing of them.
    let (columns, results) = unsafe {
        let [columns @ .., results] = &mut *COLUMNS.0.get();
        (&*columns, results)
    };
    let mut lacking = 0_u64;
    for row in 0..2 * pairs.min(ROWS / 2) {
        let inputs = core::array::from_fn(|column| {
            let input = columns.get(column).and_then(|column| column.get(row)).copied().unwrap_or(1.0);
            // SAFETY: the script asked [`are_positive`] about each column.
            unsafe { core::hint::assert_unchecked(positive(input).is_ok()) };
            input
        });
        let result = calculate(inputs);
        lacking |= u64::from(result.is_none());
        if let Some(place) = results.get_mut(row) {
            *place = result.unwrap_or(f64::NAN);
        }
    }
    u32::from(lacking != 0)
}
