//! How units are spelled, and what someone may have meant by another spelling.

use super::{Atom, TextError};
use crate::quantity::TABLE;
use crate::unit::Unit;

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
    for (spelling, atom) in SPECIAL {
        if *spelling == word {
            return Ok(*atom);
        }
    }
    let mut symbol = word;
    for (spelling, meant) in ALSO {
        if *spelling == word {
            symbol = meant;
        }
    }
    match spelled(|unit| unit.symbol == symbol || unit.ucum == symbol) {
        Some(unit) => Ok(Atom::Unit(unit)),
        None => Err(not_a_unit(word)),
    }
}

fn not_a_unit(word: &str) -> TextError {
    let letters = word.as_bytes();
    match word {
        "" => TextError::Form,
        "oz" | "ozs" | "OZ" | "Oz" => TextError::BareOunce,
        "ton" | "tons" | "Ton" | "Tons" => TextError::Ton,
        _ if letters.iter().any(|c| b"().*^".contains(c)) && !letters.contains(&b' ') => TextError::Form,
        _ => TextError::UnknownUnit { suggestion: suggestion(word) },
    }
}

/// The first unit that has a spelling, which a pure number has not, and is the one wanted.
fn spelled(mut is_wanted: impl FnMut(&'static Unit) -> bool) -> Option<&'static Unit> {
    for units in TABLE {
        for unit in *units {
            if !unit.symbol.is_empty() && is_wanted(unit) {
                return Some(unit);
            }
        }
    }
    None
}

fn suggestion(word: &str) -> Option<&'static str> {
    for (spelling, unit) in MEANT {
        if spelling.eq_ignore_ascii_case(word) {
            return Some(unit);
        }
    }
    let mut nearest = Nearest::to(word);
    if let Some(unit) = spelled(|unit| nearest.is_same(unit.symbol)) {
        return Some(unit.symbol);
    }
    for (spelling, _) in SPECIAL {
        if nearest.is_same(spelling) {
            return Some(spelling);
        }
    }
    nearest.found
}

/// The candidate that a word most likely stands for: at most a third of its letters differ.
pub fn closest<'a>(word: &str, candidates: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    let mut nearest = Nearest::to(word);
    for candidate in candidates {
        nearest.look_at(candidate);
    }
    nearest.found
}

/// The nearest word so far.
struct Nearest<'w, 'a> {
    word: &'w str,
    /// One more than may differ.
    distance: usize,
    found: Option<&'a str>,
}

impl<'w, 'a> Nearest<'w, 'a> {
    fn to(word: &'w str) -> Self {
        let allowed = (letters(word).saturating_add(1) / 3).clamp(1, 3);
        Self { word, distance: allowed.saturating_add(1), found: None }
    }

    fn look_at(&mut self, candidate: &'a str) {
        let distance = distance(self.word, candidate);
        if distance < self.distance && distance < letters(candidate) {
            self.distance = distance;
            self.found = Some(candidate);
        }
    }

    /// Whether a candidate differs in no more than the case of its letters.
    fn is_same(&mut self, candidate: &'a str) -> bool {
        self.look_at(candidate);
        candidate.eq_ignore_ascii_case(self.word)
    }
}

/// How many there are; in UTF-8 each has one byte that does not go on with another.
fn letters(word: &str) -> usize {
    word.bytes().filter(|byte| byte & 0xC0 != 0x80).count()
}

/// Letters to insert, delete or replace between two words of up to 31 letters.
fn distance(a: &str, b: &str) -> usize {
    const ROOM: usize = 32;
    let end = letters(b);
    if letters(a) >= ROOM || end >= ROOM {
        return usize::MAX;
    }
    let mut row: [usize; ROOM] = core::array::from_fn(|n| n);
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
    row.get(end).copied().unwrap_or(usize::MAX)
}
