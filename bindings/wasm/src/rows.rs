//! Rows on quantities as they are written: each unit is read once, then the numbers are calculated as many at a time as there are.

use core::ops::Range;

use hilum::quantity::{self, Temperature};
use hilum::seed::{Bushel, SeedUnit};
use hilum::text::{Atom, Bases, Compound, Measured, Scale, Written};
use hilum::{Argument, error};

use crate::border::{Border, Place};
use crate::decimal::decimal;
use crate::refusal::Refusal;
use crate::slot::{Column, MOST, Notes, Of, Rows, Slot, Slots, look};
use crate::table::{Row, Way, row};
use crate::take::{Check, Wanted, take};

/// What lies between script and calculation.
#[repr(C)]
pub(crate) struct Desk {
    /// The numbers of the inputs as they were given; one that is the same in all rows lies in the first.
    pub(crate) written: [Column; MOST],
    /// Where the results are expected, or [`Refusal::tell`] tells why there are none.
    pub(crate) results: Column,
    /// The inputs in base units.
    pub(crate) bases: [Column; MOST],
}

/// A calculation whose inputs and units are known.
pub(crate) struct Work {
    way: Option<&'static Way>,
    inputs: [Input; MOST],
    notes: Notes,
    unit: Unit,
}

/// The field of the result's unit in a refusal, beyond those of all inputs.
const RESULT: usize = 99;

impl Work {
    /// Nothing yet.
    pub(crate) const fn new() -> Self {
        Self { way: None, inputs: [Input::NONE; MOST], notes: Notes::new(), unit: Unit::One }
    }

    /// Reads what the inputs are, and the unit wanted; `words` are the inputs that say what `unit` and `bu` mean.
    pub(crate) fn read(
        border: &Border<'_>,
        number: usize,
        words: [usize; 2],
        desk: &mut Desk,
    ) -> Result<Self, Refusal> {
        let row = row(number).ok_or(Refusal::NONE)?;
        let (wanted, places) = border.places.split_last().ok_or(Refusal::NONE)?;
        let mut work = Self::new();
        let [unit, bushel] = words;
        let bases = Bases {
            unit: work.word::<SeedUnit>(border, unit, desk),
            bushel: work.word::<Bushel>(border, bushel, desk),
        };
        for (field, place) in places.iter().enumerate() {
            work.input(border, field, *place, &bases).map_err(|refusal| refusal.said_of(field))?;
        }
        work.unit = Unit::read(border.text(*wanted)?, &bases).map_err(|refusal| refusal.said_of(RESULT))?;
        work.way = way(row, work.notes.inputs.first().copied());
        Ok(work)
    }

    fn input(
        &mut self,
        border: &Border<'_>,
        field: usize,
        place: Place,
        bases: &Bases,
    ) -> Result<Input, Refusal> {
        let read = Input::read(border.text(place)?, place, bases)?;
        if let Some((input, of)) = self.inputs.get_mut(field).zip(self.notes.inputs.get_mut(field)) {
            (*input, *of) = (read, read.of);
        }
        Ok(read)
    }

    /// What a word means, if that is said; what cannot be read here is refused where it is read as an input.
    fn word<T: crate::take::Take>(
        &mut self,
        border: &Border<'_>,
        field: usize,
        desk: &mut Desk,
    ) -> Option<T> {
        let input = self.input(border, field, *border.places.get(field)?, &Bases::default()).ok()?;
        if input.is_column {
            return None;
        }
        input.lay(Wanted::LATER, desk.written.get(field)?, desk.bases.get_mut(field)?, 0..1).ok()?;
        take(&Slots { bases: &desk.bases, notes: &self.notes, row: 0 }, field).ok()
    }

    /// Calculates the first rows on the desk; what is the same in all rows lies there from the second time on. The row that is
    /// refused is told.
    pub(crate) fn rows(&self, desk: &mut Desk, rows: usize, is_laid: bool) -> Result<(), (usize, Refusal)> {
        match self.some(desk, 0..rows, is_laid) {
            Ok(()) => Ok(()),
            Err(refusal) if rows < 2 => Err((0, refusal)),
            // One by one, in their order, they say which of them is refused, if any.
            Err(_) => (0..rows).try_for_each(|row| {
                self.some(desk, row..row.saturating_add(1), false).map_err(|why| (row, why))
            }),
        }
    }

