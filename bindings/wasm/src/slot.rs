//! What goes into a calculation and what comes out, in base units: kg, m³, s, K, seeds, CFU and their
//! quotients; °C for a point of temperature.

use core::cell::Cell;

use hilum::Argument;
use hilum::error::{not_negative, positive, share};
use hilum::quantity::Temperature;
use hilum::unit::Powers;

use crate::refusal::{Refusal, Refused};
use crate::take::{Check, Wanted};

/// A value.
#[derive(Clone, Copy)]
pub(crate) enum Slot {
    /// A plain number; from `hilum/numbers`, a number of whatever is needed.
    Number(f64),
    /// A quantity.
    Quantity(f64, Powers),
    /// A point on the temperature scale.
    Temperature(Temperature),
}

/// The most inputs that a calculation has.
pub(crate) const MOST: usize = 8;

/// One calculation: its inputs, its result, and why it was refused.
pub(crate) struct Slots {
    inputs: [Slot; MOST],
    result: Cell<Slot>,
    refusal: Cell<Refusal>,
}

impl Slots {
    /// An input that is not set is no number, and refused as such.
    pub(crate) const fn new() -> Self {
        let none = Slot::Number(f64::NAN);
        Self { inputs: [none; MOST], result: Cell::new(none), refusal: Cell::new(Refusal::NONE) }
    }

    pub(crate) fn set(&mut self, at: usize, slot: Slot) {
        if let Some(place) = self.inputs.get_mut(at) {
            *place = slot;
        }
    }

    pub(crate) fn get(&self, at: usize) -> Slot {
        self.inputs.get(at).copied().unwrap_or(Slot::Number(f64::NAN))
    }

    pub(crate) fn give(&self, result: Slot) {
        self.result.set(result);
    }

    pub(crate) fn result(&self) -> Slot {
        self.result.get()
    }

    /// Refuses an input; the first to be refused counts.
    #[inline(never)]
    pub(crate) fn refuse(&self, field: usize, refusal: Refusal) -> Refused {
        self.refusal.set(refusal.said_of(field));
        Refused
    }

    pub(crate) fn refusal(&self) -> Refusal {
        self.refusal.get()
    }

    /// An input in base units, if it is what is wanted; else NaN.
    #[inline(never)]
    pub(crate) fn checked(&self, field: usize, wanted: &Wanted) -> f64 {
        match Self::look(self.get(field), wanted) {
            Ok(base) => base,
            Err(refusal) => {
                self.refuse(field, refusal);
                f64::NAN
            }
        }
    }

    fn look(slot: Slot, wanted: &Wanted) -> Result<f64, Refusal> {
        // The words for the argument are the script's: it knows the field.
        let of = Argument::Share;
        let base = match (slot, wanted.check) {
            (Slot::Number(value), Check::Temperature) => {
                return temperature(Temperature::from_celsius(value));
            }
            (Slot::Temperature(at), Check::Temperature) => return temperature(at),
            (Slot::Quantity(..), Check::Temperature) => return Err(Refusal::not_a_temperature()),
            (_, Check::Later) => return Ok(0.0),
            (Slot::Temperature(_), _) => return Err(Refusal::temperature_point()),
            (Slot::Quantity(_, powers), _) if powers != wanted.powers => {
                return Err(Refusal::wrong_dimension(powers, wanted.powers));
            }
            (Slot::Number(value) | Slot::Quantity(value, _), _) => value,
        };
        Ok(match wanted.check {
            Check::Positive => positive(of, base),
            Check::Share => share(of, base),
            Check::Any => Ok(base),
            Check::NotNegative | Check::Temperature | Check::Later => not_negative(of, base),
        }?)
    }
}

fn temperature(at: Temperature) -> Result<f64, Refusal> {
    Ok(at.checked()?.celsius())
}
