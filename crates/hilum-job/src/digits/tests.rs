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

/// Core takes the larger of two shortest texts as near as one another, zmij the even one.
fn same_double(ours: &str, theirs: &str) {
    assert!(
        ours == theirs || (ours.len() == theirs.len() && ours.parse::<f64>() == theirs.parse()),
        "{ours} {theirs}"
    );
}

/// Core rounds what the double is, which matters where its shortest digits end in a five that is cut off: that five goes up here.
fn same_rounded(value: f64, ours: &str, theirs: &str) {
    let read = |text: &str| text.parse::<f64>().unwrap().abs();
    let shortest = value.abs().to_string();
    let is_up = shortest.trim_end_matches('0').ends_with('5')
        && read(ours) >= value.abs()
        && read(theirs) <= value.abs();
    // As far above it as core's text is below, to what reading them back takes.
    let as_far =
        (read(ours) - value.abs() - (value.abs() - read(theirs))).abs() <= 4.0 * f64::EPSILON * value.abs();
    assert!(ours == theirs || (is_up && as_far), "{value:?}: {ours} {theirs}");
}

fn alike(value: f64) {
    same_double(&plain(value), &format!("{value}"));
    same_double(&exact(value), &format!("{value:?}"));
    let refused = hilum::Error::NotRising { value };
    let [ours, theirs] = [Told(refused).to_string(), refused.to_string()];
    assert!(ours == theirs || ours.len() == theirs.len(), "{ours} {theirs}");
    let size = value.abs();
    // A double below 2e-308 holds fewer digits than are asked for, and core tells what it is between them.
    if value.is_subnormal() {
        return;
    }
    same_rounded(value, &to_two_digits(value), &format!("{value:.1e}"));
    for digits in 1..=13 {
        same_rounded(value, &to_digits(value, digits), &by_core(value, usize::try_from(digits).unwrap()));
    }
    let places = if size < 1e9 || !size.is_finite() { 0..7 } else { 0..0 };
    for places in places {
        same_rounded(
            value,
            &to_places(value, places),
            &format!("{value:.*}", usize::try_from(places).unwrap()),
        );
    }
}

#[test]
fn a_five_goes_up() {
    let cases = [
        ("2.5", 0, "3"),
        ("0.125", 2, "0.13"),
        ("1.005", 2, "1.01"),
        ("-9.995", 2, "-10.00"),
        ("0.05", 0, "0"),
        ("0.5", 0, "1"),
    ];
    for (value, places, rounded) in cases {
        assert_eq!(to_places(value.parse().unwrap(), places), rounded);
    }
}

/// Halves in binary and in decimal, nines that carry, and the ends of what doubles and their ways of writing reach.
const SPECIAL: &str = "0 0.5 1.5 2.5 0.25 0.125 0.375 1.005 2.675 9.995 9.5 99.5 0.995 999.5 0.3 1e22 1e23 1e-7 1e15 1e16 \
    9.999e15 1e-4 9.99e-5 1e-6 9.99e-7 8.5e9 8.5e-9 1.25e-30 6.5e24 1.5e300 2.5e-300 9007199254740993 3.30228424072265625 \
    5e-324 1e-323 2.5e-323 4.5e-310 2.225e-308 2.2250738585072014e-308 1.7976931348623157e308 NaN inf";

#[test]
fn numbers_are_written_as_core_writes_them_but_for_fives() {
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
