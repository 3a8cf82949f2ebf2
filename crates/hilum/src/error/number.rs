//! Which numbers there may be.
#![allow(clippy::inline_always, reason = "what a caller has looked at, and vectors, are only seen in place")]

use super::{Argument, Error, LARGEST, SMALLEST};
use crate::quantity::Temperature;

/// A number that must be more than 0.
///
/// # Errors
/// Which of that it is not, with the value.
#[cfg_attr(not(target_os = "none"), inline)]
pub fn positive(argument: Argument, value: f64) -> Result<f64, Error> {
    if is_positive(value) { Ok(value) } else { Err(refused(argument, value)) }
}

/// As [`positive`], asked in place: where a caller has looked before, nothing is left of the question.
#[inline(always)]
pub(crate) fn given(argument: Argument, value: f64) -> Result<f64, Error> {
    if cfg!(target_os = "none") && is_positive(value) { Ok(value) } else { positive(argument, value) }
}

/// A number that may be 0.
///
/// # Errors
/// Which of that it is not, with the value.
#[cfg_attr(not(target_os = "none"), inline)]
pub fn not_negative(argument: Argument, value: f64) -> Result<f64, Error> {
    if is_zero(value) {
        // Also for -0.0, so that no sign survives.
        Ok(0.0)
    } else if is_positive(value) {
        Ok(value)
    } else {
        Err(refused_but_0(argument, value))
    }
}

/// A share, 0 to 1.
///
/// # Errors
/// Which of that it is not, with the value.
#[cfg_attr(not(target_os = "none"), inline)]
pub fn share(argument: Argument, value: f64) -> Result<f64, Error> {
    if is_share(value) { not_negative(argument, value) } else { Err(refused_share(argument, value)) }
}

// Doubles from 0 on are ordered as their bits are, and the bits of all others lie above: no comparison of doubles, which a
// microcontroller does in software. Many callers ask and few refuse: the question is one comparison, the answer a call.
// Where every byte counts, in a browser and in a controller's flash, the question is a call, too; but not where a browser has
// vectors: those compare doubles, and what becomes of an answer that nobody asks for must be seen to be nothing.
#[cfg_attr(
    any(target_os = "none", all(target_arch = "wasm32", not(target_feature = "simd128"))),
    inline(never)
)]
#[cfg_attr(not(any(target_arch = "wasm32", target_os = "none")), inline)]
#[allow(clippy::manual_range_contains, clippy::needless_bitwise_bool, reason = "a branch makes no vector")]
fn is_positive(value: f64) -> bool {
    if cfg!(target_feature = "simd128") {
        (value >= SMALLEST) & (value <= LARGEST)
    } else {
        (SMALLEST.to_bits()..=LARGEST.to_bits()).contains(&value.to_bits())
    }
}

/// 0 of either sign.
#[cfg_attr(not(target_os = "none"), inline(always))]
fn is_zero(value: f64) -> bool {
    if cfg!(target_os = "none") { no_digits(value.to_bits()) } else { value == 0.0 }
}

/// Apart, or the compiler makes a comparison of doubles of it after all: 0.6 kB where they are in software.
#[inline(never)]
const fn no_digits(bits: u64) -> bool {
    bits << 1 == 0
}

/// Below 0; of a number that is neither 0 nor no number.
#[cfg_attr(not(target_os = "none"), inline(always))]
const fn is_negative(value: f64) -> bool {
    if cfg!(target_os = "none") { value.is_sign_negative() } else { value < 0.0 }
}

/// Not of what is no number.
#[cfg_attr(not(target_os = "none"), inline(always))]
fn is_at_most_0(value: f64) -> bool {
    if cfg!(target_os = "none") { value.is_sign_negative() || is_zero(value) } else { value <= 0.0 }
}

/// Below a number that is below 0.
#[cfg_attr(not(target_os = "none"), inline(always))]
const fn is_below(value: f64, least: f64) -> bool {
    if cfg!(target_os = "none") {
        value.is_sign_negative() && value.abs().to_bits() > least.abs().to_bits()
    } else {
        value < least
    }
}

/// Above a number that is above 0.
#[cfg_attr(not(target_os = "none"), inline(always))]
const fn is_above(value: f64, most: f64) -> bool {
    if cfg!(target_os = "none") {
        value.is_sign_positive() && value.to_bits() > most.to_bits()
    } else {
        value > most
    }
}

#[cfg_attr(not(target_os = "none"), inline(always))]
fn is_share(value: f64) -> bool {
    if cfg!(target_os = "none") {
        value.to_bits() <= 1.0_f64.to_bits() || is_zero(value)
    } else {
        (0.0..=1.0).contains(&value)
    }
}

#[cfg_attr(target_feature = "simd128", inline(always))]
#[cfg_attr(not(target_feature = "simd128"), cold, inline(never))]
fn refused(argument: Argument, value: f64) -> Error {
    if !value.is_finite() {
        Error::NotFinite { argument, value }
    } else if is_at_most_0(value) {
        Error::NotPositive { argument, value }
    } else {
        Error::OutOfRange { argument, value }
    }
}

#[cfg_attr(target_feature = "simd128", inline(always))]
#[cfg_attr(not(target_feature = "simd128"), cold, inline(never))]
fn refused_but_0(argument: Argument, value: f64) -> Error {
    if is_negative(value) && value.is_finite() {
        Error::Negative { argument, value }
    } else {
        refused(argument, value)
    }
}

#[cfg_attr(target_feature = "simd128", inline(always))]
#[cfg_attr(not(target_feature = "simd128"), cold, inline(never))]
fn refused_share(argument: Argument, value: f64) -> Error {
    if value.is_finite() {
        Error::NotAShare { argument, value }
    } else {
        Error::NotFinite { argument, value }
    }
}

/// Which numbers there may be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Range {
    /// More than 0.
    Positive,
    /// 0 or more.
    NotNegative,
    /// 0 to 1.
    Share,
}

impl Range {
    /// Whether there may be such a number.
    #[must_use]
    #[inline]
    pub fn holds(self, value: f64) -> bool {
        match self {
            Self::Positive => is_positive(value),
            Self::NotNegative => is_zero(value) || is_positive(value),
            Self::Share => is_share(value) && (is_zero(value) || is_positive(value)),
        }
    }

    /// The number, if there may be one.
    ///
    /// # Errors
    /// Which number it is not, with the value.
    #[cfg_attr(not(target_os = "none"), inline)]
    pub fn look(self, argument: Argument, value: f64) -> Result<f64, Error> {
        match self {
            Self::Positive => positive(argument, value),
            Self::NotNegative => not_negative(argument, value),
            Self::Share => share(argument, value),
        }
    }
}

/// A domain type that is one number of base units, also in memory. A library of bindings may look at many
/// such numbers by a table and then take them as what they are.
pub trait OneNumber: Copy {
    /// What an error calls it.
    const ARGUMENT: Argument;
    /// What it is held to when it is made.
    const RANGE: Range;
}

/// A point on the temperature scale.
pub(crate) fn temperature(argument: Argument, at: Temperature) -> Result<Temperature, Error> {
    let value = at.celsius();
    if !value.is_finite() {
        Err(Error::NotFinite { argument, value })
    } else if is_below(value, Temperature::ABSOLUTE_ZERO.celsius()) {
        Err(Error::BelowAbsoluteZero { argument, value })
    } else if is_above(value, LARGEST) {
        Err(Error::OutOfRange { argument, value })
    } else {
        Ok(at)
    }
}
