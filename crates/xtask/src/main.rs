//! `cargo xtask`: everything that a person or CI runs on this repository.

mod bench;
mod bom;
mod command;
mod dist;
mod libtest;
mod step;
mod steps;
mod tools;

use std::process::ExitCode;

use step::{Session, Step};

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    match run(&arguments) {
        Ok(code) => code,
        Err(problem) => {
            eprintln!("{problem}");
            ExitCode::from(2)
        }
    }
}

fn run(arguments: &[String]) -> Result<ExitCode, String> {
    let is_help = |word: &String| matches!(word.as_str(), "--help" | "-h" | "help");
    let words: Vec<&str> = arguments.iter().map(String::as_str).filter(|word| *word != "--bless").collect();
    let blesses = words.len() < arguments.len();
    match words.as_slice() {
        [] => print!("{}", help()),
        ["soak", ..] if arguments.iter().any(is_help) => print!("{}", soak_help()),
        _ if arguments.iter().any(is_help) => print!("{}", help()),
        ["soak", names @ ..] => return Ok(session(blesses)?.run(&chosen(steps::SOAK, names)?)),
        // Of soak, but people look for it by its name.
        ["spark"] => return Ok(session(blesses)?.run(&chosen(steps::SOAK, &["spark"])?)),
        ["dist", words @ ..] => dist::run(&command::repository()?, words)?,
        ["bench"] => bench::run(&command::repository()?)?,
        ["test"] => return Ok(session(blesses)?.run(&chosen(steps::TEST, &[])?)),
        names => return Ok(session(blesses)?.run(&chosen(steps::TEST, names)?)),
    }
    Ok(ExitCode::SUCCESS)
}

fn session(blesses: bool) -> Result<Session, String> {
    Ok(Session::new(
        command::repository()?,
        if blesses { step::Lists::Rewrite } else { step::Lists::Compare },
    ))
}

/// The named steps in the order in which they are named; all of them when none is.
fn chosen<'a>(steps: &'a [Step], names: &[&str]) -> Result<Vec<&'a Step>, String> {
    if names.is_empty() {
        return Ok(steps.iter().collect());
    }
    names
        .iter()
        .map(|name| {
            steps.iter().find(|step| step.name == *name).ok_or_else(|| {
                format!("There is no step \"{name}\" here; `cargo xtask --help` lists the steps.")
            })
        })
        .collect()
}

fn help() -> String {
    format!(
        "Usage: cargo xtask test             every step below, as CI does
       cargo xtask STEP [STEP...]   only the named steps
       cargo xtask api --bless      rewrite the lists of the public API
       cargo xtask dist c --prefix DIR   install the C library
       cargo xtask bench            measure, and write benches/RESULTS.md
       cargo xtask soak [NAME...]   what takes longer; `cargo xtask soak --help` lists it
       cargo xtask spark            of it, a season on Apache Spark

Steps:
{}

A run goes on after a step that failed, and ends with the line \"N passed, N failed\".
",
        list(steps::TEST)
    )
}

fn soak_help() -> String {
    format!(
        "Usage: cargo xtask soak             everything below
       cargo xtask soak NAME...     only what is named

Longer checks, which `cargo xtask test` never runs:
{}
",
        list(steps::SOAK)
    )
}

fn list(steps: &[Step]) -> String {
    let lines: Vec<String> = steps.iter().map(|step| format!("  {:<10} {}", step.name, step.about)).collect();
    lines.join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn help_names_every_step() {
        let help = help();
        assert!(steps::TEST.iter().all(|step| help.contains(&format!("  {:<10} {}", step.name, step.about))));
        assert!(steps::SOAK.iter().all(|step| soak_help().contains(step.about)));
    }

    #[test]
    fn steps_are_chosen_in_the_order_named() {
        let names: Vec<&str> =
            chosen(steps::TEST, &["words", "fmt"]).unwrap().iter().map(|step| step.name).collect();
        assert_eq!(names, ["words", "fmt"]);
        assert_eq!(chosen(steps::TEST, &[]).unwrap().len(), steps::TEST.len());
    }

    #[test]
    fn an_unknown_step_is_named() {
        assert!(chosen(steps::TEST, &["fmt", "frobnicate"]).err().unwrap().contains("\"frobnicate\""));
        // What takes long is not reached through `cargo xtask STEP`.
        assert!(chosen(steps::TEST, &["oracle"]).is_err());
    }
}
