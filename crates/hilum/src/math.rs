//! libm behind one door.
//!
//! The standard library's transcendental functions differ from target to target in the last bit; libm's
//! do not. Every power, logarithm and root of this crate goes through here.

/// 10^x. Above the largest double it saturates there; below the smallest it is 0.
#[must_use]
pub fn exp10(x: f64) -> f64 {
    min(libm::pow(10.0, x), f64::MAX)
}

/// log10 x; negative infinity for 0.
#[must_use]
pub fn log10(x: f64) -> f64 {
    libm::log10(x)
}

/// x^y.
#[must_use]
pub fn pow(x: f64, y: f64) -> f64 {
    min(libm::pow(x, y), f64::MAX)
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

/// The smaller number; the second where neither is. `f64::min` leaves the sign of a zero to the target.
#[must_use]
pub(crate) const fn min(x: f64, y: f64) -> f64 {
    if x < y { x } else { y }
}

/// The larger number; the second where neither is. `f64::max` leaves the sign of a zero to the target.
#[must_use]
pub(crate) const fn max(x: f64, y: f64) -> f64 {
    if x > y { x } else { y }
}

/// Doubles hold every whole number up to here, 2^53.
const LARGEST_WHOLE: f64 = 9_007_199_254_740_992.0;

/// A whole number out of a double: nothing for what is not whole or lies beyond ±2^53.
///
/// By its bits: casting asks for the range and for what is no number once more, in software on a microcontroller.
#[must_use]
pub fn to_i64(x: f64) -> Option<i64> {
    let size = x.abs().to_bits();
    if size == 0 || size > LARGEST_WHOLE.to_bits() {
        return (size == 0).then_some(0);
    }
    // The digits of 2^53 end at the point; those of a number half as large have one bit more below it.
    let digits = (size & ((1 << 52) - 1) | 1 << 52) << 1;
    let below = (LARGEST_WHOLE.to_bits() >> 52) - (size >> 52);
    if u64::from(digits.trailing_zeros()) < below {
        return None;
    }
    let whole = (digits >> below).cast_signed();
    Some(if x.is_sign_negative() { -whole } else { whole })
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
