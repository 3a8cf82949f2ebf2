//! The units against their definitions, in exact decimals.
//!
//! Definitions: UCUM, ucum-essence.xml 2.2 of 17 June 2024; where UCUM defines by a foot or an inch, 0.3048 m and
//! 0.0254 m exactly (85 FR 62698, 5 October 2020). NIST Handbook 44 Appendix C has the same for the pound (7000
//! grains), the gallon (231 in³) and the acre (43 560 ft²); NIST SP 811 B.8 marks the imperial gallon exact.
#![expect(clippy::expect_used, reason = "a test may stop at what is not there")]

use std::collections::{BTreeMap, BTreeSet};

use hilum::quantity::{
    Area, Cells, Mass, Measure, Ratio, Seeds, Temperature, TemperatureDifference, Time, Volume, area, cells,
    mass, ratio, seeds, temperature_difference, time, volume,
};
use hilum::text::{Bases, Compound, Measured, Written};
use hilum::unit::{Unit, all, by_number};

/// A decimal number: digits / 10^places.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Exact {
    digits: u128,
    places: u32,
}

const fn exact(digits: u128, places: u32) -> Exact {
    Exact { digits, places }
}
const ONE: Exact = exact(1, 0);

impl Exact {
    const fn times(self, n: u128) -> Self {
        exact(self.digits * n, self.places)
    }
    const fn by(self, other: Self) -> Self {
        exact(self.digits * other.digits, self.places + other.places)
    }
    /// Divided by a number that has no factors but 2 and 5; any other never divides.
    const fn over(self, n: u128) -> Self {
        let mut of = self;
        while !of.digits.is_multiple_of(n) {
            of = exact(of.digits * 10, of.places + 1);
        }
        exact(of.digits / n, of.places)
    }
    /// The double nearest to it: `parse` rounds correctly.
    fn nearest(self) -> f64 {
        format!("{}e-{}", self.digits, self.places).parse().expect("a number")
    }
}

// UCUM, in kg, m, s.
const GRAM: Exact = exact(1, 3);
const GRAIN: Exact = exact(6_479_891, 5).by(exact(1, 6)); // 64.79891 mg
const POUND: Exact = GRAIN.times(7000);
const LITRE: Exact = exact(1, 3); // 1 dm³
const INCH: Exact = exact(254, 4);
const FOOT: Exact = exact(3048, 4);
const CUBIC_INCH: Exact = INCH.by(INCH).by(INCH);
const SQUARE_FOOT: Exact = FOOT.by(FOOT);
const US_GALLON: Exact = CUBIC_INCH.times(231);
const IMPERIAL_GALLON: Exact = LITRE.by(exact(454_609, 5));

/// By symbol; °F is 5/9 K and not here, as no decimal is.
const DEFINITIONS: &[(&str, Exact)] = &[
    ("kg", GRAM.times(1000)),
    ("g", GRAM),
    ("mg", GRAM.over(1000)),
    ("µg", GRAM.over(1_000_000)),
    ("t", GRAM.times(1_000_000)),
    ("lb", POUND),
    ("oz av", POUND.over(16)),
    ("cwt", POUND.times(100)),
    ("s", ONE),
    ("min", ONE.times(60)),
    ("h", ONE.times(60 * 60)),
    ("d", ONE.times(24 * 60 * 60)),
    ("K", ONE),
    ("delta_degC", ONE),
    ("seeds", ONE),
    ("CFU", ONE),
    ("m2", ONE),
    ("ha", ONE.times(100 * 100)),
    ("ft2", SQUARE_FOOT),
    ("ac", SQUARE_FOOT.times(43_560)),
    ("m3", ONE),
    ("L", LITRE),
    ("mL", LITRE.over(1000)),
    ("µL", LITRE.over(1_000_000)),
    ("gal", US_GALLON),
    ("qt", US_GALLON.over(4)),
    ("pt", US_GALLON.over(4).over(2)),
    ("fl oz", US_GALLON.over(4).over(2).over(4).over(4)),
    ("imp gal", IMPERIAL_GALLON),
    ("imp qt", IMPERIAL_GALLON.over(4)),
    ("imp pt", IMPERIAL_GALLON.over(4).over(2)),
    ("imp fl oz", IMPERIAL_GALLON.over(4).over(2).over(4).over(5)),
    ("", ONE),
    ("%", ONE.over(100)),
];

#[test]
fn every_factor_is_the_double_nearest_to_its_definition() {
    let mut defined: BTreeMap<_, _> = DEFINITIONS.iter().copied().collect();
    assert_eq!(defined.len(), DEFINITIONS.len());
    for unit in all().filter(|unit| unit.symbol != "delta_degF") {
        let exact = defined.remove(unit.symbol).expect(unit.symbol);
        assert_eq!(unit.factor.to_bits(), exact.nearest().to_bits(), "{} is {exact:?}", unit.symbol);
    }
    assert_eq!(defined, BTreeMap::new(), "defined, but not in the table");
}

