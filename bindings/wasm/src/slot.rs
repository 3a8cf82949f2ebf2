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

/// Not set; no number, and refused as such.
const NONE: Slot = Slot::Number(f64::NAN);

/// The most inputs that a calculation has.
pub(crate) const MOST: usize = 8;

/// One calculation: its inputs, what was looked at of them, and why it was refused.
pub(crate) struct Slots {
    inputs: [Slot; MOST],
    looked_at: Cell<[f64; MOST]>,
    /// A result whose kind the inputs decide.
    said: Cell<Slot>,
    refusal: Cell<Refusal>,
}

impl Slots {
    pub(crate) const fn new() -> Self {
        Self {
            inputs: [NONE; MOST],
            looked_at: Cell::new([f64::NAN; MOST]),
            said: Cell::new(NONE),
            refusal: Cell::new(Refusal::NONE),
        }
    }

    pub(crate) fn set(&mut self, at: usize, slot: Slot) {
        if let Some(place) = self.inputs.get_mut(at) {
            *place = slot;
        }
    }

    pub(crate) fn get(&self, at: usize) -> Slot {
        self.inputs.get(at).copied().unwrap_or(NONE)
    }

    /// Looks at each input, once; the first to be refused counts.
    pub(crate) fn look(&self, wanted: &[Wanted]) -> Result<(), Refused> {
        let mut bases = [f64::NAN; MOST];
        for (field, (base, wanted)) in bases.iter_mut().zip(wanted).enumerate() {
            *base = self.checked(field, *wanted)?;
        }
        self.looked_at.set(bases);
        Ok(())
    }

    /// An input in base units, if it is what is wanted.
    #[inline(never)]
    pub(crate) fn checked(&self, field: usize, wanted: Wanted) -> Result<f64, Refused> {
        look(self.get(field), wanted).map_err(|refusal| self.refuse(field, refusal))
    }

    /// An input that was looked at.
    #[inline(always)]
    pub(crate) fn base(&self, field: usize) -> f64 {
        self.looked_at.get().get(field).copied().unwrap_or(f64::NAN)
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

    /// A result whose kind the inputs decide; its number.
    pub(crate) fn say(&self, result: Slot) -> f64 {
        self.said.set(result);
        result.number()
    }

    #[cfg(feature = "text")]
    pub(crate) fn said(&self) -> Slot {
        self.said.get()
    }
}

impl Slot {
    pub(crate) fn number(self) -> f64 {
        match self {
            Self::Number(value) | Self::Quantity(value, _) => value,
            Self::Temperature(at) => at.celsius(),
        }
    }
}

fn look(slot: Slot, wanted: Wanted) -> Result<f64, Refusal> {
    // The words for the argument are the script's: it knows the field.
    let of = Argument::Share;
    let base = match (slot, wanted.check) {
        (Slot::Number(value), Check::Temperature) => return temperature(Temperature::from_celsius(value)),
        (Slot::Temperature(at), Check::Temperature) => return temperature(at),
        (Slot::Quantity(..), Check::Temperature) => return Err(Refusal::not_a_temperature()),
        (_, Check::Later) => return Ok(0.0),
        (Slot::Temperature(_), _) => return Err(Refusal::temperature_point()),
        #[cfg(feature = "text")]
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

fn temperature(at: Temperature) -> Result<f64, Refusal> {
    Ok(at.checked()?.celsius())
}
