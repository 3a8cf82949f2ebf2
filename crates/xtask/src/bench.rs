//! `cargo xtask bench`: one table of ratios, every row measured beside its rival in the same run.
//!
//! Times are told, never asserted. A program that measures prints one line of tab-separated columns per row:
//! what, rival, reach, ratio (median, 10 %, 90 %), time of ours in seconds (median, 10 %, 90 %). Columns may be empty;
//! lines without tabs are passed on. To add rows, add a row to benches/ or a program to `PROGRAMS`.

mod allocations;
mod cold;
mod machine;
mod table;
mod text;
mod web;

use std::fs;
use std::path::Path;
use std::process::Command;

use crate::command::{self, cargo};
use table::{Row, heading};

const RESULTS: &str = "benches/RESULTS.md";
/// What stands in the way of the rows that miss their reach.
const WHY: &str = "benches/why.md";

/// What measures rows.
struct Program {
    about: &'static str,
    rows: fn(&Path) -> Result<Vec<Row>, String>,
}

const PROGRAMS: &[Program] = &[
    Program { about: "Rust and C on this machine", rows: native },
    Program { about: "a text, beside libraries of units", rows: text::rows },
    Program { about: "cold builds", rows: cold::rows },
    Program { about: "the npm package", rows: web::rows },
];

pub(crate) fn run(root: &Path) -> Result<(), String> {
    let mut text = heading(&machine::described()?);
    for program in PROGRAMS {
        println!("\n== {}", program.about);
        text.push_str(&table::of(program.about, &(program.rows)(root)?));
    }
    text.push_str(&allocations::table(root)?);
    let why = fs::read_to_string(root.join(WHY)).map_err(|why| format!("{WHY} cannot be read: {why}."))?;
    text.push_str(&why);
    let path = root.join(RESULTS);
    fs::write(&path, &text).map_err(|why| format!("{RESULTS} cannot be written: {why}."))?;
    println!("\n{text}\nWritten to {RESULTS}.");
    Ok(())
}

fn native(root: &Path) -> Result<Vec<Row>, String> {
    measured(&mut cargo(
        root,
        &["run", "--release", "--quiet", "--package", "hilum-benches", "--bin", "hilum-benches"],
    ))
}

/// The rows that a program prints.
fn measured(program: &mut Command) -> Result<Vec<Row>, String> {
    let mut rows = Vec::new();
    command::stream(program, |line| rows.extend(Row::read(line.trim_end_matches('\n'))))?;
    Ok(rows)
}