// 9 × the double lies within 9 halves of its last binary digit, 2⁻⁵³, of 5: none is nearer to 5/9.
#[test]
fn a_degree_fahrenheit_is_five_ninths() {
    let unit = all().find(|unit| unit.symbol == "delta_degF").expect("in the table");
    let bits = unit.factor.to_bits();
    assert_eq!(bits >> 52, 1022, "between 1/2 and 1");
    let mantissa = i128::from(bits & ((1 << 52) - 1) | 1 << 52);
    assert!((2 * (9 * mantissa - (5 << 53))).abs() <= 9);
}

// NIST SP 811 B.8, to its seven digits: pound, ounce (avoirdupois), US gallon, quart, pint and fluid ounce,
// imperial fluid ounce; all but pint, US fluid ounce and imperial gallon from memory.
#[test]
fn seven_digits_of_sp_811() {
    for (symbol, printed) in [
        ("lb", "4.535924e-1"),
        ("oz av", "2.834952e-2"),
        ("gal", "3.785412e-3"),
        ("qt", "9.463529e-4"),
        ("pt", "4.731765e-4"),
        ("fl oz", "2.957353e-5"),
        ("imp gal", "4.546090e-3"),
        ("imp fl oz", "2.841306e-5"),
        ("ft2", "9.290304e-2"),
    ] {
        let unit = all().find(|unit| unit.symbol == symbol).expect(symbol);
        assert_eq!(format!("{:.6e}", unit.factor), printed, "{symbol}");
    }
}

/// The numbers are the C ABI's, and never change.
#[test]
fn numbers_are_unique_and_stay() {
    let numbers: BTreeMap<i32, &str> = all().map(|unit| (unit.number, unit.symbol)).collect();
    assert_eq!(numbers.len(), all().count());
    let kept = "10 kg|11 g|12 mg|13 µg|14 t|20 lb|21 oz av|22 cwt|30 s|31 min|32 h|33 d|40 K|41 delta_degC|\
                42 delta_degF|50 seeds|60 CFU|70 m2|71 ha|72 ft2|73 ac|80 m3|81 L|82 mL|83 µL|90 gal|91 qt|92 pt|\
                93 fl oz|94 imp gal|95 imp qt|96 imp pt|97 imp fl oz|100 |101 %";
    for kept in kept.split('|') {
        let (number, symbol) = kept.split_once(' ').expect("number and symbol");
        let number: i32 = number.parse().expect("a number");
        assert_eq!(numbers.get(&number), Some(&symbol));
        assert_eq!(by_number(number).map(|unit| unit.symbol), Some(symbol));
    }
    assert_eq!(by_number(0), None);
    assert_eq!(by_number(-1), None);
}

#[test]
fn symbols_and_codes_are_unique_but_for_the_kelvin() {
    let symbols: BTreeSet<_> = all().map(|unit| unit.symbol).collect();
    assert_eq!(symbols.len(), all().count());
    // UCUM writes a difference of 1 °C as 1 K.
    let codes: BTreeSet<_> = all().filter(|unit| unit.symbol != "delta_degC").map(|unit| unit.ucum).collect();
    assert_eq!(codes.len(), all().count() - 1);
}

macro_rules! typed {
    ($($quantity:ident, $module:ident: $($unit:ident $symbol:literal),+;)+) => {
        /// Every unit: its symbol, and one of it as a typed quantity.
        fn typed() -> Vec<(&'static str, f64, hilum::unit::Powers)> {
            vec![$($(($symbol, $quantity::new::<$module::$unit>(1.0).to_base(), $quantity::POWERS)),+),+]
        }
        /// There and back through every typed unit.
        fn returned(number: f64) -> Vec<(&'static str, f64)> {
            vec![$($(($symbol, $quantity::new::<$module::$unit>(number).get::<$module::$unit>())),+),+]
        }
    };
}
typed! {
    Mass, mass: kilogram "kg", gram "g", milligram "mg", microgram "µg", tonne "t", pound "lb",
        ounce_avoirdupois "oz av", hundredweight "cwt";
    Time, time: second "s", minute "min", hour "h", day "d";
    TemperatureDifference, temperature_difference: kelvin "K", degree_celsius_difference "delta_degC",
        degree_fahrenheit_difference "delta_degF";
    Seeds, seeds: seed "seeds";
    Cells, cells: cell "CFU";
    Area, area: square_meter "m2", hectare "ha", square_foot "ft2", acre "ac";
    Volume, volume: cubic_meter "m3", liter "L", milliliter "mL", microliter "µL", gallon "gal", quart "qt",
        pint "pt", fluid_ounce "fl oz", imperial_gallon "imp gal", imperial_quart "imp qt", imperial_pint "imp pt",
        imperial_fluid_ounce "imp fl oz";
    Ratio, ratio: one "", percent "%";
}

