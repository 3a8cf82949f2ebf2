//! What holds for quantity text whatever is written.

use hilum::quantity::{Mass, Measure, Temperature, VolumePerMass, mass, volume};
use hilum::quantity::{Seeds, Volume, seeds};
use hilum::text::{Bases, Compound, Measured, TextError, Written, closest, read, read_temperature};
use hilum::unit::{Unit, all};
use proptest::prelude::*;
use proptest::sample::select;

fn units() -> Vec<&'static Unit> {
    all().filter(|unit| !unit.symbol.is_empty()).collect()
}
fn unit() -> impl Strategy<Value = &'static Unit> {
    select(units())
}
/// Any double that text can hold.
fn finite() -> impl Strategy<Value = f64> {
    any::<u64>().prop_map(f64::from_bits).prop_filter("finite", |number| number.is_finite())
}

/// A number in every form of JSON.
fn spellings(number: f64) -> Vec<String> {
    let exponent = format!("{number:e}");
    let mut all = vec![exponent.to_uppercase(), exponent.clone()];
    if let Some((mantissa, power)) = exponent.split_once('e').filter(|(_, power)| !power.starts_with('-')) {
        all.push(format!("{mantissa}e+{power}"));
        all.push(format!("{mantissa}E+0{power}"));
    }
    let plain = format!("{number}");
    if plain.len() <= 98 {
        all.push(format!("{plain}{}", if plain.contains('.') { "00" } else { ".0" }));
    }
    if plain.len() <= 100 {
        all.push(plain);
    }
    all
}

/// Its whole digits in groups of three, as `_` or a thin space makes them.
fn grouped(digits: &str, by: &str) -> String {
    let mut groups: Vec<String> = Vec::new();
    let first = digits.len() % 3;
    if first > 0 {
        groups.push(digits[..first].to_owned());
    }
    groups.extend((first..digits.len()).step_by(3).map(|at| digits[at..at + 3].to_owned()));
    groups.join(by)
}

fn bits(text: &str) -> Result<u64, TextError> {
    Written::read(text).map(|written| written.number.to_bits())
}

