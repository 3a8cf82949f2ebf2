//! The same bits everywhere: one table over every target.

use std::fs;
use std::process::Command;

use super::cargo_of;
use crate::command::{self, cargo, target_folder};
use crate::step::Session;
use crate::steps::{controller, wasm, web};

const BIG_ENDIAN: &str = "s390x-unknown-linux-gnu";
/// Prints every check value with the bits of what came out.
const VECTORS: [&str; 9] =
    ["run", "--quiet", "--package", "hilum-wasm", "--features", "describe", "--bin", "describe", "--"];

/// What a target came to.
struct Row {
    target: &'static str,
    cases: usize,
    /// A sum over the bits of all results; where the target compares by itself, of what it agreed with.
    bits: u64,
    how: &'static str,
}

pub(in crate::steps) fn parity(session: &mut Session) -> Result<(), String> {
    let mut rows = Vec::new();
    rust(session, &mut rows)?;
    let (cases, bits) = (rows.first().map_or(0, |row| row.cases), rows.first().map_or(0, |row| row.bits));
    let agreed = |target| Row { target, cases, bits, how: "its own comparison, bit by bit" };
    if c(session, cases) {
        rows.push(agreed("C"));
    }
    for (target, outcome) in [("Node", node(session, cases)), ("Chromium", chromium(session, cases))] {
        let is_right = outcome.is_ok();
        session.check(target, outcome);
        if is_right {
            rows.push(agreed(target));
        }
    }
    let outcome = controller::values_alone(session);
    let is_right = outcome.as_ref().is_ok_and(|count| *count == cases);
    session.check("Cortex-M4F under QEMU", outcome.and_then(|count| counted(count, cases)));
    if is_right {
        rows.push(agreed("Cortex-M4F"));
    }
    println!("\n{:<14}{:>6}  {:<16}  how", "target", "cases", "bits");
    for row in &rows {
        println!("{:<14}{:>6}  {:016x}  {}", row.target, row.cases, row.bits, row.how);
    }
    let all = rows.iter().all(|row| (row.cases, row.bits) == (cases, bits)) && rows.len() == 7;
    session.check(
        "all targets have the same counts and bits",
        if all { Ok(()) } else { Err("They differ, or one is missing.".into()) },
    );
    Ok(())
}

fn counted(count: usize, cases: usize) -> Result<(), String> {
    if count == cases { Ok(()) } else { Err(format!("{count} cases, where Rust has {cases}.")) }
}

/// FNV-1a, as its authors define it.
fn sum(text: &str) -> u64 {
    text.bytes()
        .fold(0xcbf2_9ce4_8422_2325, |sum, byte| (sum ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3))
}

fn rust(session: &mut Session, rows: &mut Vec<Row>) -> Result<(), String> {
    let parts = ["component", "add", "miri", "rust-src", "--toolchain", "nightly"];
    command::run(Command::new("rustup").args(parts))?;
    let mut release = cargo(&session.root, &["run", "--release"]);
    release.args(&VECTORS[1..]);
    let mut miri = cargo_of(session, "nightly", &["miri"]);
    let folder = target_folder()?.join("miri");
    miri.args(["run", "--target", BIG_ENDIAN]).args(&VECTORS[1..]).env("CARGO_TARGET_DIR", folder);
    let ways =
        [("Rust debug", cargo(&session.root, &VECTORS)), ("Rust release", release), ("Rust s390x", miri)];
    for (target, mut way) in ways {
        let text = command::output(way.arg("vectors"));
        match text {
            Ok(text) => {
                rows.push(Row {
                    target,
                    cases: text.lines().count(),
                    bits: sum(&text),
                    how: "its own results",
                });
                session.check(target, Ok(()));
            }
            Err(why) => session.check(target, Err(why)),
        }
    }
    if rows.len() == 3 { Ok(()) } else { Err("Rust alone is not the same everywhere.".into()) }
}

/// The test writes the lines, and its program says of each whether it agrees.
fn c(session: &mut Session, cases: usize) -> bool {
    let mut test = cargo(
        &session.root,
        &["test", "--package", "hilum-c", "--test", "c", "--", "every_check_value_agrees"],
    );
    let outcome = command::run(&mut test).and_then(|()| {
        let lines = target_folder()?.join("tmp/values/values.txt");
        let lines = fs::read_to_string(&lines).map_err(|why| format!("{}: {why}.", lines.display()))?;
        counted(lines.lines().count(), cases)
    });
    let is_right = outcome.is_ok();
    session.check("C", outcome);
    is_right
}

fn node(session: &mut Session, cases: usize) -> Result<(), String> {
    if !session.path(wasm::PACKAGE).join("dist/hilum.js").is_file()
        || !wasm::work()?.join("vectors.txt").is_file()
    {
        wasm::wasm(session)?;
    }
    reported(wasm::node(session, wasm::PACKAGE, &["--test", "test/check_values.test.mjs"]), cases)
}

fn chromium(session: &mut Session, cases: usize) -> Result<(), String> {
    web::chromium()?;
    reported(wasm::node(session, wasm::PACKAGE, &["--test", "browser/check_values.test.mjs"]), cases)
}

/// A run of Node's tests that tells how many check values agreed.
fn reported(mut tests: Command, cases: usize) -> Result<(), String> {
    let mut count = 0;
    command::stream(tests.env("HILUM_WORK", wasm::work()?), |line| {
        let words = line.split_once(" check values: ").map(|(before, _)| before);
        let number = words.and_then(|before| before.rsplit(' ').next()).and_then(|word| word.parse().ok());
        count = number.unwrap_or(count);
    })?;
    counted(count, cases)
}

#[cfg(test)]
mod tests {
    use super::*;

    // The authors' test vectors: http://www.isthe.com/chongo/tech/comp/fnv/, quoted from memory.
    #[test]
    fn the_sum_is_fnv_1a() {
        assert_eq!(sum(""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(sum("a"), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(sum("foobar"), 0x8594_4171_f739_67e8);
    }
}
