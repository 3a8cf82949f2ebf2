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
    libm::ceil(x)
}

/// A whole number nearest to x, if an `i32` can hold it.
#[must_use]
#[expect(clippy::as_conversions, clippy::cast_possible_truncation, reason = "in range, as checked")]
pub fn to_i32(x: f64) -> Option<i32> {
    let whole = libm::round(x);
    (f64::from(i32::MIN)..=f64::from(i32::MAX)).contains(&whole).then_some(whole as i32)
}