    fn some(&self, desk: &mut Desk, rows: Range<usize>, is_laid: bool) -> Result<(), Refusal> {
        let way = self.way.ok_or(Refusal::NONE)?;
        self.notes.begin();
        let columns = desk.written.iter().zip(&mut desk.bases);
        for (field, ((input, wanted), (written, bases))) in
            self.inputs.iter().zip(way.inputs).zip(columns).enumerate()
        {
            if input.is_column || !is_laid {
                input.lay(*wanted, written, bases, rows.clone()).map_err(|why| why.said_of(field))?;
            }
        }
        let some = Rows { bases: &desk.bases, notes: &self.notes, first: rows.start, end: rows.end };
        (way.run)(&some, &mut desk.results);
        let results = desk.results.get_mut(rows).unwrap_or_default();
        if results.first().is_none_or(|result| result.is_nan()) {
            return Err(self.notes.refusal());
        }
        let of = match way.given {
            Some(of) => of,
            None => self.notes.said()?,
        };
        self.unit.put(of, results).map_err(|refusal| refusal.said_of(RESULT))
    }
}

/// Which way to calculate, the first input says.
fn way(row: Row, first: Option<Of>) -> Option<&'static Way> {
    let is_dry = !first.is_none_or(|of| crate::take::is_liquid(of.slot(f64::NAN)));
    row.get(usize::from(is_dry)).or(row.first())
}

/// An input, read once for all rows.
#[derive(Clone, Copy)]
struct Input {
    of: Of,
    number: Number,
    is_column: bool,
}

/// What a number of an input is in base units.
#[derive(Clone, Copy)]
enum Number {
    /// The text says it all.
    Said(f64),
    /// As it is.
    Plain,
    /// A number of this unit.
    Times(Scale),
    Celsius,
    Fahrenheit,
}

impl Input {
    const NONE: Self = Self { of: Of::Number, number: Number::Plain, is_column: false };

    fn read(text: &str, place: Place, bases: &Bases) -> Result<Self, Refusal> {
        let (of, number) = match (text, place.has_numbers()) {
            (_, false) => {
                let slot = Slot::from(Written::read_with(text, decimal)?.measured(bases)?);
                (slot.of(), Number::Said(slot.number()))
            }
            ("", true) => (Of::Number, Number::Plain),
            (_, true) => match Compound::read_with(text, decimal)? {
                Compound { above: Atom::Celsius, below: None } => (Of::Temperature, Number::Celsius),
                Compound { above: Atom::Fahrenheit, below: None } => (Of::Temperature, Number::Fahrenheit),
                unit => {
                    let scale = unit.scale(bases)?;
                    (Of::Quantity(scale.powers), Number::Times(scale))
                }
            },
        };
        Ok(Self { of, number, is_column: place.is_column() })
    }

    /// Looks at the numbers of rows, and lays them down in base units; none when one is refused.
    fn lay(
        &self,
        wanted: Wanted,
        written: &Column,
        bases: &mut Column,
        rows: Range<usize>,
    ) -> Result<(), Refusal> {
        let into = bases.get_mut(rows.clone()).unwrap_or_default();
        if !self.is_column {
            let base = self.looked(written.first().copied().unwrap_or(f64::NAN), wanted)?;
            into.fill(base);
            return Ok(());
        }
        let numbers = written.get(rows).unwrap_or_default();
        if let Number::Times(scale) = self.number
            && self.are_usual(scale, wanted, numbers, into)
        {
            return Ok(());
        }
        for (base, number) in into.iter_mut().zip(numbers) {
            *base = self.looked(*number, wanted)?;
        }
        Ok(())
    }

