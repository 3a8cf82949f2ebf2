//! The command line.

use std::ffi::OsString;

use crate::input::Source;

/// What the command line asks for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Asked {
    /// How to call this program.
    Help,
    /// A plan.
    Plan(Request),
}

/// A plan of a job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Request {
    /// Where the job comes from.
    pub(crate) source: Source,
    /// How the plan is printed.
    pub(crate) form: Form,
    /// What a finding to stop at does.
    pub(crate) at_stop: AtStop,
}

/// How a plan is printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Form {
    /// The sheet, for people.
    Sheet,
    /// The plan document, for programs.
    Json,
}

/// What a finding to stop at does to the exit code.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum AtStop {
    /// Nothing.
    Go,
    /// Exit 3.
    Exit,
}

/// How to call this program.
pub(crate) const HELP: &str = "\
plan_day plans a day or a week of seed treating and prints the sheet for the treater.

    cargo run --release --example plan_day                      plans a built-in demo job
    cargo run --release --example plan_day -- JOB.json          plans a job from a file
    cargo run --release --example plan_day -- -                 plans a job from standard input

    --json      prints the plan document alone
    --strict    exits 3 if the plan has a finding to stop at
    --help      prints this

Exits 0 with a plan, 1 with a message on standard error if there is none. Demo jobs: examples/jobs/
";

/// Reads the command line; else what is wrong with it.
pub(crate) fn read(arguments: impl IntoIterator<Item = OsString>) -> Result<Asked, String> {
    let mut request = Request { source: Source::Demo, form: Form::Sheet, at_stop: AtStop::Go };
    for argument in arguments {
        match argument.to_str() {
            Some("--help" | "-h") => return Ok(Asked::Help),
            Some("--json") => request.form = Form::Json,
            Some("--strict") => request.at_stop = AtStop::Exit,
            Some(option) if option.len() > 1 && option.starts_with('-') => {
                return Err(format!("{option:?} is not an option here; --help lists them"));
            }
            _ if request.source == Source::Demo => request.source = argument.into(),
            _ => {
                return Err(format!("{} is one job too many; give one file, or - alone", argument.display()));
            }
        }
    }
    Ok(Asked::Plan(request))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read_words(words: &[&str]) -> Result<Asked, String> {
        read(words.iter().map(OsString::from))
    }

    #[test]
    fn nothing_asks_for_the_demo() {
        let demo = Request { source: Source::Demo, form: Form::Sheet, at_stop: AtStop::Go };
        assert_eq!(read_words(&[]), Ok(Asked::Plan(demo)));
    }

    #[test]
    fn options_stand_anywhere() {
        let wanted =
            Request { source: Source::File("job.json".into()), form: Form::Json, at_stop: AtStop::Exit };
        assert_eq!(read_words(&["--json", "job.json", "--strict"]), Ok(Asked::Plan(wanted)));
        assert_eq!(read_words(&["-", "--help"]), Ok(Asked::Help));
    }

    #[test]
    fn an_unknown_option_and_a_second_job_are_refused() {
        assert!(read_words(&["--jsn"]).unwrap_err().contains("--jsn"));
        assert!(read_words(&["a.json", "b.json"]).unwrap_err().contains("b.json"));
    }
}
