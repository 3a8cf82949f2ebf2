//! `describe` prints, as JSON, what the npm package's functions, types, messages and schemas are generated
//! from. `describe vectors` prints the check values as exact bits, `describe plan JOB.json` the plan of a job,
//! `describe account RUN.json` the account of a run: what the package is compared with.

use std::collections::BTreeMap;
use std::error::Error;

use hilum::unit::Powers;
use hilum_wasm::{CALCULATORS, CODES, Calculator, Input, TEXT_CODES, measures};
use serde_json::{Value, json};

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    match arguments.iter().map(String::as_str).collect::<Vec<_>>().as_slice() {
        [] => println!("{:#}", package()),
        ["vectors"] => print!("{}", hilum_check::vectors::text()?),
        ["plan", job] => print!("{}", hilum_job::plan_json(&std::fs::read_to_string(job)?)?),
        ["account", run] => print!("{}", hilum_job::account_json(&std::fs::read_to_string(run)?)?),
        _ => {
            return Err(
                "Usage: describe, describe vectors, describe plan JOB.json, or describe account RUN.json."
                    .into(),
            );
        }
    }
    Ok(())
}

fn package() -> Value {
    let calculators: Vec<Value> =
        CALCULATORS.iter().copied().flatten().map(|row| calculator(&row())).collect();
    let codes: BTreeMap<String, &str> =
        CODES.iter().chain(TEXT_CODES).map(|(number, name)| (number.to_string(), *name)).collect();
    let schemas: BTreeMap<&str, Value> =
        hilum_job::schema::schemas().into_iter().map(|(name, schema)| (name, schema.to_value())).collect();
    let units: Vec<Value> =
        hilum::unit::all().filter(|unit| !unit.symbol.is_empty()).map(|unit| json!(unit.symbol)).collect();
    json!({
        "version": env!("CARGO_PKG_VERSION"),
        "calculators": calculators,
        "codes": codes,
        "dimensions": dimensions(),
        "units": units,
        "schemas": schemas,
        "largest": hilum::error::LARGEST,
    })
}

/// A row: what it takes and gives, for each substance that it is made for.
fn calculator(row: &[Calculator]) -> Value {
    let Some(first) = row.first() else { return Value::Null };
    let inputs: Vec<Value> = first
        .inputs
        .iter()
        .enumerate()
        .map(|(at, input)| {
            let each = row.iter().filter_map(|one| one.inputs.get(at));
            described(input.name, each, input.check)
        })
        .collect();
    json!({
        "topic": first.topic,
        "name": first.name,
        "about": first.about,
        "inputs": inputs,
        "output": described(first.output.name, row.iter().map(|one| &one.output), None),
    })
}

fn described<'a>(name: &str, each: impl Iterator<Item = &'a Input>, check: Option<usize>) -> Value {
    let (mut kinds, mut bases): (Vec<Value>, Vec<&str>) = (Vec::new(), Vec::new());
    let mut of = Vec::new();
    for input in each {
        of.extend(input.of);
        // What a number of `hilum/numbers` stands for: the first kind of each substance.
        bases.extend(input.kinds.first().map(|kind| kind.base).filter(|base| !bases.contains(base)));
        for kind in input.kinds {
            let kind = json!({ "words": kind.words, "metric": kind.metric, "us": kind.us });
            if !kinds.contains(&kind) {
                kinds.push(kind);
            }
        }
    }
    json!({ "name": name, "kinds": kinds, "bases": bases, "check": check, "of": of })
}

/// What each dimension is called, by its powers.
fn dimensions() -> BTreeMap<String, &'static str> {
    let all = || -3..=3_i8;
    let mut names = BTreeMap::new();
    for length in all() {
        for (mass, time) in all().flat_map(|mass| all().map(move |time| (mass, time))) {
            for (temperature, seeds, cells) in
                all().flat_map(|k| all().flat_map(move |s| all().map(move |c| (k, s, c))))
            {
                let powers = Powers { length, mass, time, temperature, seeds, cells };
                if let Some(name) = powers.name() {
                    names.insert(measures(powers).to_string(), name);
                }
            }
        }
    }
    names
}
