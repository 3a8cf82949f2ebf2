//! Calculates a sample of a season in Rust, from the numbers and units of the orders, and compares every bit with what
//! came out of Spark; plans a sample of jobs and compares every byte. `season_check SAMPLE.tsv PLANS.tsv`
//!
//! The sample is a table of tabs: numbers as the 16 hexadecimal digits of a double, empty where null, lists between
//! commas. Only the core crate is used here, not the C library.

mod season;
mod table;

use std::process::ExitCode;

use table::{Fate, Row, Table};

/// Compares one row; the columns that differ.
fn differing(row: &Row<'_>) -> Vec<String> {
    let mut wrong = Vec::new();
    for (name, fate) in season::calculated(row) {
        let got = (
            row.text(&name),
            row.text(&format!("{}_code", name.trim_end_matches("_is").trim_end_matches("_because"))),
        );
        let expected = match &fate {
            Fate::Null => (String::new(), String::new()),
            Fate::Refused(code) => (String::new(), code.to_string()),
            Fate::Fine(text) => (text.clone(), "0".to_owned()),
        };
        if (got.0, got.1) != (expected.0.as_str(), expected.1.as_str()) {
            wrong.push(format!("{}: {name} is {got:?}, but Rust says {expected:?}", row.text("order")));
        }
    }
    wrong
}

fn read(path: &str) -> Result<String, String> {
    std::fs::read_to_string(path).map_err(|why| format!("{path} cannot be read: {why}."))
}

/// Compares whole plans, or the problems of refused jobs, byte by byte.
fn plans(path: &str) -> Result<bool, String> {
    let text = read(path)?;
    let table = Table::new(&text)?;
    let (mut jobs, mut wrong) = (0_u64, 0_u64);
    for row in table.rows() {
        let answer = match hilum_job::plan_json(row.text("job")) {
            Ok(plan) => plan,
            Err(problems) => serde_json::to_string(&problems).map_err(|why| why.to_string())?,
        };
        jobs += 1;
        wrong += u64::from(answer != row.text("answer"));
    }
    println!("{jobs} whole plans, {wrong} differ");
    Ok(jobs > 0 && wrong == 0)
}

fn run(sample: &str, of_plans: &str) -> Result<ExitCode, String> {
    let text = read(sample)?;
    let table = Table::new(&text)?;
    let (mut rows, mut values, mut wrong) = (0_u64, 0_u64, Vec::new());
    for row in table.rows() {
        let differing = differing(&row);
        values += season::RESULTS;
        rows += 1;
        wrong.extend(differing);
    }
    for line in wrong.iter().take(10) {
        println!("{line}");
    }
    println!("{rows} rows, {values} results and codes, {} differ", wrong.len());
    let planned = plans(of_plans)?;
    Ok(if wrong.is_empty() && rows > 0 && planned { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

fn main() -> ExitCode {
    let (Some(sample), Some(plans)) = (std::env::args().nth(1), std::env::args().nth(2)) else {
        eprintln!("Say which files: season_check SAMPLE.tsv PLANS.tsv");
        return ExitCode::from(2);
    };
    run(&sample, &plans).unwrap_or_else(|problem| {
        eprintln!("{problem}");
        ExitCode::from(2)
    })
}
