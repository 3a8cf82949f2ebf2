//! All texts of errors: every variant made, and every text that hilum-job may say about a document, read out of its sources.
//! Each says what, where, and what to do, and none leaks a word of Rust or of a library.
#![expect(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use hilum::batch::{self, Counted, Field};
use hilum::text::TextError;
use hilum::unit::Powers;
use hilum::{Argument, Error};

/// Words of programs. A name in backticks would be one, too.
const JARGON: &[&str] = &[
    "serde",
    "option",
    "some(",
    "unwrap",
    "struct",
    "enum",
    "variant",
    "panic",
    "f64",
    "u32",
    "u64",
    "i32",
    "usize",
    "string",
    "vec<",
    "deserialize",
    "utf-8",
    "eof",
    "token",
    "`",
    "::",
    "expected",
    "invalid type",
    "null",
    "boolean",
    "integer",
    "parse",
    "iterator",
];

/// What tells a person what to do, or what would be right.
const REMEDIES: &[&str] = &[
    "must",
    "needed",
    "needs",
    "write",
    "give",
    "say",
    "state the",
    "did you mean",
    "at most",
    "at least",
    "check",
    "look at",
    "split",
    "leave",
    "use",
    "take it away",
    "exchange",
    "keep",
    "known here",
    "list",
    "order the",
    "catch at",
    "report it",
];

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

fn is_plain(text: &str) {
    // Names and numbers that a user gave may be anything.
    let own: String = text.split('"').step_by(2).collect::<Vec<_>>().join(" ").to_lowercase();
    let leaked: Vec<_> = JARGON.iter().filter(|word| own.contains(**word)).collect();
    assert!(leaked.is_empty(), "{leaked:?} in {text:?}");
    assert!(!text.contains("  ") && !text.trim().is_empty() && text.chars().count() < 400, "{text:?}");
}

fn says(text: &str) -> bool {
    let low = text.to_lowercase();
    REMEDIES.iter().any(|remedy| low.contains(remedy))
}

fn says_what_to_do(text: &str) {
    assert!(says(text), "nothing to do in {text:?}");
}

/// The variants of an enum, in its own source.
fn variants(file: &str, name: &str) -> BTreeSet<String> {
    let source = fs::read_to_string(root().join(file)).unwrap();
    let body = source.split_once(&format!("pub enum {name} {{")).unwrap().1.split_once("\n}").unwrap().0;
    let is_variant =
        |line: &&str| line.starts_with("    ") && line.as_bytes().get(4).is_some_and(u8::is_ascii_uppercase);
    body.lines()
        .filter(is_variant)
        .map(|line| line.trim().chars().take_while(char::is_ascii_alphanumeric).collect())
        .collect()
}

fn name(of: impl std::fmt::Debug) -> String {
    format!("{of:?}").chars().take_while(char::is_ascii_alphanumeric).collect()
}

fn all_there(made: impl Iterator<Item = String>, file: &str, of: &str) {
    assert_eq!(made.collect::<BTreeSet<_>>(), variants(file, of), "left: made here; right: {file}");
}

fn errors() -> Vec<Error> {
    let (argument, value) = (Argument::SeedSize, 1.5e300);
    vec![
        Error::NotFinite { argument, value: f64::NAN },
        Error::NotPositive { argument, value: -3.0 },
        Error::Negative { argument, value: -5e-324 },
        Error::OutOfRange { argument, value },
        Error::NotAShare { argument, value },
        Error::BelowAbsoluteZero { argument, value: -300.0 },
        Error::MoreThan { argument, value, most: 1e-25 },
        Error::TooFew { argument, given: 1, least: 2 },
        Error::AllEqual { argument, value },
        Error::NotFalling { argument, value: 1e-9 },
        Error::TooLittle { argument, value, least: 2.0 },
        Error::OneSetting { value: 30.0 },
        Error::NotRising { value: -1e-9 },
        Error::SizesOfPack { value: 9 },
        Error::TooManySets { value },
        Error::NotForTheBus { ddi: 1, value, most: 2_147_483_647 },
        Error::Needed { argument },
    ]
}

#[test]
fn the_errors_of_numbers() {
    all_there(errors().into_iter().map(name), "crates/hilum/src/error.rs", "Error");
    for error in errors() {
        let text = error.to_string();
        is_plain(&text);
        says_what_to_do(&text);
        let named = text.contains("the seed size")
            || ["pump", "pack", "sets", "DDI"].iter().any(|thing| text.contains(thing));
        assert!(named, "{text} does not say where");
        assert!(text.len() < 160, "{text}");
    }
}

