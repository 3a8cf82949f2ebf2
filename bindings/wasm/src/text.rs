//! Entry `hilum`: calculations on quantities as they are written.

use core::cell::UnsafeCell;

use hilum::text::{Compound, TextError};

use crate::border::{Border, Place};
use crate::decimal::decimal;
use crate::refusal::{Refusal, codes, count};
use crate::rows::{Desk, Work};
use crate::slot::{MOST, ROWS};

codes! {
    /// What is refused of a text, and its name.
    TEXT_CODES:
    30.0 EMPTY "empty";
    31.0 NOT_A_NUMBER "not_a_number";
    32.0 NUMBER_FORM "number_form";
    33.0 COMMA "comma";
    34.0 SPACE_IN_NUMBER "space_in_number";
    35.0 NO_SPACE "no_space";
    36.0 NUMBER_TOO_LONG "number_too_long";
    37.0 TOO_LARGE "too_large";
    38.0 TEXT_NOT_FINITE "not_finite";
    39.0 NO_UNIT "no_unit";
    40.0 BARE_OUNCE "bare_ounce";
    41.0 TON "ton";
    42.0 UNKNOWN_UNIT "unknown_unit";
    43.0 TWO_LINES "two_lines";
    44.0 BELOW_THE_LINE "below_the_line";
    45.0 FORM "form";
    46.0 UNIT_NOT_GIVEN "unit_not_given";
    47.0 BUSHEL_NOT_GIVEN "bushel_not_given";
    48.0 TEXT "not_a_quantity";
}

impl From<TextError> for Refusal {
    fn from(error: TextError) -> Self {
        let code = match error {
            TextError::Empty => EMPTY,
            TextError::NotANumber => NOT_A_NUMBER,
            TextError::NumberForm => NUMBER_FORM,
            TextError::Comma => COMMA,
            TextError::SpaceInNumber => SPACE_IN_NUMBER,
            TextError::NoSpace => NO_SPACE,
            TextError::NumberTooLong => NUMBER_TOO_LONG,
            TextError::TooLarge => TOO_LARGE,
            TextError::NotFinite => TEXT_NOT_FINITE,
            TextError::NoUnit => NO_UNIT,
            TextError::BareOunce => BARE_OUNCE,
            TextError::Ton => TON,
            TextError::UnknownUnit { .. } => UNKNOWN_UNIT,
            TextError::TwoLines => TWO_LINES,
            TextError::BelowTheLine => BELOW_THE_LINE,
            TextError::Form => FORM,
            TextError::UnitNotGiven => UNIT_NOT_GIVEN,
            TextError::BushelNotGiven => BUSHEL_NOT_GIVEN,
            TextError::TemperaturePoint => return Self::temperature_point(),
            TextError::NotATemperature => return Self::not_a_temperature(),
            TextError::WrongDimension { given, wanted } => return Self::wrong_dimension(given, wanted),
            _ => TEXT,
        };
        Self::new(code, f64::NAN)
    }
}

/// What is at work between two calls of the script's.
struct Here(UnsafeCell<(Desk, Work)>);

// SAFETY: the wasm has one thread.
unsafe impl Sync for Here {}

static HERE: Here = Here(UnsafeCell::new((
    Desk { written: [[0.0; ROWS]; MOST], results: [0.0; ROWS], bases: [[0.0; ROWS]; MOST] },
    Work::new(),
)));

fn here() -> &'static mut (Desk, Work) {
    // SAFETY: each call of the script's asks once, and the script waits until the call is over.
    unsafe { &mut *HERE.0.get() }
}

/// Where the columns of the inputs' numbers lie, one behind the other, and behind them that of the results.
#[unsafe(no_mangle)]
#[must_use]
pub extern "C" fn desk() -> *mut f64 {
    core::ptr::from_mut(&mut here().0).cast()
}

/// What the unit whose `length` bytes lie at `base` may have been meant to be: leaves among the results, as two numbers, where its
/// text lies and how many bytes it has; gives 0 when nothing is near.
///
/// # Safety
/// As [`Border::at`].
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn suggest(base: usize, length: usize) -> usize {
    // SAFETY: the script keeps to it.
    let border = unsafe { Border::at(base, 0, length) };
    let unit = border.text(Place::first(length));
    match unit.and_then(|unit| Compound::read_with(unit, decimal)) {
        Err(TextError::UnknownUnit { suggestion: Some(suggestion) }) => {
            let told = [suggestion.as_ptr().addr(), suggestion.len()].map(count);
            here().0.results.iter_mut().zip(told).for_each(|(place, number)| *place = number);
            1
        }
        _ => 0,
    }
}

/// Reads the inputs of number `number` of the table.
///
/// At the border lie the places of the inputs and of the unit wanted, then their text. An input is a text alone, or a unit and
/// numbers, or numbers alone, of which the first lies on the desk. UCUM's `1` is the unit of a share as a plain number. `unit` and
/// `bushel` are the inputs that say what these words mean in the others.
///
/// Gives 0; or else what [`Refusal::tell`] leaves among the results.
///
/// # Safety
/// As [`Border::at`].
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn begin(
    base: usize,
    number: usize,
    places: usize,
    text: usize,
    unit: usize,
    bushel: usize,
) -> f64 {
    let (desk, work) = here();
    // SAFETY: the script keeps to it.
    let border = unsafe { Border::at(base, places, text) };
    match Work::read(&border, number, [unit, bushel], desk) {
        Ok(read) => {
            *work = read;
            0.0
        }
        Err(refusal) => refusal.tell(0, &mut desk.results),
    }
}

/// Calculates what was read for the first `rows` numbers on the desk; `laid` is 0 the first time after it was read.
///
/// Gives 0, and leaves the results on the desk; or else what [`Refusal::tell`] leaves there.
#[unsafe(no_mangle)]
#[must_use]
pub extern "C" fn rows(rows: usize, laid: usize) -> f64 {
    let (desk, work) = here();
    match work.rows(desk, rows, laid != 0) {
        Ok(()) => 0.0,
        Err((row, refusal)) => refusal.tell(row, &mut desk.results),
    }
}
