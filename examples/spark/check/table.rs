//! The sample, and what may become of a calculation: nothing where an input is null, a code, or a result.

use std::collections::HashMap;

use hilum::quantity::{Measure, Temperature};
use hilum::text::{Bases, Compound};
use hilum::{Argument, Error};

/// The rows of a table of tabs.
pub(crate) struct Table<'a> {
    columns: HashMap<&'a str, usize>,
    lines: std::str::Lines<'a>,
}

/// One row of it.
pub(crate) struct Row<'a> {
    columns: &'a HashMap<&'a str, usize>,
    cells: Vec<&'a str>,
}

impl<'a> Table<'a> {
    pub(crate) fn new(text: &'a str) -> Result<Self, String> {
        let mut lines = text.lines();
        let head = lines.next().ok_or("The sample is empty.")?;
        Ok(Self { columns: head.split('\t').enumerate().map(|(at, name)| (name, at)).collect(), lines })
    }

    pub(crate) fn rows(&self) -> impl Iterator<Item = Row<'_>> {
        self.lines.clone().map(|line| Row { columns: &self.columns, cells: line.split('\t').collect() })
    }
}

/// What becomes of a calculation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Fate<T> {
    Null,
    Refused(i32),
    Fine(T),
}

impl<T> Fate<T> {
    pub(crate) fn map<U>(self, with: impl FnOnce(T) -> U) -> Fate<U> {
        self.then(|value| Fate::Fine(with(value)))
    }

    pub(crate) fn then<U>(self, with: impl FnOnce(T) -> Fate<U>) -> Fate<U> {
        match self {
            Self::Null => Fate::Null,
            Self::Refused(code) => Fate::Refused(code),
            Self::Fine(value) => with(value),
        }
    }

    /// A null anywhere makes it null; else the first that is refused.
    pub(crate) fn and<U>(self, other: Fate<U>) -> Fate<(T, U)> {
        match (self, other) {
            (Self::Null, _) | (_, Fate::Null) => Fate::Null,
            (Self::Refused(code), _) | (_, Fate::Refused(code)) => Fate::Refused(code),
            (Self::Fine(a), Fate::Fine(b)) => Fate::Fine((a, b)),
        }
    }
}

/// What the core says, as a code of hilum.h.
pub(crate) fn of<T>(result: Result<T, Error>) -> Fate<T> {
    match result {
        Ok(value) => Fate::Fine(value),
        Err(error) => Fate::Refused(code(error)),
    }
}

/// Numbers out of hilum.h; 0 for what this season cannot bring about, which then differs.
fn code(error: Error) -> i32 {
    let (kind, argument) = match error {
        Error::NotFinite { argument, .. } => (100, argument),
        Error::NotPositive { argument, .. } => (101, argument),
        Error::Negative { argument, .. } => (102, argument),
        Error::OutOfRange { argument, .. } => (103, argument),
        Error::NotAShare { argument, .. } => (104, argument),
        Error::BelowAbsoluteZero { argument, .. } => (105, argument),
        _ => return 0,
    };
    kind + 1000 * number(argument)
}

pub(crate) const fn number(argument: Argument) -> i32 {
    match argument {
        Argument::SeedMass => 1,
        Argument::Seeds => 2,
        Argument::SeedSize => 3,
        Argument::SeedUnit => 6,
        Argument::Bushel => 7,
        Argument::Share => 8,
        Argument::Sown => 11,
        Argument::RatePerMass => 14,
        Argument::RatePerSeed => 16,
        Argument::ProductAmount => 19,
        Argument::Temperature => 22,
        Argument::ActiveContent => 23,
        Argument::Titre => 24,
        Argument::Recovery => 28,
        Argument::StoragePeriod => 35,
        Argument::StorageTemperature => 36,
        Argument::TimeSinceTreating => 37,
        Argument::Life => 47,
        Argument::SeasonLimit => 72,
        Argument::SeasonUsed => 73,
        _ => 0,
    }
}

fn double(text: &str) -> Option<f64> {
    u64::from_str_radix(text, 16).ok().map(f64::from_bits)
}

/// A double as the sample writes it.
pub(crate) fn bits(number: f64) -> String {
    format!("{:016x}", number.to_bits())
}

/// A result as a number of a unit.
pub(crate) fn written<Q: Measure>(quantity: Q, unit: &str) -> Fate<String> {
    let number = Compound::read(unit).and_then(|unit| unit.count_in(quantity.to_base(), &Bases::default()));
    // No unit of the season is unreadable; a 0 would differ from every code.
    number.map_or(Fate::Refused(0), |number| Fate::Fine(bits(number)))
}

fn finite(number: f64, argument: Argument) -> Fate<f64> {
    if number.is_finite() { Fate::Fine(number) } else { Fate::Refused(100 + 1000 * self::number(argument)) }
}

/// As a column is read: 0 or within 1e-30 to 1e30 base units.
pub(crate) fn in_range<Q: Measure>(quantity: Q, argument: Argument) -> Fate<Q> {
    let base = quantity.to_base();
    if base == 0.0 || (1e-30..=1e30).contains(&base.abs()) {
        Fate::Fine(quantity)
    } else {
        Fate::Refused(103 + 1000 * number(argument))
    }
}

impl Row<'_> {
    pub(crate) fn text(&self, name: &str) -> &str {
        self.columns.get(name).and_then(|at| self.cells.get(*at)).copied().unwrap_or("no such column")
    }

    pub(crate) fn number(&self, name: &str, argument: Argument) -> Fate<f64> {
        double(self.text(name)).map_or(Fate::Null, |number| finite(number, argument))
    }

    pub(crate) fn quantity<Q: Measure>(
        &self,
        name: &str,
        make: impl FnOnce(f64) -> Q,
        argument: Argument,
    ) -> Fate<Q> {
        self.number(name, argument).then(|number| in_range(make(number), argument))
    }

    /// The numbers of a list: `[a,b]`; a null inside is 9, HILUM_NO_SUCH_INDEX.
    pub(crate) fn list<T>(&self, name: &str, read: impl Fn(f64) -> Fate<T>) -> Fate<Vec<T>> {
        let text = self.text(name);
        let Some(inside) = text.strip_prefix('[').and_then(|rest| rest.strip_suffix(']')) else {
            return Fate::Null;
        };
        let mut made = Vec::new();
        for item in inside.split(',').filter(|item| !item.is_empty()) {
            match double(item).map_or(Fate::Refused(9), &read) {
                Fate::Fine(value) => made.push(value),
                Fate::Refused(code) => return Fate::Refused(code),
                Fate::Null => return Fate::Null,
            }
        }
        Fate::Fine(made)
    }

    pub(crate) fn periods<Q: Measure>(&self, name: &str, make: fn(f64) -> Q) -> Fate<Vec<Q>> {
        self.list(name, |number| {
            finite(number, Argument::StoragePeriod)
                .then(|number| in_range(make(number), Argument::StoragePeriod))
        })
    }

    pub(crate) fn temperatures(&self, name: &str) -> Fate<Vec<Temperature>> {
        self.list(name, |number| {
            finite(number, Argument::StorageTemperature)
                .then(|number| of(Temperature::from_fahrenheit(number).checked()))
        })
    }
}