/// Pieces of which much of what people write is made, and much of what they do not.
fn piece() -> impl Strategy<Value = String> {
    let known = [
        "1",
        "0",
        "5.",
        ".5",
        "-",
        "+",
        "e",
        "E5",
        "e400",
        "_",
        ",",
        " ",
        "\u{2009}",
        "\u{202f}",
        "/",
        "//",
        "(",
        ")",
        ".",
        "100",
        "100.kg",
        "(100.kg)",
        "%",
        "°",
        "°C",
        "oz",
        "oz av",
        "fl oz",
        "ton",
        "unit",
        "units",
        "bu",
        "plants",
        "K",
        "degF",
        "seeds",
        "NaN",
        "inf",
        "-Infinity",
        "1e308",
        "1e-400",
        "µL",
        "\u{3bc}L",
        "\0",
        "\u{feff}",
        "🌱",
        "½",
        "１",
        "٣",
        "999999999999999999999999999999",
        "kg",
        "mL",
        "cwt",
        "lb",
        "CFU",
        "[foz_us]",
        "{seed}",
    ];
    prop_oneof![6 => select(known.to_vec()).prop_map(str::to_owned), 1 => any::<String>()]
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_number_is_read_to_the_bit_in_every_spelling(number in finite(), unit in unit()) {
        for spelling in spellings(number) {
            prop_assert_eq!(bits(&format!("{spelling} {}", unit.symbol)), Ok(number.to_bits()), "{}", spelling);
            prop_assert_eq!(bits(&format!(" {spelling}   {} ", unit.symbol)), Ok(number.to_bits()), "{}", spelling);
        }
    }

    #[test]
    fn grouped_digits_are_the_same_number(whole in 0..=9_007_199_254_740_992_u64, cents in 0_u32..100) {
        let digits = whole.to_string();
        let plain = bits(&format!("{digits}.{cents:02} kg"));
        for by in ["_", "\u{2009}", "\u{202f}"] {
            prop_assert_eq!(bits(&format!("{}.{cents:02} kg", grouped(&digits, by))), plain);
        }
        let with_commas = format!("{} kg", grouped(&digits, ","));
        if with_commas.contains(',') {
            prop_assert_eq!(Written::read(&with_commas), Err(TextError::Comma));
        }
    }

    #[test]
    fn text_has_the_bits_of_the_typed_value(number in finite(), count in 1e-3_f64..1e6, above in unit(), below in unit()) {
        let measured = |text: String| Written::read(&text).unwrap().measured(&Bases::default());
        let alone = Measured::Quantity { value: number * above.factor, powers: above.powers };
        prop_assert_eq!(measured(format!("{number:e} {}", above.symbol)), Ok(alone));
        let over = |count: f64| Measured::Quantity {
            value: (number * above.factor) / (count * below.factor),
            powers: above.powers.over(below.powers),
        };
        let (a, b) = (above.symbol, below.symbol);
        if (number * above.factor).is_finite() {
            prop_assert_eq!(measured(format!("{number:e} {a}/{b}")), Ok(over(1.0)));
            prop_assert_eq!(measured(format!("{number:e} {a} / {count} {b}")), Ok(over(count)));
        }
    }

    #[test]
    fn typed_and_written_label_are_one(number in 1e-6_f64..1e6, count in 1.0_f64..1e6) {
        let typed: VolumePerMass =
            Volume::new::<volume::fluid_ounce>(number) / Mass::new::<mass::hundredweight>(1.0);
        prop_assert_eq!(read::<VolumePerMass>(&format!("{number} fl oz/cwt")).unwrap().to_base().to_bits(),
            typed.to_base().to_bits());
        let typed: hilum::quantity::VolumePerSeed =
            Volume::new::<volume::milliliter>(number) / Seeds::new::<seeds::seed>(count);
        prop_assert_eq!(read(&format!("{number} mL/{count} seeds")), Ok(typed));
        // UCUM has whole numbers only.
        let whole = count.trunc();
        let typed: hilum::quantity::VolumePerSeed =
            Volume::new::<volume::milliliter>(number) / Seeds::new::<seeds::seed>(whole);
        prop_assert_eq!(read(&format!("{number} mL/({whole}.{{seed}})")), Ok(typed));
    }

    #[test]
    fn a_value_comes_back_in_its_unit(number in 1e-6_f64..1e6, count in 1.0_f64..1e6, above in unit(), below in unit()) {
        let text = format!("{}/{count} {}", above.symbol, below.symbol);
        let unit = Compound::read(&text).unwrap();
        let Ok(Measured::Quantity { value, .. }) = (Written { number, unit }).measured(&Bases::default()) else {
            return Err(TestCaseError::fail(text));
        };
        let back = unit.count_in(value, &Bases::default()).unwrap();
        prop_assert!((back - number).abs() <= 4.0 * f64::EPSILON * number, "{number} {text} comes back as {back}");
    }

    #[test]
    fn another_dimension_is_refused(number in 1.0_f64..1e6, above in unit(), below in unit()) {
        let text = format!("{number} {}/{}", above.symbol, below.symbol);
        let powers = above.powers.over(below.powers);
        match read::<VolumePerMass>(&text) {
            Ok(_) => prop_assert_eq!(powers, VolumePerMass::POWERS),
            Err(error) => prop_assert_eq!(error, TextError::WrongDimension { given: powers, wanted: VolumePerMass::POWERS }),
        }
    }

    #[test]
    fn temperatures_are_points(number in -459.0_f64..1e6) {
        prop_assert_eq!(read_temperature(&format!("{number} degF")), Ok(Temperature::from_fahrenheit(number)));
        prop_assert_eq!(read_temperature(&format!("{number}°C")), Ok(Temperature::from_celsius(number)));
        prop_assert_eq!(read::<Mass>(&format!("{number} degC")), Err(TextError::TemperaturePoint));
    }

    #[test]
    fn nothing_that_is_written_makes_it_panic(pieces in prop::collection::vec(piece(), 0..8)) {
        let text = pieces.concat();
        let _ = Compound::read(&text);
        let _ = read_temperature(&text);
        let mass = read::<Mass>(&text);
        match Written::read(&text) {
            Ok(written) => {
                prop_assert!(written.number.is_finite(), "{}", text);
                prop_assert!(written.unit.below.is_none_or(|(count, _)| count > 0.0 && count.is_finite()));
            }
            Err(error) => {
                prop_assert_eq!(mass, Err(error));
                let told = error.to_string();
                prop_assert!(told.starts_with("is ") || told.starts_with("has ") || told.starts_with("does ")
                    || told.starts_with("needs "), "{}", told);
                prop_assert!(!told.contains("Error") && !told.contains("::"), "{}", told);
            }
        }
    }

    #[test]
    fn what_may_have_been_meant_is_one_of_what_there_is(word in "\\PC{0,40}", at in 0_usize..33) {
        let symbols = || units().into_iter().map(|unit| unit.symbol);
        prop_assert!(closest(&word, symbols()).is_none_or(|meant| symbols().any(|symbol| symbol == meant)));
        // A word that is there means itself.
        let symbol = symbols().nth(at).unwrap();
        prop_assert!(symbol.chars().count() == 1 || closest(symbol, symbols()) == Some(symbol), "{}", symbol);
    }
}
