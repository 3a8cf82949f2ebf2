//! libm behind one door.
//!
//! The standard library's transcendental functions differ from target to target in the last bit; libm's
//! do not. Every power, logarithm and root of this crate goes through here.

/// 10^x. Above the largest double it saturates there; below the smallest it is 0.
#[must_use]
pub fn exp10(x: f64) -> f64 {
    libm::pow(10.0, x).min(f64::MAX)
}

/// log10 x; negative infinity for 0.
#[must_use]
pub fn log10(x: f64) -> f64 {
    libm::log10(x)
}

/// x^y.
#[must_use]
pub fn pow(x: f64, y: f64) -> f64 {
    libm::pow(x, y).min(f64::MAX)
}

/// Square root.
#[must_use]
pub fn sqrt(x: f64) -> f64 {
    libm::sqrt(x)
}

/// The whole number at or below x.
#[must_use]
pub fn floor(x: f64) -> f64 {
    libm::floor(x)
}

/// The whole number at or above x.
#[must_use]
pub fn ceil(x: f64) -> f64 {
    // The same number, sign of 0 included, without a second function on a microcontroller.
    -libm::floor(-x)
}

/// The nearest whole number; halves go away from 0.
#[must_use]
pub fn round(x: f64) -> f64 {
    libm::round(x)
}

/// Doubles hold every whole number up to here, 2^53.
const LARGEST_WHOLE: f64 = 9_007_199_254_740_992.0;

/// The one cast from a double: nothing for what is not whole or lies beyond ±2^53.
#[must_use]
pub fn to_i64(x: f64) -> Option<i64> {
    #[expect(
        clippy::as_conversions,
        clippy::cast_possible_truncation,
        clippy::float_cmp,
        reason = "whole and within 2^53, so nothing is cut off"
    )]
    (x.abs() <= LARGEST_WHOLE && floor(x) == x).then_some(x as i64)
}

/// As [`to_i64`], for the 32 bits of a bus message.
#[must_use]
pub fn to_i32(x: f64) -> Option<i32> {
    to_i64(x).and_then(|whole| i32::try_from(whole).ok())
}

/// As [`to_i64`], for counts.
#[must_use]
pub fn to_u64(x: f64) -> Option<u64> {
    to_i64(x).and_then(|whole| u64::try_from(whole).ok())
}
