//! chrono reads the same.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use chrono::{DateTime, Timelike};

use super::*;
use crate::dice::Dice;

/// Whether it is a moment.
fn alike(text: &str) -> bool {
    let (ours, theirs) = (instant(text), DateTime::parse_from_rfc3339(text).ok());
    let whole = |instant: Instant| (instant, *instant.offset(), instant.nanosecond());
    assert_eq!(ours.map(whole), theirs.map(whole), "{text}");
    let midnight = DateTime::parse_from_rfc3339(&format!("{text}T00:00:00Z")).ok();
    assert_eq!(day(text), midnight.map(|midnight| midnight.date_naive()), "{text}");
    ours.is_some()
}

#[test]
fn moments_and_days_are_those_of_chrono() {
    for text in [
        "2027-04-12T07:30:00-05:00",
        "2024-02-29 23:59:60.5z",
        "0000-01-01t00:00:00.123456789123+23:59",
        "9999-12-31T23:59:59.000000001\u{2212}23:59",
        "2027-04-12T07:30:00-00:00",
    ] {
        assert!(alike(text), "{text}");
    }
    for text in [
        "",
        "2027-09-30",
        "2027-02-29T00:00:00Z",
        "2027-13-01T00:00:00Z",
        "2027-04-12T24:00:00Z",
        "2027-04-12T07:60:00Z",
        "2027-04-12T07:30:61Z",
        "2027-04-12T07:30:00.Z",
        "2027-04-12T07:30:00",
        "2027-04-12T07:30Z",
        "2027-04-12T07:30:00+24:00",
        "2027-04-12T07:30:00+05:60",
        "2027-04-12T07:30:00+0500",
        "2027-04-12T07:30:00+05",
        "2027-04-12T07:30:00Z ",
        "+2027-04-12T07:30:00Z",
        "-027-04-12T07:30:00Z",
    ] {
        assert!(!alike(text), "{text}");
    }
}

fn moment(dice: &mut Dice) -> String {
    let (year, month, day) = (dice.below(10_000), dice.below(14), dice.below(33));
    let (hour, minute, second) = (dice.below(25), dice.below(61), dice.below(62));
    let part = dice.one_of(&["", "", ".", ".5", ".000000000", ".1234567899"]);
    let between = dice.one_of(&["T", "t", " "]);
    let sign = dice.one_of(&["+", "-", "\u{2212}"]);
    let offset = format!("{sign}{:02}:{:02}", dice.below(25), dice.below(61));
    let offset = dice.one_of(&["Z", "z", &offset, &offset]);
    format!("{year:04}-{month:02}-{day:02}{between}{hour:02}:{minute:02}:{second:02}{part}{offset}")
}

#[test]
fn moments_that_are_almost_right_are_those_of_chrono() {
    let mut dice = Dice(0xda7e);
    let mut read = 0;
    for _ in 0..20_000 {
        let text = moment(&mut dice);
        read += usize::from(alike(&text));
        let mut chars: Vec<char> = text.chars().collect();
        let at = dice.below(chars.len());
        let put = dice.one_of(&["", "0", "9", ":", "-", ".", "T", " ", "\u{e9}", "+", "00"]);
        chars.splice(at..at + dice.below(2), put.chars());
        alike(&chars.into_iter().collect::<String>());
        alike(&text.chars().take(at).collect::<String>());
    }
    assert!(read > 5_000, "{read}");
}
