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
    // Names that show nothing.
    ("/orders/1/order", r#""""#, "write a name that people can read"),
    ("/orders/1/lot", r#""  ""#, "write a name that people can read"),
    ("/treatments/0/product", r#""\u0007\u202e""#, "\"\\u0007\\u202e\" shows nothing"),
    ("/treatments/1/packs/0/pack", r#""\n""#, "\"\\n\" shows nothing"),
    ("/tanks/0/tank", r#""\u00a0""#, "write a name that people can read"),
    // A product beside itself.
    ("/treatments/1/with_living", r#"[{"living": "Living"}]"#, "is the product itself"),
    // Doses that the label, the order or the product does not make one of.
    ("/treatments/1/rate", r#""1 fl oz/bu""#, "neither label_bushel nor the bushel of order \"32\" says"),
    ("/treatments/1/rate", r#""1 fl oz/ac""#, "order \"32\" does not say how it is sown; give its sowing"),
    ("/treatments/1/rate", r#""1 fl oz/unit""#, "neither label_unit nor the unit of order \"32\" says"),
    ("/treatments/0/also_stated", r#"["45 degF"]"#, "is no dose; write an amount"),
    ("/treatments/1", r#"{"product": "Living", "tank": "A", "cells": "1e5 CFU/kg", "living": {"titre": "1e9 CFU/mL"}}"#, "where cells per seed is needed"),
    ("/treatments/1", r#"{"product": "Living", "tank": "A", "cells": "1e5 CFU/seed", "living": {"titre": "1e9 CFU/mL", "recovery": "0 %"}}"#, "the recovery is 0 %; check it"),
    ("/treatments/1", r#"{"product": "Living", "tank": "A", "cells": "1e5 CFU/seed", "living": {"titre": "1e9 CFU/g"}}"#, "\"1.04 kg/L\" or the like"),
    ("/treatments/1", r#"{"product": "Living", "tank": "A", "rate": "5 g/kg", "living": {"titre": "1e9 CFU/mL"}}"#, "because the dose is a mass and the product goes into a tank"),
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
    ("/orders/0/sowing", r#"{"stand": "120000 plants/ac"}"#, "the share of viable seed that gives a plant"),
    ("/orders/0/size_tolerance", r#""100 %""#, "must be less than 100 %"),
    ("/treatments/1/living/titre", r#""5 kg""#, "a titre, cells per volume or cells per mass,"),
    ("/treatments/1/packs/0/covers", r#""3 gal""#, "is no amount of seed; write a mass, units or seeds"),
    ("/treatments/1/packs/0/parts/0/usable", r#""1.21 gal""#, "is more than the fill"),
    ("/treatments/1/packs/0/parts/0", r#"{"part": "culture", "fill": "4 kg", "usable": "4.01 kg"}"#, "is more than the fill"),
    ("/treatments/1/packs/0/parts/0/usable", r#""4 kg""#, "otherwise than the fill"),
    ("/tanks/0/pump/curve", r#"[{"setting": 20, "flow": "20 fl oz/min"}, {"setting": 20, "flow": "60 fl oz/min"}]"#, "catch at another setting too"),
    ("/tanks/0/pump/curve", r#"[{"setting": 20, "flow": "20 fl oz/min"}, {"setting": 60, "flow": "20 fl oz/min"}]"#, "does not rise"),
    ("/treatments/0/tank", "null", "missing. Give that of \"Coat\""),
    // Kinds of values, dates, shifts.
    ("/orders", "{}", "is an object, but a list is needed"),
    ("/title", "[]", "is a list, but a text is needed"),
    ("/title", "3", "is a number, but a text is needed"),
    ("/title", "false", "is true or false, but a text is needed"),
    ("/work", r#"[{"from": "2027-04-06T07:00:00-05:00", "to": "2027-04-06T17:00:00-05:00"}, {"from": "2027-04-06T16:59:00-05:00", "to": "2027-04-06T18:00:00-05:00"}]"#, "before the end of the shift above"),
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
        (r#"{"title": "\ud800"}"#, "write both halves"),
        (r#"{"title": "\udc00\ud800"}"#, "write both halves"),
        (r#"{"title": "\udbff\u0041"}"#, "write both halves"),
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

/// What is at the border is not wrong: a part that can be used up, a shift that follows at once.
#[test]
fn what_is_just_right_is_read() {
    for (pointer, value) in [
        ("/treatments/1/packs/0/parts/0/usable", json!("1.2 gal")),
        (
            "/treatments/1/packs/0/parts",
            json!([{"part": "culture", "fill": "4 kg", "usable": "4 kg"}, {"part": "feed", "fill": "1 kg"}]),
        ),
        ("/treatments/1/living/titre", json!("8e9 CFU/g")),
        ("/tanks/0/pump", json!({"min": "60 fl oz/min", "max": "60 fl oz/min"})),
        ("/tanks/0/min_fill", json!("30 gal")),
        ("/treater", json!({"min_liquid": "9 fl oz/cwt", "max_liquid": "9 fl oz/cwt"})),
        (
            "/treatments/0",
            json!({"product": "Coat", "rate": "2 g/kg", "min_rate": "3 g/kg", "max_rate": "3 g/kg"}),
        ),
        (
            "/treatments/0",
            json!({"product": "Coat", "rate": "2 g/kg", "min_rate": "3 g/kg", "max_rate": "1 mg/seed"}),
        ),
        (
            "/work",
            json!([{"from": "2027-04-06T07:00:00-05:00", "to": "2027-04-06T17:00:00-05:00"}, {"from": "2027-04-06T17:00:00-05:00", "to": "2027-04-06T18:00:00-05:00"}]),
        ),
    ] {
        assert_eq!(planned(&edited(pointer, value)), Ok(()), "{pointer}");
    }
}

/// Every field that is required, in a job and in a run: taken away, it is asked for by what it holds, and the example given
/// does in its place.
#[test]
fn a_missing_field_is_asked_for_with_an_example_that_does() {
    let mut job = sound();
    job["treatments"][0]["active_rate"] = json!({"active": "quellazole", "rate": "5 g/100 kg"});
    job["treatments"][0].as_object_mut().unwrap().remove("rate");
    job["orders"][1]["size"] = json!({"value": 155.0, "unit": "g/1000 seeds"});
    let run: Value = serde_json::from_str(include_str!("documents/run.json")).unwrap();
    let reading: Value = json!({"reading": "1 L", "resolution": "0.1 L"});
    let mut lists = run.clone();
    lists["orders"][0]["tanks"][0]["added"] = json!([reading]);
    let read = |document: &Value, is_run: bool| {
        let text = document.to_string();
        if is_run {
            hilum_job::Run::from_json(&text).and_then(|run| hilum_job::account(&run)).map(|_| ())
        } else {
            planned(&text)
        }
    };
    let mut asked = 0;
    for (document, is_run) in [(job, false), (lists, true)] {
        assert_eq!(read(&document, is_run), Ok(()));
        for place in fields(&document, "") {
            let (parent, name) = place.rsplit_once('/').unwrap();
            let mut without = document.clone();
            without.pointer_mut(parent).unwrap().as_object_mut().unwrap().remove(name);
            let Err(problems) = read(&without, is_run) else { continue };
            let told = problems
                .iter()
                .find(|problem| problem.pointer == place && problem.message.contains("missing. Give"));
            let Some(problem) = told else { continue };
            assert!(
                !problem.message.ends_with("Give a value") && !problem.message.ends_with("Give a value."),
                "{place}: {problem}"
            );
            asked += 1;
            let Some((_, examples)) = problem.message.split_once("such as ") else { continue };
            let problem_with = |example: &str| {
                let example: Value =
                    serde_json::from_str(example).unwrap_or_else(|error| panic!("{example}: {error}"));
                let mut with = without.clone();
                with.pointer_mut(parent).unwrap().as_object_mut().unwrap().insert(name.into(), example);
                let problems = read(&with, is_run).err();
                // It may not fit the other numbers of this document, but it is of the right kind.
                problems.iter().flat_map(Problems::iter).map(ToString::to_string).find(|told| {
                    told.starts_with(&place) && (told.contains("is needed") || told.contains("missing"))
                })
            };
            let examples = examples.split(", or ").next().unwrap().trim_end_matches('.').split(" or ");
            let wrong: Vec<String> = examples.clone().filter_map(problem_with).collect();
            assert!(wrong.len() < examples.count(), "{place}: {wrong:?}");
        }
    }
    assert!(asked > 40, "{asked}");
}

/// The place of every field, of objects within too.
fn fields(of: &Value, at: &str) -> Vec<String> {
    match of {
        Value::Object(fields) => fields
            .iter()
            .flat_map(|(name, value)| {
                let own = format!("{at}/{name}");
                let mut all = self::fields(value, &own);
                all.push(own);
                all
            })
            .collect(),
        Value::Array(items) => {
            items.iter().enumerate().flat_map(|(i, item)| self::fields(item, &format!("{at}/{i}"))).collect()
        }
        _ => Vec::new(),
    }
}

/// A document of 32 levels is read, and one of exactly 16 MiB.
#[test]
fn the_limits_themselves_are_allowed() {
    let nested = |lists: usize| {
        told(&edited("/title", serde_json::from_str(&("[".repeat(lists) + &"]".repeat(lists))).unwrap()))
    };
    assert!(nested(limits::DEPTH - 1).contains("is a list, but a text is needed"));
    assert!(nested(limits::DEPTH).contains("nested more than 32 levels deep"));
    let text = sound().to_string();
    let filled = text.clone() + &" ".repeat(limits::BYTES - text.len());
    assert_eq!(planned(&filled), Ok(()));
    assert!(told(&(filled + " ")).contains("at most 16777216"));
}

/// Worked by hand: on each of 10,000 orders 16 products of three steps (themselves, a crop, another statement) that declare
/// one thing each, a culture that is one step and is followed through 2 periods and 16 declarations, an active from before:
/// 48 + 16 + 1 + 18 + 1; and one culture beside 16 times two constituents.
#[test]
fn work_is_counted_before_it_is_done() {
    let product = |n: usize| {
        json!({"product": format!("P{n}"), "rate": "50 g/100 kg", "crops": ["oats"], "also_stated": ["50 g/100 kg"],
        "constituents": ["chalk", "talc"], "with_living": [{"living": "Live", "same_seed": true}]})
    };
    let mut treatments: Vec<Value> = (0..16).map(product).collect();
    treatments.push(json!({"product": "Live", "rate": "50 g/100 kg", "living": {"titre": "1e9 CFU/g"}}));
    let order = |n: usize| json!({"order": format!("{n}"), "lot": "L", "amount": "100 kg", "size": "160 g/1000 seeds", "on_seed": [{"active": "a", "per_seed": "0.01 mg/seed"}]});
    let job = |orders: usize| {
        json!({"format": 1, "orders": (0..orders).map(order).collect::<Vec<_>>(), "treatments": treatments, "actives": [{"active": "a"}],
        "after": {"storage": [{"for": "1 d", "at": "8 degC"}, {"for": "1 d", "at": "9 degC"}]}}).to_string()
    };
    assert!(told(&job(10_000)).contains("make 840032 steps of work"), "{}", told(&job(10_000)));
}

/// What JSON cannot write a program can: it is refused all the same.
#[test]
fn a_number_that_is_none_is_refused() {
    let mut job = Job::from_json(&sound().to_string()).unwrap();
    job.orders[0].amount = hilum_job::document::Quantity::Pair { value: f64::NAN, unit: "lb".into() };
    let problems = plan(&job).expect_err("refused");
    assert!(problems.to_string().contains("not a finite number"), "{problems}");
}

/// As JSON, for a form: pointer, value and message of each; and a job is written as it was read, without nulls.
#[test]
fn problems_and_jobs_are_written_as_json() {
    let problems = planned(&edited("/orders/1/amount", json!("5 ton"))).expect_err("refused");
    let list: Value = serde_json::from_str(&problems.to_json()).unwrap();
    assert!(!problems.is_empty() && list.as_array().map(Vec::len) == Some(problems.len()));
    assert_eq!((&list[0]["pointer"], &list[0]["value"]), (&json!("/orders/1/amount"), &json!("\"5 ton\"")));
    let job = Job::from_json(&sound().to_string()).unwrap();
    let written = serde_json::to_string(&job).unwrap();
    assert!(!written.contains("null"), "{written}");
    assert_eq!(Job::from_json(&written), Ok(job));
}
