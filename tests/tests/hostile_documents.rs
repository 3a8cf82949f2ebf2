//! No document makes planning slow: work is bounded by counts. Each document here is as large in one way as the limits let it
//! be, or larger. None may take much longer than an honest large job does in the same run, nor give a plan beyond all measure.
#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test stops at the first surprise")]

use std::time::{Duration, Instant};

use hilum_job::limits::{BATCHES, ENTRIES, ORDERS, POURS, STEPS, TEXT, TREATMENTS};
use serde_json::{Value, json};

/// An honest job of a season, 5,000 orders of ten products, takes 0.2 s in release; what is hostile may take so many times that.
const SLOWER: u32 = 20;
/// Bytes of a plan.
const WRITTEN: usize = 250 << 20;

fn order(n: usize) -> Value {
    json!({"order": n.to_string(), "lot": "a", "amount": "10 kg", "size": "6000 seeds/kg"})
}

fn treatment(n: usize) -> Value {
    json!({"product": n.to_string(), "rate": "1 g/kg"})
}

fn list(many: usize, of: impl Fn(usize) -> Value) -> Value {
    (0..many).map(of).collect()
}

fn with(mut value: Value, field: &str, add: Value) -> Value {
    value[field] = add;
    value
}

fn job(orders: usize, treatments: usize) -> Value {
    json!({"orders": list(orders, order), "treatments": list(treatments, treatment)})
}

/// Every product of a job with one more field.
fn each(orders: usize, treatments: usize, field: &str, add: &Value) -> Value {
    json!({"orders": list(orders, order), "treatments": list(treatments, |n| with(treatment(n), field, add.clone()))})
}

fn timed(text: &str) -> (Duration, Result<String, String>) {
    let start = Instant::now();
    let planned = hilum_job::plan_json(text).map_err(|problems| problems.to_string());
    (start.elapsed(), planned)
}

/// Plans it, within the bounds.
fn planned(name: &str, honest: Duration, text: &str) {
    let (took, planned) = timed(text);
    println!(
        "{name}: {} bytes in, {took:?}, {} bytes out",
        text.len(),
        planned.as_ref().map_or(0, String::len)
    );
    assert!(planned.unwrap().len() < WRITTEN, "{name} is written at great length");
    assert!(took < honest * SLOWER, "{name} takes {took:?}, an honest job {honest:?}");
}

/// Refuses it at once, and names the limit.
fn refused(name: &str, honest: Duration, text: &str, limit: &str) {
    let (took, planned) = timed(text);
    println!("{name}: {} bytes in, {took:?}, refused", text.len());
    let said = planned.err().unwrap_or_default();
    assert!(said.contains(limit), "{name}: {said}");
    assert!(took < honest * SLOWER, "{name} takes {took:?}, an honest job {honest:?}");
}

fn living() -> Value {
    let survival = json!({"model": "log_linear", "decimal_reduction": "60 d", "at": "10 degC", "z": "20 K"});
    json!({"titre": "1e9 CFU/g", "minimum_at_planting": "1e2 CFU/seed", "survival": survival})
}

fn actives(many: usize) -> Value {
    list(many, |n| json!({"active": n.to_string(), "content": "0.001 %"}))
}

fn stored(orders: usize) -> Value {
    let storage = list(ENTRIES, |n| json!({"for": "1 h", "at": format!("{} degC", n % 30)}));
    with(
        each(orders, TREATMENTS, "living", &living()),
        "after",
        json!({"storage": storage, "plant_after": "900 d"}),
    )
}

/// So many living products, and one that declares something about each of them.
fn declared(orders: usize, constituents: usize) -> Value {
    let with_living =
        list(TREATMENTS - 1, |n| json!({"living": (n + 1).to_string(), "life": "1 d", "same_seed": true}));
    let treatments = list(TREATMENTS, |n| match n {
        0 => with(
            with(treatment(n), "with_living", with_living.clone()),
            "constituents",
            list(constituents, |_| json!("zinc")),
        ),
        _ => with(treatment(n), "living", living()),
    });
    json!({"orders": list(orders, order), "treatments": treatments})
}

/// Sets of eight odd sizes in each of twenty tanks, a thousand shifts, and as many orders as there may be.
fn batches(orders: usize, living: usize) -> Value {
    let packs = list(
        8,
        |n| json!({"pack": n.to_string(), "parts": [{"part": "a", "fill": format!("{}.{n}7 L", 1 + n * 3)}]}),
    );
    let treatments = list(20, |n| {
        let own = json!({"product": n.to_string(), "rate": format!("0.{} mL/1000 seeds", 11 + n), "tank": n.to_string()});
        let alive = json!({"titre": "1e9 CFU/mL", "pot_life": "6 h"});
        if n < living { with(with(own, "living", alive), "packs", packs.clone()) } else { own }
    });
    let tanks = list(
        20,
        |n| json!({"tank": n.to_string(), "capacity": "60 L", "hold_up": "1 L", "mixing": "7 min", "make_up_to": format!("{} mL/kg", 60 + n)}),
    );
    let orders = list(orders, |n| {
        let (amount, size) =
            (format!("{} kg", 3_000_000 / orders), format!("{} seeds/kg", 6000 + 1000 * (n * 7 / orders)));
        json!({"order": n.to_string(), "lot": "a", "amount": amount, "size": size})
    });
    let day = |n: usize, hour: usize| {
        format!("2{:03}-{:02}-{:02}T{hour:02}:00:00Z", n / 300, 1 + n / 25 % 12, 1 + n % 25)
    };
    let work = list(1000, |n| json!({"from": day(n, 7), "to": day(n, 17)}));
    let treater = json!({"seed_flow": "100 kg/min", "changeover": "1 min"});
    json!({"orders": orders, "treatments": treatments, "tanks": tanks, "treater": treater, "work": work})
}

