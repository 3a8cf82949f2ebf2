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

// Elsewhere these are instructions; for a microcontroller the library of C would add functions of 0.2 kB.

/// The smaller number; the second where neither is.
#[must_use]
#[inline]
pub(crate) const fn min(x: f64, y: f64) -> f64 {
    if cfg!(not(target_os = "none")) {
        x.min(y)
    } else if x < y {
        x
    } else {
        y
    }
}

/// The larger number; the second where neither is.
#[must_use]
#[inline]
pub(crate) const fn max(x: f64, y: f64) -> f64 {
    if cfg!(not(target_os = "none")) {
        x.max(y)
    } else if x > y {
        x
    } else {
        y
    }
}

/// Doubles hold every whole number up to here, 2^53.
const LARGEST_WHOLE: f64 = 9_007_199_254_740_992.0;

/// The one cast from a double: nothing for what is not whole or lies beyond ±2^53.
#[must_use]
pub fn to_i64(x: f64) -> Option<i64> {
    #[cfg(target_os = "none")]
    return by_bits(x);
    #[cfg(not(target_os = "none"))]
    #[expect(
        clippy::as_conversions,
        clippy::cast_possible_truncation,
        clippy::float_cmp,
        reason = "whole and within 2^53, so nothing is cut off"
    )]
    (x.abs() <= LARGEST_WHOLE && floor(x) == x).then_some(x as i64)
}

/// The same without calculating: a microcontroller casts in software, and asks for the range once more.
#[cfg(any(target_os = "none", test))]
fn by_bits(x: f64) -> Option<i64> {
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_is_whole_by_its_bits_as_by_casting() {
        let sizes = [
            0.0,
            f64::MIN_POSITIVE,
            5e-324,
            0.5,
            0.75,
            1.0,
            1.5,
            2.0,
            3.0,
            1e6,
            1e6 + 0.5,
            4_503_599_627_370_495.5,
        ];
        let large = [
            LARGEST_WHOLE / 2.0,
            LARGEST_WHOLE - 1.0,
            LARGEST_WHOLE,
            LARGEST_WHOLE + 2.0,
            1e300,
            f64::INFINITY,
            f64::NAN,
        ];
        for size in sizes.into_iter().chain(large).chain((1..200).map(|n| f64::from(n) * 0.125)) {
            for x in [size, -size] {
                assert_eq!(by_bits(x), to_i64(x), "{x}");
            }
        }
    }
}
