//! What is wrong with a job is told: where, with the value, and what would be right.
#![expect(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test stops at the first surprise"
)]

use hilum_job::{Job, Problems, limits, plan};
use serde_json::{Value, json};

/// A job that uses most of the contract and has nothing wrong with it.
fn sound() -> Value {
    serde_json::from_str(include_str!("documents/sound.json")).unwrap()
}

fn planned(text: &str) -> Result<(), Problems> {
    Job::from_json(text).and_then(|job| plan(&job)).map(|_| ())
}

/// The first problem of a text, as a person sees it.
fn told(text: &str) -> String {
    planned(text).expect_err("should be refused").to_string()
}

/// The sound job with one place changed; `null` takes it away, a new place is added.
fn edited(pointer: &str, value: Value) -> String {
    let mut job = sound();
    let (parent, last) = pointer.rsplit_once('/').unwrap();
    match job.pointer_mut(parent).unwrap() {
        Value::Object(fields) => drop(fields.insert(last.into(), value)),
        Value::Array(items) => items[last.parse::<usize>().unwrap()] = value,
        other => panic!("{pointer}: {other}"),
    }
    job.to_string()
}

#[test]
fn the_sound_job_is_sound() {
    assert_eq!(planned(&sound().to_string()), Ok(()));
}

/// A place, what is written there, and words that the message must hold; it must begin with the place.
#[rustfmt::skip]
const EDITS: &[(&str, &str, &str)] = &[
    // Numbers and units.
    ("/treatments/0/rate", r#""2.4 oz/cwt""#, "\"oz av\" (weight) or \"fl oz\""),
    ("/orders/1/amount", r#""9,000 lb""#, "comma"),
    ("/orders/1/amount", r#""9 000 lb""#, "140_000"),
    ("/orders/1/amount", r#""5 ton""#, "2000 lb"),
    ("/orders/1/amount", r#""9000""#, "has no unit"),
    ("/orders/1/amount", r#""9000lb""#, "space"),
    ("/orders/1/amount", r#""9000 pounds""#, "did you mean \"lb\"?"),
    ("/orders/1/amount", r#""1e308 lb""#, "beyond what can be calculated with"),
    ("/orders/1/amount", r#""1e400 lb""#, "too large"),
    ("/orders/1/amount", r#""-5 lb""#, "more than 0"),
    ("/orders/1/amount", r#""0 lb""#, "more than 0"),
    ("/orders/1/amount", r#""NaN lb""#, "not a finite number"),
    ("/orders/1/amount", r#""inf lb""#, "not a finite number"),
    ("/orders/1/amount", r#""""#, "is empty"),
    ("/orders/1/amount", "9000", "a quantity"),
    ("/orders/1/amount", "null", "missing. Give an amount of seed such as \"30000 lb\""),
    ("/orders/1/amount", r#""900 plants""#, "only a stand"),
    ("/orders/1/amount", r#""9 units""#, "how many seeds a unit is"),
    ("/orders/1/amount", r#""9 bu""#, "what a bushel weighs"),
    ("/orders/1/amount", r#""9 ac""#, "sowing"),
    ("/orders/1/amount", r#""40 degF""#, "is a temperature"),
    ("/orders/1/amount", r#""2 fl oz/cwt""#, "volume per mass of seed"),
    ("/orders/0/unit", r#""140M seeds""#, "140000000, not 140M"),
    ("/orders/0/unit", r#""2 gal""#, "gives volume, where a number of seeds or a mass is needed"),
    ("/treatments/0/rate", r#""2.4 fl oz""#, "an amount per mass, bushel, unit, seed or area"),
    ("/treatments/0/rate", r#""2.4 fl oz/h""#, "is needed"),
    ("/treatments/0/rate", r#""2.4 mL/kg/d""#, "more than one /"),
    ("/treatments/0/rate", r#""2 %""#, "no dose"),
    ("/orders/0/germination", r#""120 %""#, "within 0 % and 100 %"),
    ("/orders/0/germination", "0.92", "a quantity"),
    ("/orders/0/temperature", r#""-500 degF""#, "absolute zero"),
    ("/orders/0/temperature", r#""280 K""#, "degC or degF"),
    ("/orders/0/size", r#""3 fl oz/seed""#, "volume per seed, where a seed size"),
    // References.
    ("/treatments/1/tank", r#""Z""#, "unknown tank"),
    ("/orders/0/treat/0", r#""Coatx""#, "did you mean"),
    ("/treatments/0/with_living/0/living", r#""Coat""#, "not a living product"),
    ("/treatments/1/living/titre_of", r#""cultur""#, "did you mean"),
    ("/orders/1/order", r#""31""#, "stands already"),
    ("/treatments/1/product", r#""Coat""#, "stands already"),
    // What excludes, and what needs, another field.
    ("/treatments/0/cells", r#""1e5 CFU/seed""#, "stands beside rate"),
    ("/treatments/0/rate", "null", "missing. Give a rate such as \"2.5 fl oz/cwt\", or active_rate, or cells"),
    ("/after/plant_on", r#""2027-05-01T12:00:00-05:00""#, "stands beside plant_on"),
    ("/treatments/1/living/survival/z", "null", "missing. Give both at and z, or neither"),
    ("/treatments/1/living/survival/scale", r#""5 d""#, "another survival model"),
    ("/treatments/1/living/survival/decimal_reduction", "null", "missing. Give a time"),
    ("/tanks/1/water", r#""1 fl oz/cwt""#, "beside make_up_to"),
    ("/tanks/1/make_up_to", r#""0.5 fl oz/cwt""#, "less than the products alone"),
    ("/treater/charge", r#""60 kg""#, "beside seed_flow"),
    ("/treatments/0/tank", "null", "missing. Give that of \"Coat\""),
    // Kinds of values, dates, shifts.
    ("/orders", "{}", "a list"),
    ("/orders", "[]", "at least one"),
    ("/units", r#""imperial""#, "unknown word"),
    ("/format", "2", "write 1"),
    ("/treatments/1/packs/0/per_case", "2.5", "whole number"),
    ("/treatments/1/packs/0/per_case", "0", "at least 1"),
    ("/treatments/1/packs/0/price", "-3", "must not be negative"),
    ("/treatments/1/packs/0/on_hand", r#""5""#, "a number"),
    ("/treatments/1/expires", r#""30.9.2027""#, "year-month-day"),
    ("/work/0/from", r#""tomorrow""#, "date, time and offset"),
    ("/work/0/to", r#""2027-04-06T05:00:00-05:00""#, "not after"),
    // Unknown fields, at every level.
    ("/titel", r#""x""#, "did you mean \"title\"?"),
    ("/orders/0/lott", r#""x""#, "did you mean \"lot\"?"),
    ("/treatments/1/living/titer", r#""1e9 CFU/mL""#, "did you mean \"titre\"?"),
    ("/tanks/0/pump", r#"{"speed": 3}"#, "unknown field"),
];

#[test]
fn each_problem_is_told_with_its_place_and_a_remedy() {
    for (pointer, value, words) in EDITS {
        let message = told(&edited(pointer, serde_json::from_str(value).unwrap()));
        // A field that another one excludes or needs is told at the other.
        let parent = pointer.rsplit_once('/').unwrap().0;
        assert!(message.starts_with(parent), "{pointer} = {value}: {message}");
        assert!(message.contains(words), "{pointer} = {value}: {message}");
        assert!(message.len() <= 1500, "{pointer}: {} bytes", message.len());
        for jargon in ["serde", "invalid type", "missing field", "None", "Option", "unwrap", "variant"] {
            assert!(!message.contains(jargon), "{pointer}: {message}");
        }
    }
}

#[test]
fn what_is_no_job_at_all_is_told() {
    for (text, words) in [
        ("", "not JSON"),
        ("{", "not JSON"),
        ("[]", "an object is needed"),
        ("null", "an object is needed"),
        ("{} {}", "not JSON"),
        (r#"{"orders": [], "orders": []}"#, "twice"),
        (r#"{"treatments": []}"#, "/orders: missing. Give a list"),
        (
            r#"{"orders": [{"order": "1", "lot": "a", "amount": "1 kg", "size": "5 seeds/kg", "lot": "b"}], "treatments": []}"#,
            "/orders/0/lot: stands here twice",
        ),
    ] {
        let message = told(text);
        assert!(message.contains(words), "{text}: {message}");
    }
}

#[test]
fn documents_have_limits() {
    let deep = format!("{}{}", "[".repeat(100_000), "]".repeat(100_000));
    assert!(told(&deep).contains("32 levels"), "{}", told(&deep));
    let long = " ".repeat(limits::BYTES + 1);
    assert!(told(&long).contains("16 MiB"));
    let mut job = sound();
    job["orders"] = json!(vec![job["orders"][1].clone(); limits::ORDERS + 1]);
    assert!(told(&job.to_string()).contains("at most 10000"));
}

#[test]
fn all_problems_are_collected_up_to_twenty() {
    let mut job = sound();
    job["orders"][0]["amount"] = json!("9,000 lb");
    job["orders"][1]["size"] = json!("many");
    job["treatments"][0]["rate"] = json!("2.4 oz/cwt");
    job["tanks"][0]["capacity"] = json!("30 g");
    let problems = planned(&job.to_string()).unwrap_err();
    let places: Vec<&str> = problems.iter().map(|problem| problem.pointer.as_str()).collect();
    assert_eq!(places, ["/orders/0/amount", "/orders/1/size", "/treatments/0/rate", "/tanks/0/capacity"]);
    job["orders"] = json!(vec![json!({}); 30]);
    assert_eq!(planned(&job.to_string()).unwrap_err().len(), limits::PROBLEMS);
}

#[test]
fn a_quantity_may_come_in_two_parts_and_null_is_absent() {
    let text = edited("/orders/1/amount", json!({"value": 9000, "unit": "lb"}));
    assert_eq!(planned(&text), Ok(()));
    assert_eq!(planned(&edited("/orders/0/temperature", Value::Null)), Ok(()));
    let message = told(&edited("/orders/1/amount", json!({"value": "9000", "unit": "lb"})));
    assert!(message.starts_with("/orders/1/amount/value: \"9000\""), "{message}");
    let message = told(&edited("/orders/1/amount", json!({"value": 9000, "unit": "lb", "per": 1})));
    assert!(message.starts_with("/orders/1/amount/per"), "{message}");
}
