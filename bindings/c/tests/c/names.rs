//! Numbers and words that the header takes from the core.

use std::collections::BTreeSet;
use std::ffi::CStr;
use std::fs;

use hilum::{Argument, pack, rate, viability::storage};
use hilum_c::{argument, batch::input, dose, pack as c_pack, status, viability::keeping};

use crate::header;

/// The variants of a public enum, out of the list of the core's API.
fn variants(of: &str) -> BTreeSet<String> {
    let api = fs::read_to_string(header::root().join("../../crates/hilum/api.txt")).unwrap();
    let prefix = format!("hilum::{of}::");
    let names = api.lines().filter_map(|line| line.strip_prefix(&prefix)?.split_once(": "));
    let names = names.filter(|(name, item)| item.starts_with(name)).map(|(name, _)| name.to_owned());
    names.collect()
}

fn camel(name: &str) -> String {
    let words = name.split('_').map(|word| word[..1].to_owned() + &word[1..].to_lowercase());
    words.collect()
}

#[test]
fn every_argument_has_a_number_and_the_words_of_the_core() {
    let numbered: BTreeSet<String> = argument::VALUES.iter().map(|(_, name, _)| camel(name)).collect();
    assert_eq!(numbered, variants("error::Argument"));
    let counts: BTreeSet<String> =
        argument::COUNTS.iter().map(|(_, name, _)| camel(name.strip_prefix("BATCH_").unwrap())).collect();
    assert_eq!(counts, variants("batch::Counted"));
    let fields: BTreeSet<String> =
        argument::FIELDS.iter().map(|(_, name, _)| camel(name.strip_prefix("BATCH_").unwrap())).collect();
    assert_eq!(fields, variants("batch::Field"));
    // The words of one group: those of a batch are of "an order" instead of "order 3".
    let words = |number: i32| argument::VALUES.iter().find(|row| row.0 == number).unwrap().2;
    for (argument, number) in [(Argument::SeedMass, 1), (Argument::Used, 40), (Argument::BusValue, 74)] {
        assert_eq!(argument.to_string(), words(number).to_str().unwrap());
    }
    let source = fs::read_to_string(header::root().join("../../crates/hilum/src/error.rs")).unwrap();
    for (_, _, words) in argument::VALUES {
        assert!(source.contains(&format!("#[error(\"{}\")]", words.to_str().unwrap())), "{words:?}");
    }
}

#[test]
fn every_error_of_the_core_has_a_kind() {
    let source = fs::read_to_string(header::root().join("src/status.rs")).unwrap();
    for (of, called) in
        [("error::Error", "Error"), ("text::TextError", "TextError"), ("batch::Error", "Error")]
    {
        let variants = variants(of);
        assert!(variants.len() >= 5, "{of}");
        for variant in variants {
            let arm =
                [" ", " {", "("].iter().any(|end| source.contains(&format!("{called}::{variant}{end}")));
            assert!(arm, "status.rs has no arm for {of}::{variant}");
        }
    }
}

#[test]
fn numbers_are_given_once_and_names_as_well() {
    let all = || argument::VALUES.iter().chain(argument::COUNTS).chain(argument::FIELDS);
    for rows in [status::KINDS.iter().collect::<Vec<_>>(), all().collect()] {
        let numbers: BTreeSet<i32> = rows.iter().map(|row| row.0).collect();
        let names: BTreeSet<&str> = rows.iter().map(|row| row.1).collect();
        assert_eq!((numbers.len(), names.len()), (rows.len(), rows.len()));
    }
    assert!(status::KINDS.iter().all(|row| (0..1000).contains(&row.0)));
    // 1000 times the number and a kind must fit 32 bits.
    assert!(all().all(|row| (1..1_000_000).contains(&row.0)));
}

fn said(text: *const std::ffi::c_char) -> &'static str {
    // SAFETY: the function gives static text that ends in NUL.
    unsafe { CStr::from_ptr(text) }.to_str().unwrap()
}

