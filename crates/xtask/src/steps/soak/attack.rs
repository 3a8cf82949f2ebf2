//! A minute of every fuzz target.

use std::fs;

use super::{cargo_of, tool};
use crate::command::{self, target_folder};
use crate::step::Session;

const TARGETS: [&str; 6] = ["text", "job", "run", "c_abi", "batch", "monitor"];
/// What is a crash beside a panic: one input that takes long, or much memory.
const BOUNDS: [&str; 3] = ["-timeout=30", "-rss_limit_mb=4000", "-max_len=4096"];

/// What was found lies in target/fuzz/artifacts; it becomes a file of tests/attack/corpus, which every test run replays.
pub(in crate::steps) fn fuzz(session: &mut Session) -> Result<(), String> {
    let seconds = std::env::var("HILUM_FUZZ_SECONDS").unwrap_or_else(|_| "60".into());
    let program = tool(session, "cargo-fuzz")?;
    let folder = target_folder()?.join("fuzz");
    for target in TARGETS {
        let (corpus, found) = (folder.join("corpus").join(target), folder.join("artifacts").join(target));
        for folder in [&corpus, &found] {
            fs::create_dir_all(folder)
                .map_err(|why| format!("{} cannot be made: {why}.", folder.display()))?;
        }
        // `cargo fuzz` asks the cargo of its toolchain.
        let mut run = cargo_of(session, "nightly", &[]);
        let mut path = program.parent().map(|bin| bin.as_os_str().to_owned()).unwrap_or_default();
        path.push(":");
        path.push(std::env::var_os("PATH").unwrap_or_default());
        run.args(["fuzz", "run", "--fuzz-dir", "tests/fuzz", target]).arg(&corpus);
        run.arg(session.path("tests/attack/corpus").join(target)).arg("--");
        run.arg(format!("-max_total_time={seconds}")).arg(format!("-artifact_prefix={}/", found.display()));
        run.args(BOUNDS).env("PATH", path).env("CARGO_TARGET_DIR", &folder);
        let outcome = command::run(&mut run);
        session.check(format_args!("{target} for {seconds} s"), outcome);
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::*;

    #[test]
    fn every_target_is_run() {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/fuzz/targets");
        let mut there: Vec<String> = fs::read_dir(folder)
            .unwrap()
            .map(|file| file.unwrap().path().file_stem().unwrap().to_string_lossy().into_owned())
            .collect();
        there.sort();
        let mut run = TARGETS.map(str::to_owned).to_vec();
        run.sort();
        assert_eq!(there, run);
    }
}