/// As a person writes it where that is short, else with an exponent.
#[test]
fn numbers_are_shown_as_they_are_read() {
    let argument = Argument::SeedSize;
    for (value, shown) in [
        (0.0, "0"),
        (-3.0, "-3"),
        (-1e-6, "-0.000001"),
        (-9e-7, "-9e-7"),
        (-1e15, "-1e15"),
        (-9e14, "-900000000000000"),
    ] {
        let text = Error::NotPositive { argument, value }.to_string();
        assert!(text.split([',', ';', ' ']).rev().any(|word| word == shown), "{shown}: {text}");
        assert!(!text.contains("e0"), "{text}");
    }
}

/// Every argument, as its own source words it.
#[test]
fn the_names_of_numbers() {
    let source = fs::read_to_string(root().join("crates/hilum/src/error.rs")).unwrap();
    let (_, list) = source.split_once("pub enum Argument {").unwrap();
    let words: Vec<&str> = list
        .split_once("\n}")
        .unwrap()
        .0
        .lines()
        .filter_map(|line| line.trim().strip_prefix("#[error(\"")?.strip_suffix("\")]"))
        .collect();
    assert_eq!(words.len(), variants("crates/hilum/src/error.rs", "Argument").len());
    for words in words {
        is_plain(words);
        assert!(
            words.starts_with("the ") || words.starts_with("a ") || words.starts_with("what "),
            "{words}"
        );
    }
}

fn text_errors() -> Vec<TextError> {
    let powers = |length, mass| Powers { length, mass, time: 0, temperature: 0, seeds: 0, cells: 0 };
    vec![
        TextError::Empty,
        TextError::NotANumber,
        TextError::NumberForm,
        TextError::Comma,
        TextError::SpaceInNumber,
        TextError::NoSpace,
        TextError::NumberTooLong,
        TextError::TooLarge,
        TextError::NotFinite,
        TextError::NoUnit,
        TextError::BareOunce,
        TextError::Ton,
        TextError::UnknownUnit { suggestion: None },
        TextError::UnknownUnit { suggestion: Some("lb") },
        TextError::TwoLines,
        TextError::BelowTheLine,
        TextError::Form,
        TextError::UnitNotGiven,
        TextError::BushelNotGiven,
        TextError::TemperaturePoint,
        TextError::NotATemperature,
        TextError::WrongDimension { given: powers(3, 0), wanted: powers(3, -1) },
        TextError::WrongDimension { given: powers(5, 2), wanted: powers(0, 1) },
    ]
}

#[test]
fn the_errors_of_texts() {
    all_there(text_errors().into_iter().map(name), "crates/hilum/src/text/error.rs", "TextError");
    for error in text_errors() {
        let text = error.to_string();
        is_plain(&text);
        says_what_to_do(&text);
        // It goes on from the place and what stands there.
        assert!(["is ", "has ", "does ", "needs "].iter().any(|begins| text.starts_with(begins)), "{text}");
    }
}

#[test]
fn the_errors_of_batches() {
    let counted = [
        Counted::Orders,
        Counted::Tanks,
        Counted::Shifts,
        Counted::SetSizes,
        Counted::Mixes,
        Counted::Portions,
        Counted::Sets,
    ];
    let fields = [
        Field::Mass,
        Field::Speed,
        Field::Changeover,
        Field::PerMass,
        Field::Living,
        Field::Capacity,
        Field::HoldUp,
        Field::Mixing,
        Field::PotLife,
        Field::Adds,
        Field::Rank,
        Field::Shift,
    ];
    let file = "crates/hilum/src/batch/error.rs";
    all_there(counted.into_iter().map(name), file, "Counted");
    all_there(fields.into_iter().map(name), file, "Field");
    let many = counted.into_iter().map(|counted| batch::Error::TooMany { counted, limit: 20 });
    let values = fields.into_iter().map(|field| batch::Error::Value { field, index: 2, value: -1.0 });
    let others = [
        batch::Error::Needs { needs: 3, expected: 4 },
        batch::Error::TankTooSmall { tank: 1 },
        batch::Error::Memory { given: 3, needed: 70 },
    ];
    let all: Vec<batch::Error> = many.chain(values).chain(others).collect();
    all_there(all.iter().map(name), file, "Error");
    for error in all {
        is_plain(&error.to_string());
        says_what_to_do(&error.to_string());
    }
}

