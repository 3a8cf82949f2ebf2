//! Entry `hilum`: calculations on quantities as they are written.

use core::cell::UnsafeCell;

use hilum::Argument;
use hilum::error::positive;
use hilum::quantity::Temperature;
use hilum::seed::{Bushel, SeedUnit};
use hilum::text::{Atom, Bases, Compound, Scale, TextError, Written};

use crate::decimal::decimal;
use crate::refusal::{Refusal, TEMPERATURE_POINT, codes};
use crate::slots;
use crate::table::CHECKS;
use crate::take::Wanted;
use crate::value::{MOST, Of, Value, look};
#[cfg(all(feature = "text", not(feature = "formulas")))]
use crate::{slots::Slots, take::take};

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

fn code(error: TextError) -> f64 {
    match error {
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
        TextError::TemperaturePoint => TEMPERATURE_POINT,
        _ => TEXT,
    }
}

/// What a quantity of these powers measures, as the script knows it.
#[cfg(feature = "describe")]
#[must_use]
pub const fn measures(powers: hilum::unit::Powers) -> i32 {
    Of::powers(powers).0
}

/// So many rows are calculated at a time: few enough to stay near the processor.
const ROWS: usize = 512;

/// Room for the UTF-8 of a text.
const ROOM: usize = 3072;

/// What lies between script and wasm, in this order.
#[repr(C)]
struct Desk {
    results: [f64; ROWS],
    /// The inputs in base units.
    columns: [[f64; ROWS]; MOST],
    read: Read,
    /// What the inputs measure, as the script read them.
    kinds: [Of; MOST],
    /// What the results measure, where a calculation says it; [`SEVERAL`] when not all measure the same.
    said: Of,
    /// What a calculation needed instead of what it was given.
    wanted: Of,
    /// A unit that may have been meant.
    meant: &'static str,
    text: [u8; ROOM],
    bases: Bases,
    inputs: [f64; MOST],
}

/// What a text says.
#[repr(C)]
struct Read {
    number: f64,
    /// Base units in what is above the line, and in what is below it, where 0 says that the unit is °F.
    above: f64,
    below: f64,
    of: Of,
}

const NOTHING: Of = Of(i32::MIN);
const SEVERAL: Of = Of(i32::MIN + 1);

struct Here(UnsafeCell<Desk>);

// SAFETY: the wasm has one thread.
unsafe impl Sync for Here {}

static HERE: Here = Here(UnsafeCell::new(Desk {
    results: [0.0; ROWS],
    columns: [[0.0; ROWS]; MOST],
    read: Read { number: 0.0, above: 0.0, below: 0.0, of: Of(0) },
    kinds: [Of(0); MOST],
    said: Of(0),
    wanted: Of(0),
    meant: "",
    text: [0; ROOM],
    bases: Bases { unit: None, bushel: None },
    inputs: [0.0; MOST],
}));

/// Where all of it lies.
#[unsafe(no_mangle)]
#[must_use]
pub extern "C" fn desk() -> usize {
    HERE.0.get().expose_provenance()
}

/// What an input measures.
#[inline(always)]
pub(crate) fn kind(field: usize) -> Of {
    // SAFETY: nobody writes there while a calculation runs.
    let kinds = unsafe { &(*HERE.0.get()).kinds };
    kinds.get(field).copied().unwrap_or(Of::NUMBER)
}

/// A calculation says what its result measures.
pub(crate) fn said(of: Of) {
    // SAFETY: nobody else looks there while a calculation runs.
    let said = unsafe { &mut (*HERE.0.get()).said };
    *said = if *said == NOTHING || *said == of { of } else { SEVERAL };
}

/// An input does not measure what is needed.
pub(crate) fn wrong_dimension(wanted: Of) -> Refusal {
    // SAFETY: nobody else looks there while a calculation runs.
    unsafe { (*HERE.0.get()).wanted = wanted };
    Refusal::wrong_dimension()
}

/// An input of the row at work, in base units.
#[inline(always)]
pub(crate) fn input(field: usize) -> f64 {
    // SAFETY: nobody writes there while a calculation runs.
    let inputs = unsafe { &(*HERE.0.get()).inputs };
    inputs.get(field).copied().unwrap_or(f64::NAN)
}

/// Calculates the first rows of the columns, that were looked at; NaN is no result. What is calculated here takes longer than to
/// lay its inputs down.
#[inline(always)]
pub(crate) fn rows(rows: usize, calculate: impl Fn() -> f64) {
    let mut row = 0;
    while row < rows {
        lay(row);
        row = put(row, calculate());
    }
}

#[inline(never)]
fn lay(row: usize) {
    let here = HERE.0.get();
    // SAFETY: the script waits, and nothing of this is kept.
    let (columns, inputs) = unsafe { (&(*here).columns, &mut (*here).inputs) };
    for (input, column) in inputs.iter_mut().zip(columns) {
        *input = column.get(row).copied().unwrap_or(f64::NAN);
    }
}

#[inline(never)]
fn put(row: usize, result: f64) -> usize {
    // SAFETY: the script waits, and nothing of this is kept.
    let results = unsafe { &mut (*HERE.0.get()).results };
    if let Some(place) = results.get_mut(row) {
        *place = result;
    }
    row.saturating_add(1)
}

