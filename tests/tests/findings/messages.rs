//! Every message says what, where and what to do, in the words of the trade.

use hilum_job::document::{Code, Finding};
use serde_json::Value;

use super::each::CASES;
use super::job::{edited, findings};

/// Words of programs, not of the trade.
const BANNED: [&str; 18] = [
    "serde", "none", "some(", "unwrap", "null", "struct", "enum", "option", "panic", "vec", "f64", "nan",
    "inf ", "index", "boolean", "parse", "field", "{",
];

/// One of them begins what to do.
const REMEDIES: [&str; 22] = [
    "Add ", "Ask ", "Check ", "Colour ", "Correct ", "Empty ", "Get ", "Give ", "Keep ", "Leave ", "Lower ",
    "Make ", "Mix ", "Plan ", "Plant ", "Raise ", "Read ", "Run ", "Sow ", "Store ", "Use ", "Warm ",
];

/// Every finding of every case, with the job that raised it.
fn all() -> Vec<(Value, Finding)> {
    let edits = CASES.iter().map(|(.., edit, _)| edit);
    edits
        .flat_map(|edit| findings(&edited(edit)).into_iter().map(|finding| (edited(edit), finding)))
        .collect()
}

/// The name of the order, product, tank or active that a place lies in.
fn named<'j>(job: &'j Value, place: &str) -> Option<&'j str> {
    let (list, rest) = place.strip_prefix('/')?.split_once('/')?;
    let field = match list {
        "orders" => "order",
        "treatments" => "product",
        "tanks" => "tank",
        "actives" => "active",
        _ => return None,
    };
    let thing = job.pointer(&format!("/{list}/{}", rest.split('/').next()?))?;
    thing[field].as_str()
}

#[test]
fn each_names_the_thing_it_is_about() {
    for (job, finding) in all() {
        if let Some(name) = named(&job, &finding.r#where) {
            assert!(finding.message.contains(&format!("{name:?}")), "{name}: {finding:?}");
        }
    }
}

#[test]
fn each_says_what_to_do() {
    for (_, finding) in all() {
        let mut sentences = finding.message.split_inclusive(['.', ':']).map(str::trim_start);
        let remedy = |sentence: &str| REMEDIES.iter().any(|remedy| sentence.starts_with(remedy));
        assert!(sentences.any(remedy), "{finding:?}");
        assert!(finding.message.ends_with('.') && finding.message.len() < 700, "{finding:?}");
    }
}

#[test]
fn none_speaks_of_programs() {
    for (_, finding) in all() {
        // Names that the user gave may be anything.
        let own: String = finding.message.split('"').step_by(2).collect();
        let words = own.to_lowercase();
        assert!(BANNED.iter().all(|word| !words.contains(word)), "{finding:?}");
    }
}

#[test]
fn numbers_are_rounded_for_people() {
    for (_, finding) in all() {
        let numbers = finding.message.split(|c: char| !c.is_ascii_digit() && c != '.');
        for number in numbers.map(|number| number.trim_end_matches('.')) {
            let digits = number.trim_start_matches(['0', '.']).trim_end_matches('0').replace('.', "").len();
            assert!(digits <= 6, "{number} in {finding:?}");
        }
    }
}

/// Where a product can hurt, the label has the last word.
#[test]
fn stops_over_limits_defer_to_the_label() {
    let grave = [Code::AboveMaxRate, Code::SeasonLimit, Code::ActiveLimit, Code::CropNotOnLabel];
    let over: Vec<_> = all().into_iter().filter(|(_, finding)| grave.contains(&finding.code)).collect();
    assert!(over.len() >= grave.len());
    for (_, finding) in over {
        assert!(finding.message.contains("the label is the law"), "{finding:?}");
    }
}

#[test]
fn many_orders_with_one_fault_are_one_finding_that_counts_them() {
    let mut job = edited(r#"{"/treatments/1/max_rate": "90 mL/100 kg"}"#);
    let order = job["orders"][1].clone();
    for number in 3..=40 {
        let mut order = order.clone();
        order["order"] = format!("N-{number}").into();
        order["amount"] = "200 kg".into();
        job["orders"].as_array_mut().unwrap().push(order);
    }
    let found = findings(&job);
    let above: Vec<&Finding> = found.iter().filter(|finding| finding.code == Code::AboveMaxRate).collect();
    let [one] = above[..] else { panic!("{above:#?}") };
    assert!(one.message.contains("orders \"N-1\", \"N-2\", \"N-3\" and 37 more"), "{one:?}");
}
