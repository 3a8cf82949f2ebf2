//! How units are spelled, and what someone may have meant by another spelling.

use super::{Atom, TextError};
use crate::unit::{self, Unit};

/// Spellings beside a unit's symbol and its UCUM code, by the unit's symbol.
const ALSO: &[(&str, &str)] = &[
    ("seed", "seeds"),
    ("kernel", "seeds"),
    ("kernels", "seeds"),
    ("lbs", "lb"),
    ("ug", "µg"),
    ("μg", "µg"),
    ("uL", "µL"),
    ("μL", "µL"),
    // UCUM writes the litre as l or L.
    ("l", "L"),
    ("ml", "mL"),
    ("ul", "µL"),
];

/// What people write that is not read, and what to write instead.
const MEANT: &[(&str, &str)] = &[
    ("pound", "lb"),
    ("pounds", "lb"),
    ("gram", "g"),
    ("grams", "g"),
    ("gm", "g"),
    ("kilogram", "kg"),
    ("kilograms", "kg"),
    ("kgs", "kg"),
    ("tonne", "t"),
    ("tonnes", "t"),
    ("mcg", "µg"),
    ("ounce", "oz av\" or \"fl oz"),
    ("ounces", "oz av\" or \"fl oz"),
    ("floz", "fl oz"),
    ("fl. oz.", "fl oz"),
    ("fl.oz", "fl oz"),
    ("fluid ounce", "fl oz"),
    ("fluid ounces", "fl oz"),
    ("pint", "pt"),
    ("pints", "pt"),
    ("quart", "qt"),
    ("quarts", "qt"),
    ("gallon", "gal"),
    ("gallons", "gal"),
    ("gals", "gal"),
    ("liter", "L"),
    ("liters", "L"),
    ("litre", "L"),
    ("litres", "L"),
    ("milliliter", "mL"),
    ("milliliters", "mL"),
    ("millilitre", "mL"),
    ("millilitres", "mL"),
    ("cc", "mL"),
    ("hundredweight", "cwt"),
    ("bushel", "bu"),
    ("bushels", "bu"),
    ("bag", "units"),
    ("bags", "units"),
    ("acre", "ac"),
    ("acres", "ac"),
    ("hectare", "ha"),
    ("hectares", "ha"),
    ("hour", "h"),
    ("hours", "h"),
    ("hr", "h"),
    ("hrs", "h"),
    ("day", "d"),
    ("days", "d"),
    ("week", "d"),
    ("weeks", "d"),
    ("minute", "min"),
    ("minutes", "min"),
    ("mins", "min"),
    ("second", "s"),
    ("seconds", "s"),
    ("sec", "s"),
    ("percent", "%"),
    ("C", "degC"),
    ("F", "degF"),
    ("cells", "CFU"),
    ("cell", "CFU"),
];

/// The words whose meaning depends on the seed, and the points of the temperature scales.
const SPECIAL: &[(&str, Atom)] = &[
    ("plant", Atom::Plant),
    ("plants", Atom::Plant),
    ("unit", Atom::SeedUnit),
    ("units", Atom::SeedUnit),
    ("bu", Atom::Bushel),
    ("degC", Atom::Celsius),
    ("°C", Atom::Celsius),
    ("Cel", Atom::Celsius),
    ("degF", Atom::Fahrenheit),
    ("°F", Atom::Fahrenheit),
    ("[degF]", Atom::Fahrenheit),
];

/// The unit of one word.
pub(super) fn atom(word: &str) -> Result<Atom, TextError> {
    if let Some((_, atom)) = SPECIAL.iter().find(|(spelling, _)| *spelling == word) {
        return Ok(*atom);
    }
    let symbol = ALSO.iter().find(|(spelling, _)| *spelling == word).map_or(word, |(_, symbol)| symbol);
    if let Some(unit) = spelled().find(|unit| unit.symbol == symbol || unit.ucum == symbol) {
        return Ok(Atom::Unit(unit));
    }
    Err(match word {
        "" => TextError::Form,
        "oz" | "ozs" | "OZ" | "Oz" => TextError::BareOunce,
        "ton" | "tons" | "Ton" | "Tons" => TextError::Ton,
        _ if word.contains(['(', ')', '.', '*', '^']) && !word.contains(' ') => TextError::Form,
        _ => TextError::UnknownUnit { suggestion: suggestion(word) },
    })
}

/// The units that have a spelling: a pure number has none.
fn spelled() -> impl Iterator<Item = &'static Unit> {
    unit::all().filter(|unit| !unit.symbol.is_empty())
}

fn suggestion(word: &str) -> Option<&'static str> {
    if let Some((_, unit)) = MEANT.iter().find(|(spelling, _)| spelling.eq_ignore_ascii_case(word)) {
        return Some(unit);
    }
    let symbols = || spelled().map(|unit| unit.symbol).chain(SPECIAL.iter().map(|(spelling, _)| *spelling));
    symbols().find(|symbol| symbol.eq_ignore_ascii_case(word)).or_else(|| closest(word, symbols()))
}

/// The candidate that a word most likely stands for: at most a third of its letters differ.
pub fn closest<'a>(word: &str, candidates: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    let allowed = (word.chars().count().saturating_add(1) / 3).clamp(1, 3);
    candidates
        .map(|candidate| (distance(word, candidate), candidate))
        .filter(|&(distance, candidate)| distance <= allowed && distance < candidate.chars().count())
        .min_by_key(|&(distance, _)| distance)
        .map(|(_, candidate)| candidate)
}

/// Letters to insert, delete or replace between two words of up to 31 letters.
fn distance(a: &str, b: &str) -> usize {
    const ROOM: usize = 32;
    if a.chars().count() >= ROOM || b.chars().count() >= ROOM {
        return usize::MAX;
    }
    let mut row = [0_usize; ROOM];
    for (cell, n) in row.iter_mut().zip(0..) {
        *cell = n;
    }
    for (i, x) in a.chars().enumerate() {
        let mut diagonal = i;
        let mut left = i.saturating_add(1);
        if let Some(first) = row.first_mut() {
            *first = left;
        }
        for (cell, y) in row.iter_mut().skip(1).zip(b.chars()) {
            let replaced = diagonal.saturating_add(usize::from(x != y));
            diagonal = *cell;
            left = replaced.min(diagonal.saturating_add(1)).min(left.saturating_add(1));
            *cell = left;
        }
    }
    row.get(b.chars().count()).copied().unwrap_or(usize::MAX)
}