#[test]
fn a_message_is_there_for_every_number() {
    assert_eq!(said(status::hilum_status_message(3101)), "must be more than 0");
    assert_eq!(said(status::hilum_status_subject(3101)), "the seed size");
    assert_eq!(said(status::hilum_status_message(0)), "no error");
    assert_eq!(said(status::hilum_status_subject(0)), "");
    for strange in [i32::MIN, -1, 98, 999, 500_101, i32::MAX] {
        assert!(!said(status::hilum_status_message(strange)).is_empty());
        said(status::hilum_status_subject(strange));
    }
    assert_eq!(said(status::hilum_status_message(-101)), "this is no status of this library");
}

#[test]
fn the_version_is_that_of_the_package() {
    assert_eq!(said(status::hilum_version()), env!("CARGO_PKG_VERSION"));
    let part = |text: &str| text.parse::<i32>().unwrap();
    let number = 10_000 * part(env!("CARGO_PKG_VERSION_MAJOR"))
        + 100 * part(env!("CARGO_PKG_VERSION_MINOR"))
        + part(env!("CARGO_PKG_VERSION_PATCH"));
    assert_eq!(status::hilum_version_number(), number);
}

#[test]
fn constants_are_those_of_the_core() {
    use hilum::quantity::Measure;
    let bits = |pairs: &[(f64, f64)]| {
        for (ours, core) in pairs {
            assert_eq!(ours.to_bits(), core.to_bits());
        }
    };
    bits(&[
        (dose::HILUM_WORTH_A_NOTE, rate::WORTH_A_NOTE),
        (dose::HILUM_WORTH_A_WARNING, rate::WORTH_A_WARNING),
        (hilum_c::mix::HILUM_WATER_KG_PER_M3, hilum::mix::WATER.get().to_base()),
        (c_pack::HILUM_COVERAGE_TOLERANCE, pack::COVERAGE_TOLERANCE),
        (c_pack::HILUM_ALMOST_COVERED, pack::ALMOST_COVERED),
        (hilum_c::account::achieved::HILUM_COVERAGE_FACTOR, hilum::account::COVERAGE),
        (keeping::HILUM_FROZEN_CELSIUS, storage::FROZEN.celsius()),
        (keeping::HILUM_STORE_COOL_CELSIUS, storage::STORE_COOL.celsius()),
        (keeping::HILUM_STORE_WARM_CELSIUS, storage::STORE_WARM.celsius()),
        (keeping::HILUM_USUAL_POT_LIFE_S, storage::USUAL_POT_LIFE.to_base()),
        (keeping::HILUM_TYPICAL_ON_SEED_LIFE_S, storage::TYPICAL_ON_SEED_LIFE.to_base()),
        (keeping::HILUM_TYPICAL_MINIMUM_CFU_PER_SEED, storage::TYPICAL_MINIMUM.to_base()),
    ]);
    assert_eq!(c_pack::HILUM_MOST_SIZES, pack::MOST_SIZES);
    assert_eq!(input::HILUM_MOST_ORDERS, hilum::batch::MAX_ORDERS);
    assert_eq!(input::HILUM_MOST_TANKS, hilum::batch::MAX_TANKS);
    assert_eq!(input::HILUM_MOST_SHIFTS, hilum::batch::MAX_SHIFTS);
    assert_eq!(input::HILUM_MOST_MIXES, hilum::batch::MAX_MIXES);
    assert_eq!(c_pack::HILUM_MOST_SIZES, hilum::batch::MAX_SIZES);
}

#[test]
fn every_unit_and_entry_of_the_core_is_in_the_header_by_its_number() {
    let header = header::committed();
    assert!(hilum::unit::all().count() > 30);
    for unit in hilum::unit::all() {
        let line = format!("#define {} {} /*", header::unit_name(unit.symbol), unit.number);
        assert!(header.contains(&line), "{line}");
        assert!(unit.symbol.len() < 32 && unit.ucum.len() < 32);
    }
    let named: BTreeSet<u16> = header::ddis().into_iter().map(|(_, number)| number).collect();
    let known: BTreeSet<u16> = (0..=u16::MAX).filter(|number| hilum::ddi::find(*number).is_some()).collect();
    assert_eq!(named, known);
}
