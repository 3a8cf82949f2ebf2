//! Accounts for a day of seed treating and prints what was really applied, with the record of it.

// What it shares with the sheet of the day.
#[path = "../plan_day/arguments.rs"]
#[allow(dead_code, reason = "its help is that of plan_day")]
mod arguments;
#[path = "../plan_day/clock.rs"]
#[allow(dead_code, reason = "the sheet of the day uses all of it")]
mod clock;
#[path = "../plan_day/input.rs"]
mod input;
#[path = "../plan_day/number.rs"]
#[allow(dead_code, reason = "the sheet of the day uses all of it")]
mod number;
#[path = "../plan_day/refusal.rs"]
mod refusal;
#[path = "../plan_day/table.rs"]
mod table;

mod sheet;

use std::ffi::OsString;
use std::io::{self, ErrorKind, Write};
use std::process::ExitCode;

use hilum_job::document::{Account, Run, Severity};

use arguments::{Asked, AtStop, Form, Request};
use input::Source;

/// Exit codes: an account, and one with a finding to stop at where that was asked for.
const DONE: u8 = 0;
const STOP: u8 = 3;

/// The demo.
const DEMO: &str = include_str!("../runs/dealer_day_run.json");

/// How to call this program.
const HELP: &str = "\
close_day accounts for a day of seed treating: what was really applied, and the record of it.

    cargo run --release --example close_day                     accounts for a built-in demo run
    cargo run --release --example close_day -- RUN.json         accounts for a run from a file
    cargo run --release --example close_day -- -                accounts for a run from standard input

    --json      prints the account document alone
    --strict    exits 3 if the account has a finding to stop at
    --help      prints this

Exits 0 with an account, 1 with a message on standard error if there is none. Demo runs: examples/runs/
";

fn main() -> ExitCode {
    match run(std::env::args_os().skip(1), &mut io::stdout().lock()) {
        Ok(code) => code.into(),
        Err(message) => {
            // Nothing is left to do where not even this can be written.
            let _ = writeln!(io::stderr(), "{}", refusal::cut(&format!("close_day: {message}")));
            ExitCode::FAILURE
        }
    }
}

/// Does what the command line asks for; else what is wrong, in words.
fn run(arguments: impl IntoIterator<Item = OsString>, to: &mut impl Write) -> Result<u8, String> {
    let request = match arguments::read(arguments)? {
        Asked::Help => return print(HELP, to).map(|()| DONE),
        Asked::Plan(request) => request,
    };
    let (run, account) = accounted(&request.source)?;
    print(&text(&request, &run, &account)?, to)?;
    let stop = account.findings.iter().any(|finding| finding.severity == Severity::Stop);
    Ok(if stop && request.at_stop == AtStop::Exit { STOP } else { DONE })
}

/// The run and its account.
fn accounted(source: &Source) -> Result<(Run, Account), String> {
    let text = match source {
        Source::Demo => Ok(DEMO.to_owned()),
        source => source.text().map_err(|message| format!("{source} {message}")),
    }?;
    let run = Run::from_json(&text).map_err(|problems| refusal::message(source, &problems))?;
    let account = hilum_job::account(&run).map_err(|problems| refusal::message(source, &problems))?;
    Ok((run, account))
}

/// The account as it was asked for.
fn text(request: &Request, run: &Run, account: &Account) -> Result<String, String> {
    match request.form {
        Form::Sheet => Ok(sheet::write(run, account)),
        Form::Json => account.to_json().map(|json| json + "\n").map_err(|problems| problems.to_string()),
    }
}

/// Prints to someone who may stop listening, as `head` does.
fn print(text: &str, to: &mut impl Write) -> Result<(), String> {
    match to.write_all(text.as_bytes()).and_then(|()| to.flush()) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            Err(format!("the account cannot be printed: {error}"))
        }
        _ => Ok(()),
    }
}

#[cfg(test)]
mod tests;