/// Lays the first numbers of a column down in base units; whether each is more than 0, and at most so many.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::needless_bitwise_bool, reason = "a branch makes no vector")]
pub extern "C" fn are_usual(field: usize, rows: usize, above: f64, below: f64, most: f64) -> u32 {
    // SAFETY: the script waits, and nothing of this is kept.
    let columns = unsafe { &mut (*HERE.0.get()).columns };
    let numbers = columns.get_mut(field).and_then(|column| column.get_mut(..rows)).unwrap_or_default();
    let mut are = true;
    for number in numbers {
        *number = scale(above, below).base(*number);
        are &= positive(Argument::Share, *number).is_ok() & (*number <= most);
    }
    u32::from(are)
}

/// Makes the first results numbers of a unit; whether all are numbers.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::float_cmp, reason = "says what the unit is, and what is divided by just 1 is what it was")]
pub extern "C" fn are_finite(rows: usize, above: f64, below: f64) -> u32 {
    // SAFETY: the script waits, and nothing of this is kept.
    let results = unsafe { (*HERE.0.get()).results.get_mut(..rows).unwrap_or_default() };
    if below == 0.0 {
        for result in results.iter_mut() {
            *result = Temperature::from_celsius(*result).fahrenheit();
        }
    } else if above != 1.0 || below != 1.0 {
        for result in results.iter_mut() {
            *result = scale(above, below).number(*result);
        }
    }
    u32::from(results.iter().fold(true, |are, result| are & result.is_finite()))
}

/// Reads the text on the desk: a number and a unit, or a unit alone. Gives 0, or why not.
#[unsafe(no_mangle)]
#[must_use]
pub extern "C" fn read_text(length: usize, is_unit: u32) -> f64 {
    // SAFETY: the script waits, and left so many bytes of UTF-8 there.
    let (desk, text) = unsafe {
        let desk = &mut *HERE.0.get();
        (&mut desk.read, core::str::from_utf8_unchecked(desk.text.get(..length).unwrap_or_default()))
    };
    match measure(text, is_unit != 0) {
        Ok(read) => {
            *desk = read;
            0.0
        }
        Err(error) => {
            // SAFETY: nobody else looks there.
            let meant = unsafe { &mut (*HERE.0.get()).meant };
            *meant = match error {
                TextError::UnknownUnit { suggestion: Some(unit) } => unit,
                _ => "",
            };
            code(error)
        }
    }
}

fn measure(text: &str, is_unit: bool) -> Result<Read, TextError> {
    let Written { number, unit } = if is_unit {
        Written { number: 0.0, unit: Compound::read_with(text, decimal)? }
    } else {
        Written::read_with(text, decimal)?
    };
    let point = |below| Read { number, above: 1.0, below, of: Of::TEMPERATURE };
    match unit {
        Compound { above: Atom::Celsius, below: None } => Ok(point(1.0)),
        Compound { above: Atom::Fahrenheit, below: None } => Ok(point(0.0)),
        _ => {
            let Scale { above, below, powers } = unit.scale(bases())?;
            Ok(Read { number, above, below: below.unwrap_or(1.0), of: Of::powers(powers) })
        }
    }
}

/// What `unit` and `bu` mean in the texts to come.
fn bases() -> &'static Bases {
    // SAFETY: only [`word`] writes there, and nothing of this is kept until then.
    unsafe { &(*HERE.0.get()).bases }
}

/// Says what a seed unit (0) or a bushel (1) is: what the first input measures, and its number in base units. What cannot be one
/// is none; it is refused where it is read as an input.
#[cfg(all(feature = "text", not(feature = "formulas")))]
#[unsafe(no_mangle)]
pub extern "C" fn word(which: usize, base: f64) {
    let here = HERE.0.get();
    // SAFETY: nobody else looks there.
    unsafe {
        (*here).inputs = [base; MOST];
        match which {
            0 => (*here).bases.unit = take::<SeedUnit>(&Slots {}, 0).ok(),
            _ => (*here).bases.bushel = take::<Bushel>(&Slots {}, 0).ok(),
        }
    }
}

/// A number in base units, as the calculation takes it; NaN when the check refuses it, and [`why`].
#[unsafe(no_mangle)]
#[must_use]
pub extern "C" fn looked(check: usize, number: f64, base: f64) -> f64 {
    let slot = Value { number: base, of: Of::NUMBER };
    let wanted = CHECKS.get(check).map_or(Wanted::LATER, |check| Wanted { of: Of::NUMBER, check: *check });
    let looked = if number.is_finite() { look(slot, wanted) } else { Err(Refusal::not_finite(number)) };
    looked.unwrap_or_else(|refusal| {
        slots::say(0, refusal.code());
        f64::NAN
    })
}

/// 16 × the code of what was wrong with the last number or calculation, + the number of the input.
#[unsafe(no_mangle)]
#[must_use]
pub extern "C" fn why() -> f64 {
    slots::why()
}

const fn scale(above: f64, below: f64) -> Scale {
    Scale { above, below: Some(below), powers: hilum::quantity::ratio::POWERS }
}

/// A number of a unit in base units: the build makes script of it, and of the next.
#[cfg_attr(target_arch = "wasm32", unsafe(export_name = "scalar base"))]
#[must_use]
pub extern "C" fn base(number: f64, above: f64, below: f64) -> f64 {
    scale(above, below).base(number)
}

/// °F in °C.
#[cfg_attr(target_arch = "wasm32", unsafe(export_name = "scalar celsius"))]
#[must_use]
pub extern "C" fn celsius(fahrenheit: f64) -> f64 {
    Temperature::from_fahrenheit(fahrenheit).celsius()
}
