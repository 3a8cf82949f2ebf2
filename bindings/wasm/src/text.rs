//! Entry `hilum`: calculations on quantities as they are written.

use alloc::string::String;
use alloc::vec::Vec;
use hilum::quantity::{self, Temperature};
use hilum::seed::{Bushel, SeedUnit};
use hilum::text::{Atom, Bases, Compound, Measured, TextError, Written};
use hilum::unit::Powers;
use wasm_bindgen::prelude::wasm_bindgen;

use crate::refusal::{Refusal, Refused, codes, count};
use crate::slot::{Slot, Slots};
use crate::table::run;
use crate::take::take;

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

#[wasm_bindgen(js_namespace = globalThis)]
extern "C" {
    /// The nearest double to digits in the form that the core checked (ECMA-262, StringToNumber).
    #[wasm_bindgen(js_name = Number)]
    safe fn number(digits: &str) -> f64;
}

/// The script's reader of decimals: core's is 13 kB of the package.
fn decimal(digits: &str) -> Option<f64> {
    Some(number(digits))
}

/// What the unit of a text may have been meant to be; empty when nothing is near.
#[wasm_bindgen]
#[must_use]
pub fn suggest(unit: &str) -> String {
    match Compound::read_with(unit, decimal) {
        Err(TextError::UnknownUnit { suggestion: Some(suggestion) }) => suggestion.into(),
        _ => String::new(),
    }
}

/// Calculates number `number` of the table, `rows` times.
///
/// `inputs` holds a line for each input: a quantity; or `#` and a unit, whose numbers are in `cells`: one for
/// each row where `columns` has the input's bit, else one for all. `#` alone is a plain number. `units` holds
/// the units wanted, a line each: the first that can measure the result is taken. `unit` and `bushel` are the
/// inputs that say what these words mean in the others.
///
/// Gives `0, line of the unit taken, result…`, or what [`Refusal::numbers`] says.
#[wasm_bindgen]
#[must_use]
#[expect(clippy::too_many_arguments, reason = "one call across the border, without an object to free")]
pub fn calculate(
    number: usize,
    inputs: &str,
    cells: &[f64],
    rows: usize,
    columns: u32,
    units: &str,
    unit: usize,
    bushel: usize,
) -> Vec<f64> {
    let call = Call { number, inputs, cells, rows, columns, units };
    let mut results = Vec::with_capacity(rows.saturating_add(2));
    match call.all(unit, bushel, &mut results) {
        Ok(()) => results,
        // One for the code of success, one for the unit.
        Err(refusal) => refusal.numbers(results.len().saturating_sub(2)),
    }
}

struct Call<'a> {
    number: usize,
    inputs: &'a str,
    cells: &'a [f64],
    rows: usize,
    columns: u32,
    units: &'a str,
}

/// The field of the result's unit in a refusal, beyond those of all inputs.
const RESULT: usize = 99;

impl<'a> Call<'a> {
    fn all(&self, unit: usize, bushel: usize, results: &mut Vec<f64>) -> Result<(), Refusal> {
        let run = run(self.number).ok_or(Refusal::not_a_count(count(self.number)))?;
        // What cannot be read here is refused where it is read as an input.
        let bases = Bases {
            unit: self.alone(unit).and_then(|slots| take::<SeedUnit>(&slots, 0).ok()),
            bushel: self.alone(bushel).and_then(|slots| take::<Bushel>(&slots, 0).ok()),
        };
        let mut inputs = Vec::new();
        for (field, line, cells) in self.lines() {
            inputs.push(Input::read(line, cells, &bases).map_err(|refusal| refusal.said_of(field))?);
        }
        let mut given = Given { units: self.units, bases: &bases, taken: None };
        results.extend([0.0, 0.0]);
        for row in 0..self.rows {
            let mut slots = Slots::new();
            for (field, input) in inputs.iter().enumerate() {
                slots.set(field, input.slot(row, &bases).map_err(|refusal| refusal.said_of(field))?);
            }
            run(&slots).map_err(|Refused| slots.refusal())?;
            results.push(given.number(slots.result()).map_err(|refusal| refusal.said_of(RESULT))?);
        }
        if let Some(line) = results.get_mut(1) {
            *line = given.taken.map_or(0.0, |taken| count(taken.line));
        }
        Ok(())
    }

    /// Each input's number, its line and its own cells.
    fn lines(&self) -> impl Iterator<Item = (usize, &'a str, &'a [f64])> {
        let (mut rest, rows, columns) = (self.cells, self.rows, self.columns);
        self.inputs.split('\n').enumerate().map(move |(field, line)| {
            let bit = u32::try_from(field).ok().and_then(|field| 1_u32.checked_shl(field)).unwrap_or(0);
            let own = match line.starts_with('#') {
                false => 0,
                true if columns & bit != 0 => rows,
                true => 1,
            };
            let (cells, others) = rest.split_at_checked(own).unwrap_or((rest, &[]));
            rest = others;
            (field, line, cells)
        })
    }

