//! Plans a day of seed treating and prints the sheet that hangs on the treater.

mod arguments;
mod clock;
mod input;
mod number;
mod refusal;
mod sheet;
mod table;

use std::ffi::OsString;
use std::io::{self, ErrorKind, Write};
use std::process::ExitCode;

use hilum_job::document::{Job, Plan, Severity};

use arguments::{Asked, AtStop, Form, HELP, Request};

/// Exit codes: a plan, and one with a finding to stop at where that was asked for.
const DONE: u8 = 0;
const STOP: u8 = 3;

fn main() -> ExitCode {
    match run(std::env::args_os().skip(1), &mut io::stdout().lock()) {
        Ok(code) => code.into(),
        Err(message) => {
            // Nothing is left to do where not even this can be written.
            let _ = writeln!(io::stderr(), "{}", refusal::cut(&format!("plan_day: {message}")));
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
    let (job, plan) = planned(&request)?;
    print(&text(&request, &job, &plan)?, to)?;
    let stop = plan.findings.iter().any(|finding| finding.severity == Severity::Stop);
    Ok(if stop && request.at_stop == AtStop::Exit { STOP } else { DONE })
}

/// The job and its plan.
fn planned(request: &Request) -> Result<(Job, Plan), String> {
    let source = &request.source;
    let text = source.text().map_err(|message| format!("{source} {message}"))?;
    let job = Job::from_json(&text).map_err(|problems| refusal::message(source, &problems))?;
    let plan = hilum_job::plan(&job).map_err(|problems| refusal::message(source, &problems))?;
    Ok((job, plan))
}

/// The plan as it was asked for.
fn text(request: &Request, job: &Job, plan: &Plan) -> Result<String, String> {
    match request.form {
        Form::Sheet => Ok(sheet::write(job, plan)),
        Form::Json => plan.to_json().map(|json| json + "\n").map_err(|problems| problems.to_string()),
    }
}

/// Prints to someone who may stop listening, as `head` does.
fn print(text: &str, to: &mut impl Write) -> Result<(), String> {
    match to.write_all(text.as_bytes()).and_then(|()| to.flush()) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            Err(format!("the plan cannot be printed: {error}"))
        }
        _ => Ok(()),
    }
}

#[cfg(test)]
mod tests;
