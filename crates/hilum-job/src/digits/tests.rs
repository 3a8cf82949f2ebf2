//! Core's own writing of numbers is asked for the same.

use alloc::string::ToString;

use super::*;
use crate::dice::Dice;

/// What words.rs said before, by core's writing alone.
fn by_core(value: f64, digits: usize) -> String {
    let trimmed = |text: &str| {
        let kept = if text.contains('.') { text.trim_end_matches('0') } else { text };
        kept.trim_end_matches('.').to_string()
    };
    let scientific = format!("{value:.*e}", digits.saturating_sub(1));
    let (mantissa, exponent) = scientific.split_once('e').unwrap_or((&scientific, "0"));
    match exponent.parse::<i32>() {
        Ok(exponent @ -4..=8) => {
            let behind = count(digits) - 1 - exponent;
            trimmed(&format!("{value:.*}", usize::try_from(behind).unwrap_or(0)))
        }
        _ => format!("{}e{exponent}", trimmed(mantissa)),
    }
}

fn alike(value: f64) {
    assert_eq!(plain(value), format!("{value}"));
    assert_eq!(exact(value), format!("{value:?}"));
    let refused = hilum::Error::NotRising { value };
    assert_eq!(Told(refused).to_string(), refused.to_string());
    let size = value.abs();
    // Below 2e-308 a double holds fewer digits than are asked for, and core tells what the double is between them.
    if value.is_subnormal() {
        return;
    }
    assert_eq!(to_two_digits(value), format!("{value:.1e}"));
    for digits in 1..=13 {
        let theirs = by_core(value, usize::try_from(digits).unwrap());
        assert_eq!(to_digits(value, digits), theirs, "{value:?} {digits}");
    }
    // The same above 1e15.
    let places = if size < 1e9 || !size.is_finite() { 0..7 } else { 0..0 };
    for places in places {
        let theirs = format!("{value:.*}", usize::try_from(places).unwrap());
        assert_eq!(to_places(value, places), theirs, "{value:?} {places}");
    }
}

/// Halves in binary and in decimal, nines that carry, and the ends of what doubles and their ways of writing reach.
const SPECIAL: &str = "0 0.5 1.5 2.5 0.25 0.125 0.375 1.005 2.675 9.995 9.5 99.5 0.995 999.5 0.3 1e22 1e23 1e-7 1e15 1e16 \
    9.999e15 1e-4 9.99e-5 1e-6 9.99e-7 8.5e9 8.5e-9 1.25e-30 6.5e24 1.5e300 2.5e-300 9007199254740993 3.30228424072265625 \
    5e-324 1e-323 2.5e-323 4.5e-310 2.225e-308 2.2250738585072014e-308 1.7976931348623157e308 NaN inf";

#[test]
fn numbers_are_written_as_core_writes_them() {
    let special = SPECIAL.split_whitespace().map(|text| text.parse::<f64>().unwrap());
    special.flat_map(|value| [value, -value]).for_each(alike);
    let mut dice = Dice(0x5eed);
    for _ in 0..20_000 {
        let value = f64::from_bits(dice.bits());
        alike(value);
        // Few digits, the last a five: where the middle between two numbers is met.
        let whole = u32::try_from(dice.below(1 << 20)).unwrap();
        let power = count(dice.below(40)) - 30;
        let few: f64 = format!("{whole}5e{power}").parse().unwrap();
        alike(few);
        // Halves, quarters and so on, exact in binary.
        alike(f64::from(whole) / f64::from(1_u32 << dice.below(20)));
    }
}
