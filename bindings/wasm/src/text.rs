//! Entry `hilum`: calculations on quantities as they are written.

use hilum::quantity;
use hilum::seed::{Bushel, SeedUnit};
use hilum::text::{Atom, Bases, Compound, Measured, Scale, TextError, Written};

use crate::border::{Border, Place};
use crate::decimal::decimal;
use crate::refusal::{Refusal, codes, count};
use crate::slot::{MOST, Slot, Slots};
use crate::table::{calculate as calculated, given, row};
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

/// What the unit whose `length` bytes lie at `base` may have been meant to be: leaves there, as two numbers,
/// where its text lies and how many bytes it has; gives 0 when nothing is near.
///
/// # Safety
/// As [`Border::at`].
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn suggest(base: usize, length: usize) -> usize {
    // SAFETY: the script keeps to it, and leaves room for two numbers before.
    let border = unsafe { Border::at(base, 2, 0, length) };
    let unit = border.text(Place::first(length));
    match unit.and_then(|unit| Compound::read_with(unit, decimal)) {
        Err(TextError::UnknownUnit { suggestion: Some(suggestion) }) => {
            let told = [suggestion.as_ptr().addr(), suggestion.len()].map(count);
            border.numbers.iter_mut().zip(told).for_each(|(place, number)| *place = number);
            1
        }
        _ => 0,
    }
}

/// Calculates number `number` of the table, `rows` times.
///
/// At the border lie the numbers: those of the inputs after room for the results ([`ROOM`] at least); then
/// the places of the inputs, and of the unit wanted. An input is a text alone, or a unit and numbers, or
/// numbers alone. UCUM's `1` is the unit of a share as a plain number. `unit` and `bushel` are the inputs that
/// say what these words mean in the others.
///
/// Gives 0, and leaves the results in the room; or else what [`Refusal::tell`] leaves there.
///
/// # Safety
/// As [`Border::at`].
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn calculate(
    base: usize,
    number: usize,
    rows: usize,
    numbers: usize,
    places: usize,
    text: usize,
    unit: usize,
    bushel: usize,
) -> f64 {
    // SAFETY: the script keeps to it.
    let mut border = unsafe { Border::at(base, numbers, places, text) };
    let mut row = 0;
    match all(&mut border, number, rows, [unit, bushel], &mut row) {
        Ok(()) => 0.0,
        Err(refusal) => refusal.tell(row, border.numbers),
    }
}

/// The field of the result's unit in a refusal, beyond those of all inputs.
const RESULT: usize = 99;

fn all(
    border: &mut Border<'_>,
    number: usize,
    rows: usize,
    words: [usize; 2],
    at: &mut usize,
) -> Result<(), Refusal> {
    let row = row(number).ok_or(Refusal::NONE)?;
    let (wanted, places) = border.places.split_last().ok_or(Refusal::NONE)?;
    // What cannot be read here is refused where it is read as an input.
    let alone = |word: usize| {
        let input = Input::read(border, *places.get(word)?, &Bases::default()).ok()?;
        let mut slots = Slots::new();
        slots.set(0, input.slot(border, 0, &Bases::default()).ok()?);
        Some(slots)
    };
    let [unit, bushel] = words;
    let bases = Bases {
        unit: alone(unit).and_then(|slots| take::<SeedUnit>(&slots, 0).ok()),
        bushel: alone(bushel).and_then(|slots| take::<Bushel>(&slots, 0).ok()),
    };
    let mut inputs = [Input::NONE; MOST];
    for (field, (input, place)) in inputs.iter_mut().zip(places).enumerate() {
        *input = Input::read(border, *place, &bases).map_err(|refusal| refusal.said_of(field))?;
    }
    let wanted = Wanted::read(border.text(*wanted)?, &bases).map_err(|refusal| refusal.said_of(RESULT))?;
    while *at < rows {
        let mut slots = Slots::new();
        for (field, input) in inputs.iter().take(places.len()).enumerate() {
            slots.set(field, input.slot(border, *at, &bases).map_err(|refusal| refusal.said_of(field))?);
        }
        let result = calculated(row, &slots)?;
        let result = wanted.number(given(row, &slots, result));
        if let Some(place) = border.numbers.get_mut(*at) {
            *place = result.map_err(|refusal| refusal.said_of(RESULT))?;
        }
        *at = at.saturating_add(1);
    }
    Ok(())
}

