//! Every function with everything wrong: NULL, NaN, infinity, out of range, negative, unknown choices. One C program
//! is written from the header and one table of good values; each parameter and each field in turn is spoilt.
//! The function must refuse it with the right kind and leave the results untouched. What is not refused stands in
//! a list, with the reason, and must really not be refused.

mod accepted;
mod good;
mod write;

use std::fs;
use std::process::Command;

use crate::header;
use crate::program::{C11, SANITIZED, folder, run};
use crate::prototype::declared;

/// The program, and how many calls it makes.
fn program() -> std::path::PathBuf {
    let declared = declared(&header::committed());
    let path = folder("hostile").join("hostile.c");
    fs::write(&path, write::program(&declared)).unwrap();
    path
}

#[test]
fn bad_values_are_refused_and_results_stay_untouched() {
    let source = program();
    for way in [C11, SANITIZED] {
        let text = run(&mut Command::new(way.program(&source, &format!("hostile-{}", way.flags.len()))));
        let last = text.lines().last().unwrap();
        let calls: usize = last.split_whitespace().next().unwrap().parse().unwrap();
        assert!(last.ends_with("calls, 0 wrong") && calls > 2000, "{text}");
    }
}
