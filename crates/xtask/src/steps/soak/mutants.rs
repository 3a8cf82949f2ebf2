//! Is a changed line caught?

use std::path::Path;
use std::process::Command;

use super::tool;
use crate::command::target_folder;
use crate::step::Session;

/// Parts of the work over the core, one after the other: `HILUM_SHARD=3` runs one of them alone.
const SHARDS: u32 = 8;
/// So many mutants of hilum-job, drawn by this seed or by `HILUM_SEED`: `HILUM_SHARD=job` runs them alone.
const SAMPLE: usize = 300;
const SEED: u64 = 20_270_414;

/// cargo-mutants over the core and a sample of hilum-job, with the tests that can catch: unit tests, check values,
/// properties, documents, planner and replayed attacks. What no test caught is listed in tests/MUTANTS.md.
pub(in crate::steps) fn mutants(session: &mut Session) -> Result<(), String> {
    let program = tool(session, "cargo-mutants")?;
    let only = std::env::var("HILUM_SHARD").ok();
    let is_wanted = |part: &str| only.as_deref().is_none_or(|only| only == part);
    for shard in (0..SHARDS).map(|shard| shard.to_string()).filter(|shard| is_wanted(shard)) {
        let mut run = over(session, &program, "hilum", &shard)?;
        run.arg("--shard").arg(format!("{shard}/{SHARDS}"));
        session.check_command(with_tests(&mut run));
    }
    if is_wanted("job") {
        let seed = std::env::var("HILUM_SEED").ok().and_then(|seed| seed.parse().ok()).unwrap_or(SEED);
        let mut run = over(session, &program, "hilum-job", "job")?;
        for name in sample(&listed(session, &program)?, seed) {
            run.arg("--re").arg(format!("^{}$", escaped(&name)));
        }
        session.check_command(with_tests(&mut run));
    }
    Ok(())
}

/// Its caught, missed and timed out mutants are listed in the output folder; a missed one is a failure.
fn over(session: &Session, program: &Path, package: &str, part: &str) -> Result<Command, String> {
    let mut run = Command::new(program);
    run.args(["mutants", "--package", package, "--test-package", "hilum,hilum-job,hilum-tests,hilum-attack"]);
    run.args(["--jobs", "1", "--minimum-test-timeout", "120", "--no-shuffle"]);
    run.arg("--output").arg(target_folder()?.join(format!("mutants-{part}"))).current_dir(&session.root);
    Ok(run)
}

fn with_tests(run: &mut Command) -> &mut Command {
    run.args(["--", "--lib", "--tests"])
}

fn listed(session: &Session, program: &Path) -> Result<Vec<String>, String> {
    let mut list = Command::new(program);
    list.args(["mutants", "--list", "--package", "hilum-job"]).current_dir(&session.root);
    let output = list.output().map_err(|error| format!("cargo-mutants cannot be run: {error}"))?;
    Ok(String::from_utf8_lossy(&output.stdout).lines().map(str::to_owned).collect())
}

/// The first of a shuffled deck (Fisher and Yates, by xorshift64*).
fn sample(names: &[String], seed: u64) -> Vec<String> {
    let (mut names, mut state) = (names.to_vec(), seed.max(1));
    for place in 0..SAMPLE.min(names.len()) {
        state ^= state >> 12;
        state ^= state << 25;
        state ^= state >> 27;
        let left = u64::try_from(names.len() - place).unwrap_or(1);
        let draw = (state.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 11) % left;
        names.swap(place, place + usize::try_from(draw).unwrap_or(0));
    }
    names.truncate(SAMPLE);
    names
}

/// As a regular expression that matches only this text.
fn escaped(text: &str) -> String {
    let mut escaped = String::new();
    for c in text.chars() {
        if r"\.+*?()|[]{}^$".contains(c) {
            escaped.push('\\');
        }
        escaped.push(c);
    }
    escaped
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sample_is_drawn_once_each_and_the_same_by_the_same_seed() {
        let names: Vec<String> = (0..1_000).map(|n| n.to_string()).collect();
        let drawn = sample(&names, SEED);
        let mut once = drawn.clone();
        once.sort();
        once.dedup();
        assert_eq!((drawn.len(), once.len()), (SAMPLE, SAMPLE));
        assert_eq!(drawn, sample(&names, SEED));
        assert_ne!(drawn, sample(&names, SEED + 1));
        assert_eq!(escaped("a.rs:3: replace * with &'b[f64]"), r"a\.rs:3: replace \* with &'b\[f64\]");
    }
}