    /// One input, which needs no others to be understood.
    fn alone(&self, wanted: usize) -> Option<Slots> {
        let (_, line, cells) = self.lines().find(|(field, _, _)| *field == wanted)?;
        let bases = Bases::default();
        let slot = Input::read(line, cells, &bases).and_then(|input| input.slot(0, &bases)).ok()?;
        let mut slots = Slots::new();
        slots.set(0, slot);
        Some(slots)
    }
}

/// An input, read once for all rows.
enum Input<'a> {
    Same(Slot),
    Quantities(Compound, &'a [f64]),
    Numbers(&'a [f64]),
}

impl<'a> Input<'a> {
    fn read(line: &str, cells: &'a [f64], bases: &Bases) -> Result<Self, Refusal> {
        Ok(match line.strip_prefix('#') {
            None => Self::Same(Written::read_with(line, decimal)?.measured(bases)?.into()),
            Some("") => Self::Numbers(cells),
            Some(unit) => Self::Quantities(Compound::read_with(unit, decimal)?, cells),
        })
    }

    fn slot(&self, row: usize, bases: &Bases) -> Result<Slot, Refusal> {
        match *self {
            Self::Same(slot) => Ok(slot),
            Self::Numbers(cells) => Ok(Slot::Number(cell(cells, row)?)),
            Self::Quantities(unit, cells) => {
                Ok(Written { number: cell(cells, row)?, unit }.measured(bases)?.into())
            }
        }
    }
}

/// The number of a row, or the one for all rows.
fn cell(cells: &[f64], row: usize) -> Result<f64, Refusal> {
    let number = cells.get(row).or(cells.first()).copied().unwrap_or(f64::NAN);
    if number.is_finite() { Ok(number) } else { Err(Refusal::not_finite(number)) }
}

impl From<Measured> for Slot {
    fn from(measured: Measured) -> Self {
        match measured {
            Measured::Quantity { value, powers } => Self::Quantity(value, powers),
            Measured::Temperature(at) => Self::Temperature(at),
        }
    }
}

/// Results in the unit that was wanted.
struct Given<'a> {
    units: &'a str,
    bases: &'a Bases,
    taken: Option<Taken>,
}

/// A unit that measures the results.
#[derive(Clone, Copy)]
struct Taken {
    line: usize,
    unit: Wanted,
}

#[derive(Clone, Copy)]
enum Wanted {
    /// UCUM's unit of a share as a plain number.
    One,
    Unit(Compound),
}

impl Given<'_> {
    fn number(&mut self, slot: Slot) -> Result<f64, Refusal> {
        let (value, powers) = match slot {
            Slot::Number(number) => return Ok(number),
            Slot::Temperature(at) => (at.celsius(), None),
            Slot::Quantity(value, powers) => (value, Some(powers)),
        };
        let unit = match self.taken {
            Some(taken) => taken.unit,
            None => self.take(powers)?.unit,
        };
        let number = match unit {
            Wanted::One => value,
            Wanted::Unit(Compound { above: Atom::Celsius, .. }) => value,
            Wanted::Unit(Compound { above: Atom::Fahrenheit, .. }) => {
                Temperature::from_celsius(value).fahrenheit()
            }
            Wanted::Unit(unit) => unit.count_in(value, self.bases)?,
        };
        if number.is_finite() { Ok(number) } else { Err(Refusal::out_of_range(value)) }
    }

    /// The first unit that measures what these powers say; a temperature when there are none.
    fn take(&mut self, powers: Option<Powers>) -> Result<Taken, Refusal> {
        let mut refused = None;
        for (line, text) in self.units.split('\n').enumerate() {
            let found = if text == "1" && powers == Some(quantity::ratio::POWERS) {
                Ok(Wanted::One)
            } else {
                fits(text, self.bases, powers).map(Wanted::Unit)
            };
            match found {
                Ok(unit) => {
                    let taken = Taken { line, unit };
                    self.taken = Some(taken);
                    return Ok(taken);
                }
                Err(refusal) => refused = refused.or(Some(refusal)),
            }
        }
        Err(refused.unwrap_or(Refusal::new(NO_UNIT, f64::NAN)))
    }
}

/// A unit, if it measures what these powers say.
fn fits(text: &str, bases: &Bases, powers: Option<Powers>) -> Result<Compound, Refusal> {
    let unit = Compound::read_with(text, decimal)?;
    match (Written { number: 1.0, unit }.measured(bases)?, powers) {
        (Measured::Temperature(_), None) => Ok(unit),
        (Measured::Temperature(_), Some(_)) => Err(Refusal::temperature_point()),
        (Measured::Quantity { .. }, None) => Err(Refusal::not_a_temperature()),
        (Measured::Quantity { powers: own, .. }, Some(powers)) if own == powers => Ok(unit),
        (Measured::Quantity { powers: own, .. }, Some(powers)) => Err(Refusal::wrong_dimension(own, powers)),
    }
}
