//! A step, and the session that runs steps and counts.

use std::fmt::Display;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode};
use std::time::{Duration, Instant};

use crate::command;
use crate::libtest::{Tally, failed_test, result_line};

/// Something that a person can run alone.
pub(crate) struct Step {
    pub(crate) name: &'static str,
    pub(crate) about: &'static str,
    /// An error is one failed check.
    pub(crate) run: fn(&mut Session) -> Result<(), String>,
}

/// What to do with a committed list that differs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Lists {
    Compare,
    Rewrite,
}

/// One call of `cargo xtask`.
pub(crate) struct Session {
    pub(crate) root: PathBuf,
    pub(crate) lists: Lists,
    tally: Tally,
    failures: Vec<String>,
}

impl Session {
    pub(crate) fn new(root: PathBuf, lists: Lists) -> Self {
        Self { root, lists, tally: Tally::default(), failures: Vec::new() }
    }

    /// Runs the steps, each to its end, and closes with the line that CI reads.
    pub(crate) fn run(&mut self, steps: &[&Step]) -> ExitCode {
        let mut table = Vec::new();
        let start = Instant::now();
        for step in steps {
            println!("\n== {}: {}", step.name, step.about);
            let (began, before) = (Instant::now(), self.tally);
            let known = self.failures.len();
            if let Err(problem) = (step.run)(self) {
                self.check(step.name, Err(problem));
            }
            for failure in self.failures.iter_mut().skip(known) {
                failure.insert_str(0, &format!("{}: ", step.name));
            }
            let (passed, failed) = (self.tally.passed - before.passed, self.tally.failed - before.failed);
            let row = row(step.name, began.elapsed(), Tally { passed, failed });
            println!("-- {row}");
            table.push(row);
        }
        self.close(&table, start.elapsed())
    }

    fn close(&self, table: &[String], elapsed: Duration) -> ExitCode {
        println!("\n== summary");
        for row in table.iter().chain([&row("in all", elapsed, self.tally)]) {
            println!("   {row}");
        }
        for failure in &self.failures {
            println!("FAILED {failure}");
        }
        println!("{} passed, {} failed", self.tally.passed, self.tally.failed);
        if self.tally.failed == 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE }
    }

    /// Counts one check that is no test.
    pub(crate) fn check(&mut self, name: impl Display, outcome: Result<(), String>) {
        match outcome {
            Ok(()) => {
                println!("ok     {name}");
                self.tally.passed += 1;
            }
            Err(problem) => {
                println!("FAILED {problem}");
                self.tally.failed += 1;
                self.failures.push(problem);
            }
        }
    }

    /// Runs a child as one check.
    pub(crate) fn check_command(&mut self, command: &mut Command) {
        let outcome = command::run(command);
        self.check(command::shown(command), outcome);
    }

    /// Runs tests and counts each of them.
    pub(crate) fn tests(&mut self, command: &mut Command) {
        let mut seen = Tally::default();
        let failures = &mut self.failures;
        let outcome = command::stream(command, |line| {
            seen += result_line(line).unwrap_or_default();
            failures.extend(failed_test(line).map(str::to_owned));
        });
        self.count_tests(seen, outcome);
    }

    fn count_tests(&mut self, seen: Tally, outcome: Result<(), String>) {
        self.tally += seen;
        match outcome {
            // Tests that did not build or died have no line of their own.
            Err(problem) if seen.failed == 0 => self.check("tests", Err(problem)),
            Err(problem) => self.failures.push(problem),
            Ok(()) if seen == Tally::default() => self.check("tests", Err("No test was run.".into())),
            Ok(()) => {}
        }
    }

    /// A path of the repository.
    pub(crate) fn path(&self, inside: impl AsRef<Path>) -> PathBuf {
        self.root.join(inside)
    }
}

fn row(name: &str, elapsed: Duration, tally: Tally) -> String {
    format!(
        "{name:<10} {:>7.1} s {:>6} passed {:>4} failed",
        elapsed.as_secs_f64(),
        tally.passed,
        tally.failed
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn counted(passed: u64, failed: u64, outcome: Result<(), String>) -> Tally {
        let mut session = Session::new(PathBuf::new(), Lists::Compare);
        session.count_tests(Tally { passed, failed }, outcome);
        session.tally
    }

    #[test]
    fn tests_count_one_by_one() {
        assert_eq!(counted(12, 0, Ok(())), Tally { passed: 12, failed: 0 });
        assert_eq!(counted(12, 2, Err("exit 101".into())), Tally { passed: 12, failed: 2 });
    }

    #[test]
    fn tests_that_do_not_build_or_do_not_exist_fail() {
        assert_eq!(counted(12, 0, Err("exit 101".into())), Tally { passed: 12, failed: 1 });
        assert_eq!(counted(0, 0, Ok(())), Tally { passed: 0, failed: 1 });
    }

    #[test]
    fn a_failing_step_does_not_stop_the_next() {
        let bad = Step { name: "bad", about: "", run: |_| Err("no".into()) };
        let good = Step {
            name: "good",
            about: "",
            run: |session| {
                session.check("one", Ok(()));
                Ok(())
            },
        };
        let mut session = Session::new(PathBuf::new(), Lists::Compare);
        assert_eq!(session.run(&[&bad, &good]), ExitCode::FAILURE);
        assert_eq!(session.tally, Tally { passed: 1, failed: 1 });
        assert_eq!(session.failures, ["bad: no"]);
        let mut session = Session::new(PathBuf::new(), Lists::Compare);
        assert_eq!(session.run(&[&good]), ExitCode::SUCCESS);
    }
}
