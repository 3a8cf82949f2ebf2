//! Every check value through C: the same texts in, the same bits out, or the same refusal.

use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::fs;
use std::process::Command;

use hilum_check::Amount;

use crate::program::{C11, SANITIZED, folder, run, sources};

/// One line per case, as `programs/values.h` says.
pub(crate) fn lines() -> Vec<String> {
    let line = |outcome: hilum_check::Outcome| {
        let mut line = format!("{}\t{}", outcome.case.id, outcome.case.function);
        for (name, amount) in &outcome.case.inputs.0 {
            let _ = match amount {
                Amount::Text(text) => write!(line, "\t{name}={text}"),
                Amount::Number(number) => write!(line, "\t{name}={number:?}"),
            };
        }
        match &outcome.result {
            Ok(values) => {
                for value in values {
                    let _ = write!(line, "\t>{}={:016x}", value.name, value.base.to_bits());
                }
            }
            Err(refusal) => {
                let _ = write!(line, "\t!{}", refusal.code().unwrap());
            }
        }
        line
    };
    hilum_check::run_all().unwrap().into_iter().map(line).collect()
}

#[test]
fn every_check_value_agrees_bit_for_bit() {
    let lines = lines();
    let file = folder("values").join("values.txt");
    fs::write(&file, lines.join("\n") + "\n").unwrap();
    let expected = format!("{0} of {0} check values agree bit for bit\n", lines.len());
    let source = sources().join("values.c");
    for (way, name) in [(C11, "values"), (SANITIZED, "values-sanitized")] {
        assert_eq!(run(Command::new(way.program(&source, name)).arg(&file)), expected);
    }
}

#[test]
fn one_wrong_bit_is_seen() {
    let mut lines = lines();
    let first = lines.iter_mut().find(|line| line.contains("\t>")).unwrap();
    let last = if first.ends_with('0') { '1' } else { '0' };
    first.pop();
    first.push(last);
    let file = folder("values").join("wrong.txt");
    fs::write(&file, lines.join("\n")).unwrap();
    let program = C11.program(&sources().join("values.c"), "values-wrong");
    let output = Command::new(program).arg(&file).output().unwrap();
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    assert!(text.ends_with(&format!(
        "{} of {} check values agree bit for bit\n",
        lines.len() - 1,
        lines.len()
    )));
    assert!(!output.status.success());
}

#[test]
fn every_function_of_the_check_values_is_there() {
    let source = fs::read_to_string(sources().join("values.c")).unwrap();
    let known: BTreeSet<&str> = hilum_check::TABLE.iter().map(|function| function.name).collect();
    let missing: Vec<_> = known.iter().filter(|name| !source.contains(&format!("{{\"{name}\","))).collect();
    assert!(missing.is_empty(), "{missing:?}");
}