#[test]
fn typed_units_are_those_of_the_table() {
    let typed: BTreeMap<_, _> =
        typed().into_iter().map(|(symbol, one, powers)| (symbol, (one, powers))).collect();
    let table: BTreeMap<_, _> = all().map(|unit| (unit.symbol, (unit.factor, unit.powers))).collect();
    assert_eq!(typed, table);
}

// One multiplication and one division, each rounded once: at most 1 ulp from where it started.
#[test]
fn there_and_back_is_within_an_ulp() {
    for number in [1.0, 2.5, 0.1, 3.25, 140_000.0, 1e-9, 7e12] {
        for (symbol, back) in returned(number) {
            let ulps = back.to_bits().abs_diff(f64::to_bits(number));
            assert!(ulps <= 1, "{number} {symbol} comes back as {back}");
        }
    }
}

#[test]
fn text_reads_every_unit_by_symbol_and_by_code() {
    for unit in all().filter(|unit| !unit.symbol.is_empty()) {
        for spelling in [unit.symbol, unit.ucum] {
            // UCUM's degree is a point of the scale, and its kelvin is the table's first.
            if unit.symbol.starts_with("delta") && spelling == unit.ucum {
                continue;
            }
            let read = Compound::read(spelling)
                .and_then(|unit| Written { number: 3.0, unit }.measured(&Bases::default()));
            let exactly = Measured::Quantity { value: 3.0 * unit.factor, powers: unit.powers };
            assert_eq!(read, Ok(exactly), "{spelling}");
        }
    }
}

macro_rules! names {
    ($($quantity:ident $words:literal;)+) => {
        #[test]
        fn every_quantity_has_its_name() {
            $(assert_eq!(hilum::quantity::$quantity::POWERS.name(), Some($words));)+
            let names = [$($words),+];
            assert_eq!(BTreeSet::from(names).len(), names.len());
            assert!(all().all(|unit| unit.powers.name().is_some_and(|name| names.contains(&name))));
        }
    };
}
names! {
    Mass "mass";
    Time "time";
    TemperatureDifference "temperature difference";
    Seeds "number of seeds";
    Cells "number of cells";
    Area "area";
    Volume "volume";
    Ratio "share, or mass per mass";
    VolumePerArea "volume per area";
    VolumePerMass "volume per mass of seed";
    VolumePerSeed "volume per seed";
    MassPerSeed "mass per seed";
    MassPerArea "mass per area";
    MassPerVolume "mass per volume";
    SeedsPerMass "seeds per mass";
    SeedsPerArea "seeds per area";
    CellsPerVolume "cells per volume";
    CellsPerMass "cells per mass";
    CellsPerArea "cells per area";
    CellsPerSeed "cells per seed";
    MassFlow "mass per time";
    VolumeFlow "volume per time";
}

#[test]
fn powers_without_a_name_have_none() {
    assert_eq!(mass::POWERS.over(area::POWERS).over(time::POWERS).name(), None);
}

// 0 °C, 10 °C and 100 °C are 32, 50 and 212 °F exactly; −40 is −40.
#[test]
fn the_temperature_scales_meet_where_they_should() {
    for (celsius, fahrenheit) in [(0.0, 32.0), (10.0, 50.0), (100.0, 212.0), (-40.0, -40.0), (25.0, 77.0)] {
        assert_eq!(Temperature::from_fahrenheit(fahrenheit), Temperature::from_celsius(celsius));
        assert_eq!(Temperature::from_celsius(celsius).fahrenheit().to_bits(), f64::to_bits(fahrenheit));
    }
}

// 10 °C and 5 K are 15 °C, and that less 10 °C is 5 K; 9 °F are 5 K.
#[test]
fn a_difference_moves_a_point() {
    use temperature_difference::{degree_fahrenheit_difference, kelvin};
    let (ten, five) = (Temperature::from_celsius(10.0), TemperatureDifference::new::<kelvin>(5.0));
    assert_eq!(ten + five, Temperature::from_celsius(15.0));
    assert_eq!(Temperature::from_celsius(15.0) - ten, five);
    assert_eq!(
        Temperature::from_fahrenheit(50.0) + TemperatureDifference::new::<degree_fahrenheit_difference>(9.0),
        ten + five
    );
}

/// Used in the table above as [`Unit`]s, so that a new field is looked at here.
#[test]
fn a_unit_is_what_it_is() {
    let Unit { number, symbol, ucum, powers, factor } = by_number(22).expect("the hundredweight");
    assert_eq!((*number, *symbol, *ucum, *powers), (22, "cwt", "[scwt_av]", mass::POWERS));
    assert_eq!(factor.to_bits(), 45.359_237_f64.to_bits());
}
