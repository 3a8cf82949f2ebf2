//! What goes into a calculation and what comes out, in base units: kg, m³, s, K, seeds, CFU and their
//! quotients; °C for a point of temperature.

use hilum::Argument;
use hilum::error::{not_negative, positive, share};
use hilum::quantity::Temperature;
use hilum::unit::Powers;

use crate::refusal::Refusal;
use crate::take::{Check, Wanted};

#[cfg(not(feature = "text"))]
mod numbers;
#[cfg(feature = "text")]
mod quantities;
#[cfg(not(feature = "text"))]
pub(crate) use numbers::{Slots, Telling, looked, said};
#[cfg(feature = "text")]
pub(crate) use quantities::{Column, Notes, Of, ROWS, Rows, Slots};

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

impl Slot {
    pub(crate) fn number(self) -> f64 {
        match self {
            Self::Number(value) | Self::Quantity(value, _) => value,
            Self::Temperature(at) => at.celsius(),
        }
    }
}

#[cfg_attr(not(feature = "text"), inline(always))]
pub(crate) fn look(slot: Slot, wanted: Wanted) -> Result<f64, Refusal> {
    // The words for the argument are the script's: it knows the field.
    let of = Argument::Share;
    let base = match (slot, wanted.check) {
        (Slot::Number(value), Check::Temperature) => return temperature(Temperature::from_celsius(value)),
        (Slot::Temperature(at), Check::Temperature) => return temperature(at),
        (Slot::Quantity(..), Check::Temperature) => return Err(Refusal::not_a_temperature()),
        (_, Check::Later) => return Ok(slot.number()),
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
