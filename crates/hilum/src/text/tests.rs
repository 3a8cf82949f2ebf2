use super::*;
use crate::quantity::{Mass, Seeds, VolumePerMass, mass, seeds, volume};

fn error(text: &str) -> TextError {
    Written::read(text).expect_err(text)
}

#[test]
fn numbers_are_json_with_grouped_digits() {
    for (text, number) in [
        ("5 kg", 5.0),
        ("-5.25e-3 kg", -5.25e-3),
        ("1E+2 kg", 100.0),
        ("140_000 kg", 140_000.0),
        ("140\u{2009}000 kg", 140_000.0),
        ("0.5 kg", 0.5),
    ] {
        assert_eq!(Written::read(text).map(|w| w.number), Ok(number), "{text}");
    }
    for text in
        [".5 kg", ".5e3 kg", "05e3 kg", "5. kg", "05 kg", "+5 kg", "1_ kg", "1__0 kg", "_1 kg", "1.2.3 kg"]
    {
        assert_eq!(error(text), TextError::NumberForm, "{text}");
    }
    assert_eq!(error("1,000 lb"), TextError::Comma);
    assert_eq!(error("140 000 seeds"), TextError::SpaceInNumber);
    assert_eq!(error("140M seeds"), TextError::NoSpace);
    // An `e` without an exponent and a sign within are no part of the number.
    for text in ["5kg", "5eggs", "5e-kg", "5-6 kg"] {
        assert_eq!(error(text), TextError::NoSpace, "{text}");
    }
    assert_eq!(error("e5 kg"), TextError::NotANumber);
    assert_eq!(error("1e400 kg"), TextError::TooLarge);
    for text in ["NaN kg", "inf kg", "-Infinity kg"] {
        assert_eq!(error(text), TextError::NotFinite, "{text}");
    }
    assert_eq!(error(""), TextError::Empty);
    assert_eq!(error("kg"), TextError::NotANumber);
    assert_eq!(error("5"), TextError::NoUnit);
    assert_eq!(error(&"9".repeat(101)), TextError::NumberTooLong);
}

#[test]
fn every_spelling_of_the_contract_is_read() {
    let spellings = "kg g mg µg μg ug t lb cwt L mL µL μL uL m3 pt qt gal seed seeds kernel kernels plants unit units bu \
                     m2 ha ac ft2 s min h d degC degF °C °F K delta_degC delta_degF CFU %";
    for unit in
        spellings.split_whitespace().chain(["oz av", "fl oz", "imp fl oz", "imp pt", "imp qt", "imp gal"])
    {
        assert!(Compound::read(unit).is_ok(), "{unit}");
    }
}

#[test]
fn every_unit_of_the_table_is_read_by_symbol_and_by_ucum() {
    for unit in crate::unit::all().filter(|unit| !unit.symbol.is_empty()) {
        assert_eq!(words::atom(unit.symbol), Ok(Atom::Unit(unit)));
        // UCUM writes differences in the unit of the scale: only kelvin is one there.
        if !unit.symbol.starts_with("delta") {
            assert_eq!(words::atom(unit.ucum), Ok(Atom::Unit(unit)));
        }
    }
}

#[test]
fn space_is_optional_before_percent_and_degree_only() {
    assert_eq!(Written::read("92%"), Written::read("92 %"));
    assert_eq!(read_temperature("50°F"), Ok(Temperature::from_celsius(10.0)));
    assert_eq!(read_temperature("50 [degF]"), Ok(Temperature::from_celsius(10.0)));
    assert_eq!(read_temperature("10 K"), Err(TextError::NotATemperature));
}