/// Texts in quotes of a source, without its tests and its comments.
fn texts(source: &str) -> Vec<String> {
    let code = source.split("#[cfg(test)]").next().unwrap();
    let code: String =
        code.lines().filter(|line| !line.trim_start().starts_with("//")).collect::<Vec<_>>().join("\n");
    let mut texts = Vec::new();
    let mut rest = code.as_str();
    while let Some((_, after)) = rest.split_once('"') {
        let mut end = None;
        let mut escaped = false;
        for (at, c) in after.char_indices() {
            match c {
                '"' if !escaped => {
                    end = Some(at);
                    break;
                }
                _ => escaped = c == '\\' && !escaped,
            }
        }
        let end = end.unwrap();
        // A line that ends in a backslash goes on at the next one's first letter.
        let mut parts = after[..end].split("\\\n");
        let first = parts.next().unwrap().to_owned();
        let whole = parts.fold(first, |whole, part| whole + part.trim_start());
        texts.push(whole.replace("\\\"", "\"").replace("\\\\", "\\"));
        rest = &after[end + 1..];
    }
    texts
}

fn sources(folder: &Path, all: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() { sources(&path, all) } else { all.push(path) }
    }
}

/// How a text begins that is put behind a place: what is wrong there.
const BEGINS: &[&str] = &[
    "is ", "has ", "must ", "does ", "needs ", "stands ", "says ", "gives ", "wants ", "would ", "names ",
    "cannot ", "counts ", "belongs ", "make ",
];

/// Another text follows, which says it.
const GOES_ON: &[&str] = &["{other}", "{error}", "{because}"];

#[test]
fn every_problem_of_a_document() {
    let mut files = Vec::new();
    sources(&root().join("crates/hilum-job/src"), &mut files);
    let mut problems = BTreeSet::new();
    for file in files {
        let texts = texts(&fs::read_to_string(file).unwrap());
        problems.extend(
            texts
                .into_iter()
                .filter(|text| BEGINS.iter().any(|begins| text.starts_with(begins)) && text.len() > 9),
        );
    }
    assert!(problems.len() > 60, "{}", problems.len());
    let silent: Vec<String> = problems
        .into_iter()
        // What stands in braces is put in when it is told.
        .inspect(|text| is_plain(text))
        .filter(|text| !GOES_ON.iter().any(|end| text.ends_with(end)))
        .filter(|text| !says(text))
        .collect();
    assert_eq!(silent, Vec::<String>::new(), "nothing to do in these");
}

#[test]
fn what_is_no_json_is_told_in_words() {
    for (text, words) in [
        ("", "ends too early"),
        ("{", "ends too early"),
        ("{\"a\"", "ends too early"),
        ("{\"a\" 1}", "a colon is missing"),
        ("[1 2]", "a comma or a closing bracket"),
        ("{\"a\": 1 \"b\": 2}", "a comma or a closing bracket"),
        ("{\"a\": }", "a value is missing"),
        ("{\"a\": nul}", "words need quotes"),
        ("{a: 1}", "a name needs quotes"),
        ("{1: 1}", "a name needs quotes"),
        ("[1,]", "a comma is too many"),
        ("{\"a\": 1,}", "a comma is too many"),
        ("{} {}", "behind the end"),
        ("{\"a\": \"\n\"}", "line break"),
        ("{\"a\": \"\\q\"}", "backslash"),
        ("{\"a\": 01}", "a number is written"),
        ("{\"a\": 1e999}", "too large"),
        ("{\"a\": \"\\uD800\"}", "write both halves"),
        ("{\"a\": \"\\uZZZZ\"}", "backslash"),
        (&"[".repeat(40), "32 levels"),
    ] {
        let told = hilum_job::Job::from_json(text).unwrap_err().to_string();
        assert!(told.contains(words), "{text}: {told}");
        let (said, place) = told.split_once(" (line ").unwrap();
        is_plain(said);
        assert!(place.contains(", column "), "{told}");
    }
}

/// What findings are made of; tests/findings raises each and looks for its remedy.
#[test]
fn every_text_of_a_finding() {
    let mut files = vec![root().join("crates/hilum-job/src/account/finding.rs")];
    sources(&root().join("crates/hilum-job/src/finding"), &mut files);
    let all = files.iter().flat_map(|file| texts(&fs::read_to_string(file).unwrap()));
    let sentences: BTreeSet<String> = all.filter(|text| text.len() > 40 && text.contains(' ')).collect();
    assert!(sentences.len() > 40, "{}", sentences.len());
    for text in sentences {
        is_plain(&text);
    }
}
