//! Is a changed line caught?

use std::process::Command;

use super::tool;
use crate::command::target_folder;
use crate::step::Session;

/// Parts of the work, one after the other: `HILUM_SHARD=3` runs one of them alone.
const SHARDS: u32 = 8;

/// cargo-mutants over the core with the tests that can catch: its own and the runner of the check values and properties.
pub(in crate::steps) fn mutants(session: &mut Session) -> Result<(), String> {
    let program = tool(session, "cargo-mutants")?;
    let only: Option<u32> = std::env::var("HILUM_SHARD").ok().and_then(|shard| shard.parse().ok());
    for shard in (0..SHARDS).filter(|shard| only.is_none_or(|only| only == *shard)) {
        let mut run = Command::new(&program);
        run.args(["mutants", "--package", "hilum", "--test-package", "hilum,hilum-tests,hilum-attack"]);
        run.args(["--jobs", "1", "--minimum-test-timeout", "120", "--no-shuffle"]);
        run.arg("--shard").arg(format!("{shard}/{SHARDS}"));
        run.arg("--output").arg(target_folder()?.join(format!("mutants-{shard}"))).current_dir(&session.root);
        // Its caught, missed and timed out mutants are listed in the output folder; a missed one is a failure.
        session.check_command(&mut run);
    }
    Ok(())
}