#[test]
fn text_and_typed_values_have_the_same_bits() {
    let typed: VolumePerMass = Volume::new::<volume::milliliter>(325.0) / Mass::new::<mass::kilogram>(100.0);
    assert_eq!(read("325 mL/100 kg"), Ok(typed));
    assert_eq!(read("325 mL/(100.kg)"), Ok(typed));
    let typed: VolumePerMass =
        Volume::new::<volume::fluid_ounce>(2.5) / Mass::new::<mass::hundredweight>(1.0);
    assert_eq!(read("2.5 fl oz/cwt"), Ok(typed));
    let typed: crate::quantity::VolumePerSeed =
        Volume::new::<volume::fluid_ounce>(1.1) / Seeds::new::<seeds::seed>(140_000.0);
    assert_eq!(read("1.1 fl oz/140000 seeds"), Ok(typed));
}
use crate::quantity::Volume;

#[test]
fn what_is_wrong_is_told_with_a_remedy() {
    assert_eq!(error("4 oz/cwt"), TextError::BareOunce);
    assert_eq!(error("4 ton"), TextError::Ton);
    assert_eq!(error("4 floz/cwt"), TextError::UnknownUnit { suggestion: Some("fl oz") });
    assert_eq!(error("4 ML"), TextError::UnknownUnit { suggestion: Some("mL") });
    assert_eq!(error("4 sedes"), TextError::UnknownUnit { suggestion: Some("seeds") });
    assert_eq!(error("4 parsec"), TextError::UnknownUnit { suggestion: None });
    assert_eq!(error("4 mL/kg/d"), TextError::TwoLines);
    assert_eq!(error("4 mL/0 kg"), TextError::BelowTheLine);
    assert_eq!(error("4 mL/100"), TextError::NoUnit);
    assert_eq!(error("4 mL/100kg"), TextError::NoSpace);
    assert_eq!(error("4 m^2"), TextError::Form);
    assert_eq!(error("4 fl. oz"), TextError::UnknownUnit { suggestion: Some("fl oz") });
    assert_eq!(error("4 mL/"), TextError::Form);
    assert_eq!(error("4 mL/(100 kg)"), TextError::Form);
    let wrong = read::<Mass>("3 fl oz/unit");
    assert_eq!(wrong, Err(TextError::UnitNotGiven));
    let wrong = read::<Mass>("3 fl oz/seed").expect_err("a volume per seed is no mass");
    assert!(matches!(wrong, TextError::WrongDimension { .. }));
}

// By hand: a third of four letters, rounded, is one; of equally near words the first stands.
#[test]
fn a_word_is_suggested_when_a_third_of_its_letters_differ() {
    let among = |word, candidates: &[&'static str]| closest(word, candidates.iter().copied());
    assert_eq!(among("tark", &["tank", "tack"]), Some("tank"));
    assert_eq!(among("tyxk", &["tank"]), None);
    assert_eq!(among("temprature", &["temperature"]), Some("temperature"));
}

#[test]
fn units_and_bushels_are_what_the_bases_say() {
    let bases = Bases {
        unit: Some(SeedUnit::Count(crate::seed::UnitOfSeeds(140_000.0))),
        bushel: Some(Bushel(27.215_542_2)),
    };
    let written = Written::read("640 units").expect("read");
    assert_eq!(
        written.measured(&bases),
        Ok(Measured::Quantity { value: 640.0 * 140_000.0, powers: seeds::POWERS })
    );
    let written = Written::read("500 bu").expect("read");
    assert_eq!(
        written.measured(&bases),
        Ok(Measured::Quantity { value: 500.0 * 27.215_542_2, powers: mass::POWERS })
    );
    assert_eq!(written.measured(&Bases::default()), Err(TextError::BushelNotGiven));
}

#[test]
fn decimals_may_be_read_by_the_caller() {
    // Only what has the form of a number reaches the caller's reader, without what groups its digits.
    let read = |digits: &str| (digits == "140000").then_some(7.0);
    assert_eq!(Written::read_with("140_000 seeds", read).map(|written| written.number), Ok(7.0));
    assert_eq!(
        Compound::read_with("mL/140000 seeds", read).map(|unit| unit.below.map(|(n, _)| n)),
        Ok(Some(7.0))
    );
    assert_eq!(Written::read_with("5 kg", read), Err(TextError::NumberForm));
    assert_eq!(Written::read_with("1,000 kg", read), Err(TextError::Comma));
}