/// An input, read once for all rows.
#[derive(Clone, Copy)]
enum Input {
    Same(Slot),
    Quantities(Scale, Place),
    /// Points on the scale of temperature.
    Points(Compound, Place),
    Numbers(Place),
}

impl Input {
    const NONE: Self = Self::Same(Slot::Number(f64::NAN));

    fn read(border: &Border<'_>, place: Place, bases: &Bases) -> Result<Self, Refusal> {
        let text = border.text(place)?;
        Ok(match (text, place.has_numbers()) {
            (_, false) => Self::Same(Written::read_with(text, decimal)?.measured(bases)?.into()),
            ("", true) => Self::Numbers(place),
            (_, true) => match Compound::read_with(text, decimal)? {
                point @ Compound { above: Atom::Celsius | Atom::Fahrenheit, below: None } => {
                    Self::Points(point, place)
                }
                unit => Self::Quantities(unit.scale(bases)?, place),
            },
        })
    }

    fn slot(&self, border: &Border<'_>, row: usize, bases: &Bases) -> Result<Slot, Refusal> {
        let cell = |place: Place| {
            let number = place.of(row).and_then(|at| border.numbers.get(at)).copied().unwrap_or(f64::NAN);
            if number.is_finite() { Ok(number) } else { Err(Refusal::not_finite(number)) }
        };
        Ok(match *self {
            Self::Same(slot) => slot,
            Self::Numbers(place) => Slot::Number(cell(place)?),
            Self::Quantities(scale, place) => Slot::Quantity(scale.base(cell(place)?), scale.powers),
            Self::Points(unit, place) => Written { number: cell(place)?, unit }.measured(bases)?.into(),
        })
    }
}

impl From<Measured> for Slot {
    fn from(measured: Measured) -> Self {
        match measured {
            Measured::Quantity { value, powers } => Self::Quantity(value, powers),
            Measured::Temperature(at) => Self::Temperature(at),
        }
    }
}

/// What results are wanted in.
#[derive(Clone, Copy)]
enum Wanted {
    /// UCUM's unit of a share as a plain number.
    One,
    /// A unit, and what a number of it is; or why it is none.
    Unit(Compound, Result<Scale, Refusal>),
}

impl Wanted {
    fn read(text: &str, bases: &Bases) -> Result<Self, Refusal> {
        if text == "1" {
            return Ok(Self::One);
        }
        let unit = Compound::read_with(text, decimal)?;
        Ok(Self::Unit(unit, unit.scale(bases).map_err(Refusal::from)))
    }

    fn number(self, result: Slot) -> Result<f64, Refusal> {
        let Slot::Quantity(value, powers) = result else { return self.plain(result) };
        let number = match self {
            Self::One if powers == quantity::ratio::POWERS => value,
            Self::One => return Err(Refusal::wrong_dimension(quantity::ratio::POWERS, powers)),
            Self::Unit(_, scale) => match scale? {
                scale if scale.powers == powers => scale.number(value),
                scale => return Err(Refusal::wrong_dimension(scale.powers, powers)),
            },
        };
        if number.is_finite() { Ok(number) } else { Err(Refusal::out_of_range(value)) }
    }

    /// A number that has no unit, or a point of temperature.
    fn plain(self, result: Slot) -> Result<f64, Refusal> {
        let Slot::Temperature(at) = result else { return Ok(result.number()) };
        match self {
            Self::Unit(Compound { above: Atom::Celsius, .. }, _) => Ok(at.celsius()),
            Self::Unit(Compound { above: Atom::Fahrenheit, .. }, _) => Ok(at.fahrenheit()),
            _ => Err(Refusal::not_a_temperature()),
        }
    }
}