    /// Lays down numbers in base units; whether each passes because it is more than 0 and one that is passes.
    fn are_usual(&self, scale: Scale, wanted: Wanted, numbers: &[f64], into: &mut [f64]) -> bool {
        let passes = look(self.of.slot(1.0), wanted).is_ok();
        let most = if wanted.check == Check::Share { 1.0 } else { f64::MAX };
        passes
            & match scale.below {
                None => laid(Scale { below: None, ..scale }, most, numbers, into),
                Some(below) => laid(Scale { below: Some(below), ..scale }, most, numbers, into),
            }
    }

    /// A number in base units, if it is what is wanted.
    fn looked(&self, number: f64, wanted: Wanted) -> Result<f64, Refusal> {
        let base = match self.number {
            Number::Said(base) => return look(self.of.slot(base), wanted),
            Number::Plain => number,
            Number::Times(scale) => scale.base(number),
            Number::Celsius => number,
            Number::Fahrenheit => Temperature::from_fahrenheit(number).celsius(),
        };
        if number.is_finite() { look(self.of.slot(base), wanted) } else { Err(Refusal::not_finite(number)) }
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
enum Unit {
    /// UCUM's unit of a share as a plain number.
    One,
    /// A unit, and what a number of it is; or why it is none.
    Of(Compound, Result<Scale, Refusal>),
}

impl Unit {
    fn read(text: &str, bases: &Bases) -> Result<Self, Refusal> {
        if text == "1" {
            return Ok(Self::One);
        }
        let unit = Compound::read_with(text, decimal)?;
        Ok(Self::Of(unit, unit.scale(bases).map_err(Refusal::from)))
    }

    /// Results in base units become numbers of this unit. Where one of many is refused, it is not said which.
    fn put(self, of: Of, results: &mut [f64]) -> Result<(), Refusal> {
        let first = results.first().copied().unwrap_or(f64::NAN);
        match (of, self) {
            (Of::Number, _) => {}
            (Of::Quantity(powers), Self::One) if powers == quantity::ratio::POWERS => {}
            (Of::Quantity(powers), Self::One) => {
                return Err(Refusal::wrong_dimension(quantity::ratio::POWERS, powers));
            }
            (Of::Quantity(powers), Self::Of(_, scale)) => {
                let scale = scale?;
                if scale.powers != powers {
                    return Err(Refusal::wrong_dimension(scale.powers, powers));
                }
                numbers(scale, results);
            }
            (Of::Temperature, Self::Of(Compound { above: Atom::Celsius, .. }, _)) => {}
            (Of::Temperature, Self::Of(Compound { above: Atom::Fahrenheit, .. }, _)) => {
                for result in results.iter_mut() {
                    *result = Temperature::from_celsius(*result).fahrenheit();
                }
            }
            (Of::Temperature, _) => return Err(Refusal::not_a_temperature()),
        }
        let are_numbers = results.iter().fold(true, |are, result| are & result.is_finite());
        if are_numbers { Ok(()) } else { Err(Refusal::out_of_range(first)) }
    }
}

/// Lays down numbers in base units; whether all lie between 0 and the most.
#[inline(always)]
#[allow(clippy::needless_bitwise_bool, reason = "a branch makes no vector")]
fn laid(scale: Scale, most: f64, numbers: &[f64], into: &mut [f64]) -> bool {
    let mut do_all = true;
    for (base, number) in into.iter_mut().zip(numbers) {
        *base = scale.base(*number);
        do_all &= error::positive(Argument::Share, *base).is_ok() & (*base <= most);
    }
    do_all
}

/// Base units become numbers of the unit.
#[allow(clippy::float_cmp, reason = "what is divided by just 1 is what it was")]
fn numbers(scale: Scale, results: &mut [f64]) {
    let all = |results: &mut [f64], scale: Scale| {
        for result in results {
            *result = scale.number(*result);
        }
    };
    match scale.below {
        None if scale.above == 1.0 => {}
        None => all(results, Scale { below: None, ..scale }),
        Some(below) => all(results, Scale { below: Some(below), ..scale }),
    }
}
