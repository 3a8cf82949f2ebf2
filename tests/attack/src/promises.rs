//! What every plan, account and refusal promises, whatever came in.

use serde_json::Value;

/// Words of programs that no message may hold, unless the document itself holds them.
const JARGON: [&str; 14] = [
    "u32", "u64", "i32", "usize", "f64", "serde", "Option", "Some(", "None", "struct", "enum", "panicked",
    "unwrap", "variant",
];

/// A message is in plain words.
pub(crate) fn plain_words(message: &str, document: &str) {
    for word in JARGON {
        assert!(!message.contains(word) || document.contains(word), "{word} in {message:?}");
    }
}

/// Volumes balance, seed adds up, a mix is done before it spoils, and nothing is null or not a number.
pub(crate) fn plan(job: &str, plan: &str) {
    let plan: Value = serde_json::from_str(plan).expect("a plan is JSON");
    no_null(&plan, "");
    for finding in list(&plan, "findings") {
        plain_words(finding["message"].as_str().unwrap(), job);
        assert!(finding["message"].as_str().unwrap().len() <= 1_500, "{finding}");
    }
    let left_over = |code: &str| list(&plan, "findings").iter().any(|finding| finding["code"] == code);
    let all_is_treated = !["out_of_time", "short_of_product", "tank_too_small"].into_iter().any(left_over);
    for tank in list(&plan, "tanks") {
        for batch in list(tank, "batches") {
            volumes(batch);
            if let (Some(done), Some(by)) = (batch["done_at"].as_str(), batch["use_by"].as_str()) {
                assert!(done <= by, "done after it spoils: {batch}");
            }
        }
        if all_is_treated && !list(tank, "batches").is_empty() {
            seed(&plan, tank);
        }
    }
}

fn list<'v>(of: &'v Value, name: &str) -> &'v [Value] {
    of[name].as_array().map_or(&[], Vec::as_slice)
}

fn amount(of: &Value) -> f64 {
    of["value"].as_f64().unwrap_or_default()
}

fn volumes(batch: &Value) {
    let mixed = amount(&batch["mixed"]);
    let parts = amount(&batch["applied"]) + amount(&batch["hold_up"]) + amount(&batch["discarded"]);
    assert!((mixed - parts).abs() <= 1e-9 * mixed.abs(), "mixed = applied + hold-up + discarded: {batch}");
    let poured: f64 = list(batch, "pour").iter().map(|pour| amount(&pour["volume"])).sum();
    assert!((mixed - poured).abs() <= 1e-6 * mixed.abs(), "{poured} is poured: {batch}");
}

/// Every order that a tank serves gets all its seed treated from the tank's mixes.
fn seed(plan: &Value, tank: &Value) {
    for served in list(tank, "orders") {
        let name = &served["order"];
        let order = list(plan, "orders").iter().find(|order| order["order"] == *name).unwrap();
        let batches = list(tank, "batches").iter().flat_map(|batch| list(batch, "orders"));
        let treated: f64 = batches.filter(|own| own["order"] == *name).map(|own| amount(&own["mass"])).sum();
        let wanted = amount(&order["mass"]);
        let all: f64 = list(plan, "orders").iter().map(|order| amount(&order["mass"])).sum();
        assert!(
            (treated - wanted).abs() <= 1e-9 * wanted + 1e-9 * all,
            "{treated} of order {name}, {wanted}"
        );
    }
}

/// No number is missing in an account either.
pub(crate) fn account(account: &str) {
    no_null(&serde_json::from_str(account).expect("an account is JSON"), "");
}

/// What is not a number would be written as null.
fn no_null(value: &Value, at: &str) {
    match value {
        Value::Null => panic!("{at} is null"),
        Value::Array(items) => {
            items.iter().enumerate().for_each(|(i, item)| no_null(item, &format!("{at}/{i}")))
        }
        Value::Object(fields) => {
            fields.iter().for_each(|(name, value)| no_null(value, &format!("{at}/{name}")))
        }
        _ => {}
    }
}
