//! Runs the check values of `tests/data` on this machine and prints what they came to, by function.
//!
//!     cargo run --release --example self_check

use std::collections::BTreeMap;
use std::io::{self, Write};
use std::process::ExitCode;

use hilum_check::{Kind, Outcome, TABLE, Verdict, run_all, sources};

const KINDS: [Kind; 5] = [Kind::Published, Kind::Standard, Kind::Practice, Kind::Worked, Kind::Identity];

/// What the cases of one function came to.
#[derive(Default)]
struct Row {
    cases: u32,
    refused: u32,
    wrong: u32,
    /// The largest deviation, as a fraction of the tolerance.
    worst: f64,
    kinds: BTreeMap<Kind, u32>,
}

impl Row {
    fn add(&mut self, outcome: &Outcome) {
        self.cases += 1;
        match outcome.verdict {
            Verdict::Within(deviation) => {
                self.worst = self.worst.max(deviation);
                *self.kinds.entry(outcome.kind()).or_default() += 1;
            }
            Verdict::Refused(_) => self.refused += 1,
            Verdict::Wrong(_) => self.wrong += 1,
        }
    }

    fn add_row(&mut self, row: &Self) {
        self.cases += row.cases;
        self.refused += row.refused;
        self.wrong += row.wrong;
        self.worst = self.worst.max(row.worst);
        for (kind, n) in &row.kinds {
            *self.kinds.entry(*kind).or_default() += n;
        }
    }

    fn print(&self, name: &str, out: &mut impl Write) -> io::Result<()> {
        write!(out, "{name:<26}{:>6}{:>8}", self.cases, self.refused)?;
        write!(out, "{:>9.1} %", self.worst * 100.0)?;
        for kind in KINDS {
            match self.kinds.get(&kind) {
                Some(n) => write!(out, "{n:>11}")?,
                None => write!(out, "{:>11}", "")?,
            }
        }
        writeln!(out, "{}", if self.wrong > 0 { format!("  {} WRONG", self.wrong) } else { String::new() })
    }
}

fn main() -> ExitCode {
    let outcomes = match run_all() {
        Ok(outcomes) => outcomes,
        Err(error) => {
            eprintln!("The check values cannot be run: {error}.");
            return ExitCode::FAILURE;
        }
    };
    let wrong = outcomes.iter().any(|outcome| matches!(outcome.verdict, Verdict::Wrong(_)));
    if print(&outcomes, &mut io::stdout().lock()).is_err() || wrong {
        return ExitCode::FAILURE;
    }
    ExitCode::SUCCESS
}

fn print(outcomes: &[Outcome], out: &mut impl Write) -> io::Result<()> {
    writeln!(out, "Check values of Hilum\n")?;
    write!(out, "{:<26}{:>6}{:>8}{:>11}", "function", "cases", "refused", "worst")?;
    for kind in KINDS {
        write!(out, "{:>11}", kind.name())?;
    }
    writeln!(out)?;
    let mut total = Row::default();
    for function in TABLE {
        let mut row = Row::default();
        outcomes.iter().filter(|outcome| outcome.function() == function.name).for_each(|o| row.add(o));
        row.print(function.name, out)?;
        total.add_row(&row);
    }
    total.print("all", out)?;
    writeln!(out, "\nrefused: bad input that must be refused, and is; the kinds count the others.")?;
    writeln!(
        out,
        "worst: the largest deviation, as a share of its tolerance. A printed value is rounded, and its"
    )?;
    writeln!(out, "tolerance is half a unit of its last digit: up to 100 % is agreement.")?;
    disagreements(outcomes, out)?;
    failures(outcomes, out)
}

/// Sources whose figure exact arithmetic does not give, with the reason.
fn disagreements(outcomes: &[Outcome], out: &mut impl Write) -> io::Result<()> {
    let titles = sources().unwrap_or_default();
    writeln!(out, "\nSources that print something else than exact arithmetic gives:")?;
    for outcome in outcomes {
        if let Some(why) = &outcome.case.disagrees {
            let title = titles.get(&outcome.case.source).map_or("", |source| source.title.as_str());
            writeln!(out, "  {} ({title}): {why}", outcome.id())?;
        }
    }
    Ok(())
}

fn failures(outcomes: &[Outcome], out: &mut impl Write) -> io::Result<()> {
    let mut failed = 0;
    for outcome in outcomes {
        if let Verdict::Wrong(why) = &outcome.verdict {
            failed += 1;
            writeln!(out, "\nWRONG  {}: {why}", outcome.id())?;
        }
    }
    writeln!(out, "\n{} passed, {failed} failed", outcomes.len() - failed)
}
