//! The inputs of entry `hilum`, which measure something; a row of one or of many.

use core::cell::Cell;

use hilum::Error;
use hilum::quantity::Temperature;
use hilum::unit::Powers;

use super::{MOST, Slot, look};
use crate::refusal::{Refusal, Refused};
use crate::take::Wanted;

/// So many rows are calculated at a time: few enough to stay near the processor.
pub(crate) const ROWS: usize = 512;

/// A number for each of these rows.
pub(crate) type Column = [f64; ROWS];

/// What the numbers of a column are.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum Of {
    Number,
    Quantity(Powers),
    /// In °C.
    Temperature,
}

impl Of {
    pub(crate) fn slot(self, base: f64) -> Slot {
        match self {
            Self::Number => Slot::Number(base),
            Self::Quantity(powers) => Slot::Quantity(base, powers),
            Self::Temperature => Slot::Temperature(Temperature::from_celsius(base)),
        }
    }
}

impl Slot {
    pub(crate) fn of(self) -> Of {
        match self {
            Self::Number(_) => Of::Number,
            Self::Quantity(_, powers) => Of::Quantity(powers),
            Self::Temperature(_) => Of::Temperature,
        }
    }
}

/// What the inputs are, and what the rows say of themselves.
pub(crate) struct Notes {
    pub(crate) inputs: [Of; MOST],
    /// What a result is whose kind the inputs decide.
    said: Cell<Said>,
    refusal: Cell<Refusal>,
}

#[derive(Clone, Copy)]
enum Said {
    Nothing,
    One(Of),
    /// Not all rows gave the same.
    Several,
}

impl Notes {
    /// Nothing yet.
    pub(crate) const fn new() -> Self {
        Self { inputs: [Of::Number; MOST], said: Cell::new(Said::Nothing), refusal: Cell::new(Refusal::NONE) }
    }

    /// Other rows are to come.
    pub(crate) fn begin(&self) {
        self.said.set(Said::Nothing);
        self.refusal.set(Refusal::NONE);
    }

    pub(crate) fn refusal(&self) -> Refusal {
        self.refusal.get()
    }

    /// What all rows gave.
    pub(crate) fn said(&self) -> Result<Of, Refusal> {
        match self.said.get() {
            Said::One(of) => Ok(of),
            _ => Err(self.refusal()),
        }
    }
}

/// Rows whose inputs were looked at, as the calculation demands.
pub(crate) struct Rows<'a> {
    pub(crate) bases: &'a [Column; MOST],
    pub(crate) notes: &'a Notes,
    pub(crate) first: usize,
    pub(crate) end: usize,
}

impl Rows<'_> {
    /// Calculates each row; NaN is never a result, so it says that there is none, and the notes why.
    #[inline(always)]
    pub(crate) fn each(&self, results: &mut Column, calculate: impl Fn(&Slots<'_>) -> f64) {
        let Self { bases, notes, .. } = *self;
        for row in self.first..self.end.min(ROWS) {
            let result = calculate(&Slots { bases, notes, row });
            if let Some(place) = results.get_mut(row) {
                *place = result;
            }
        }
    }
}

/// The inputs of one row.
pub(crate) struct Slots<'a> {
    pub(crate) bases: &'a [Column; MOST],
    pub(crate) notes: &'a Notes,
    pub(crate) row: usize,
}

impl Slots<'_> {
    pub(crate) fn get(&self, field: usize) -> Slot {
        self.notes.inputs.get(field).copied().unwrap_or(Of::Number).slot(self.base(field))
    }

    /// An input that is looked at only when the others are known.
    #[inline(never)]
    pub(crate) fn checked(&self, field: usize, wanted: Wanted) -> Result<f64, Refused> {
        look(self.get(field), wanted).map_err(|refusal| self.refuse(field, refusal))
    }

    /// An input in base units.
    #[inline(always)]
    pub(crate) fn base(&self, field: usize) -> f64 {
        self.bases.get(field).and_then(|column| column.get(self.row)).copied().unwrap_or(f64::NAN)
    }

    /// Refuses an input; the first to be refused counts.
    #[inline(never)]
    pub(crate) fn refuse(&self, field: usize, refusal: Refusal) -> Refused {
        self.notes.refusal.set(refusal.said_of(field));
        Refused
    }

    #[inline(never)]
    pub(crate) fn blame(&self, field: usize, error: Error) -> Refused {
        self.refuse(field, error.into())
    }

    /// A result whose kind the inputs decide; its number.
    pub(crate) fn say(&self, result: Slot) -> f64 {
        let of = result.of();
        self.notes.said.set(match self.notes.said.get() {
            Said::Nothing => Said::One(of),
            Said::One(said) if said == of => Said::One(of),
            _ => Said::Several,
        });
        result.number()
    }
}