/// One tank of many products and small mixes.
fn poured(products: usize, mixes: usize) -> Value {
    let treatments = list(products, |n| json!({"product": n.to_string(), "rate": "1 mL/kg", "tank": "t"}));
    let order = with(order(0), "amount", json!(format!("{} kg", mixes * 1000 / products)));
    json!({"orders": [order], "treatments": treatments, "tanks": [{"tank": "t", "capacity": "1 L"}]})
}

fn honest() -> Duration {
    timed(&job(ORDERS / 2, 10).to_string()).0
}

#[test]
fn no_document_makes_planning_slow() {
    let honest = honest();
    println!("an honest job: {honest:?}");
    let steps = format!("at most {STEPS} are planned");
    for (name, job) in [
        ("doses", job(ORDERS, STEPS / ORDERS + 1)),
        ("actives", each(6, TREATMENTS, "actives", &actives(ENTRIES))),
        ("statements", each(6, TREATMENTS, "also_stated", &list(ENTRIES, |_| json!("1.0 g/kg")))),
        ("crops", each(6, TREATMENTS, "crops", &list(ENTRIES, |n| json!(n.to_string())))),
        ("storage", stored(6)),
        ("declarations", declared(60, 0)),
        (
            "constituents",
            declared(1, 1000)
                .as_object()
                .map(|job| {
                    // Each of two products holds much that may be harmful to each of the others.
                    let mut job = Value::Object(job.clone());
                    (1..10).for_each(|n| {
                        job["treatments"][n]["constituents"] = list(ENTRIES, |_| json!("zinc"));
                    });
                    job
                })
                .unwrap(),
        ),
    ] {
        refused(name, honest, &job.to_string(), &steps);
    }
    for (name, job) in [
        ("actives", each(4, TREATMENTS, "actives", &actives(ENTRIES))),
        ("statements", each(4, TREATMENTS, "also_stated", &list(ENTRIES, |_| json!("1.0 g/kg")))),
        ("storage", stored(4)),
        ("declarations", declared(40, ENTRIES)),
        ("batches", batches(ORDERS / 10, 1)),
        ("sets", batches(ORDERS / 50, 20)),
        ("pours", poured(4, POURS / 8)),
        // Too many to be levelled, and room enough to try.
        ("mixes", poured(4, POURS / 20)),
    ] {
        planned(name, honest, &job.to_string());
    }
    refused(
        "pours",
        honest,
        &poured(TREATMENTS, POURS / TREATMENTS).to_string(),
        &format!("more than {POURS} pours"),
    );
}

/// 3,000 mixes are more than the first room for them, and planned; a million are refused, and 60,000 of ten products each.
#[test]
fn no_more_mixes_or_pours_than_a_plan_holds() {
    let plan = |products, mixes| hilum_job::plan_json(&poured(products, mixes).to_string());
    let planned: Value = serde_json::from_str(&plan(1, 3000).unwrap()).unwrap();
    assert_eq!(planned["tanks"][0]["batches"].as_array().unwrap().len(), 3000);
    for (products, mixes, limit) in [(1, 1_000_000, BATCHES), (10, 60_000, POURS)] {
        let refused = plan(products, mixes).unwrap_err().to_string();
        assert!(refused.contains(&format!("more than {limit} ")), "{refused}");
    }
}

#[test]
fn no_text_takes_long_to_refuse() {
    let honest = honest();
    let names: Vec<String> = (0..700_000).map(|n| format!("\"ordercustomer{n}\":0")).collect();
    refused("unknown fields", honest, &format!("{{{}}}", names.join(",")), "is an unknown field");
    refused(
        "numbers",
        honest,
        &format!("{{\"orders\":[{}0],\"treatments\":[]}}", "0,".repeat(8_000_000)),
        "at most 10000",
    );
    refused("depth", honest, &"[".repeat(8_000_000), "32 levels");
    let long = with(job(1, 1), "title", json!("µ".repeat(8_000_000)));
    refused("a long text", honest, &long.to_string(), &format!("at most {TEXT} are read"));
    refused(
        "a long quantity",
        honest,
        &each(1, 1, "rate", &json!("9".repeat(8_000_000))).to_string(),
        "characters; at most",
    );
    let long = with(job(1, 1), "title", json!("µ".repeat(TEXT)));
    planned("a text that is just short enough", honest, &long.to_string());
    refused("bytes", honest, &" ".repeat(17 << 20), "at most 16777216 (16 MiB)");
}
