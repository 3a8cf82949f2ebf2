//! What goes into a calculation and what comes out, in base units: kg, m³, s, K, seeds, CFU and their
//! quotients; °C for a point of temperature.

use hilum::Argument;
use hilum::error::{not_negative, positive, share};
use hilum::quantity::Temperature;
use hilum::unit::Powers;

use crate::refusal::Refusal;
use crate::take::{Check, Wanted};

/// What a number measures: the powers of the base quantities, as the digits of one number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Of(pub(crate) i32);

impl Of {
    /// A plain number; from `hilum/numbers`, a number of whatever is needed.
    pub(crate) const NUMBER: Self = Self(i32::MAX);
    /// A point on the temperature scale.
    pub(crate) const TEMPERATURE: Self = Self(i32::MAX - 2);

    /// A quantity.
    #[allow(clippy::as_conversions, clippy::cast_lossless, reason = "a constant cannot call i32::from")]
    pub(crate) const fn powers(powers: Powers) -> Self {
        let Powers { length, mass, time, temperature, seeds, cells } = powers;
        // Powers lie within -3 and 3.
        let of = length as i32
            + 16 * (mass as i32
                + 16 * (time as i32 + 16 * (temperature as i32 + 16 * (seeds as i32 + 16 * cells as i32))));
        Self(of)
    }

    /// Whether a dose, an amount or a titre is one of liquid, or a plain number: only volumes have odd powers of length.
    pub(crate) const fn is_liquid(self) -> bool {
        self.0 & 1 == 1
    }
}

/// A value.
#[derive(Clone, Copy)]
pub(crate) struct Value {
    pub(crate) number: f64,
    pub(crate) of: Of,
}

/// The most inputs that a calculation has.
pub(crate) const MOST: usize = 8;

#[cfg_attr(not(feature = "text"), inline(always))]
pub(crate) fn look(slot: Value, wanted: Wanted) -> Result<f64, Refusal> {
    // The words for the argument are the script's: it knows the field.
    let of = Argument::Share;
    let base = slot.number;
    #[cfg(feature = "text")]
    if wanted.check != Check::Later && slot.of != Of::NUMBER && slot.of != wanted.of {
        return Err(crate::text::wrong_dimension(wanted.of));
    }
    Ok(match wanted.check {
        Check::Positive => positive(of, base),
        Check::Share => share(of, base),
        Check::Any | Check::Later => Ok(base),
        Check::NotNegative => not_negative(of, base),
        Check::Temperature => Temperature::from_celsius(base).checked().map(Temperature::celsius),
    }?)
}
