//! What takes too long for every change.

use std::process::Command;

use crate::command::{self, cargo, target_folder};
use crate::step::Session;

pub(super) fn oracle(session: &mut Session) -> Result<(), String> {
    const SCRIPT: &str = "tests/oracle/run.py";
    if !session.path(SCRIPT).is_file() {
        return Err(format!("{SCRIPT} is not in this checkout."));
    }
    if Command::new("python3").arg("--version").output().is_err() {
        return Err("python3 is needed and was not found.".into());
    }
    command::run(&mut cargo(&session.root, &["build", "--release", "--example", "plan_day"]))?;
    let planner = target_folder()?.join("release/examples/plan_day");
    // The script splits the command as a shell does.
    let planner = format!("'{}' --json -", planner.display());
    let mut run = Command::new("python3");
    run.args([SCRIPT, "--plan-command", &planner, "--jobs", "2000", "--malformed"])
        .current_dir(&session.root);
    session.check_command(&mut run);
    Ok(())
}

/// The wrappers of the C library under Miri, which sees what `unsafe` must not do.
pub(super) fn miri_c(session: &mut Session) -> Result<(), String> {
    let folder = target_folder()?.join("miri");
    // Not through `cargo`: this one is of another toolchain.
    let mut test = Command::new("cargo");
    test.args(["+nightly", "miri", "test", "--package", "hilum-c", "--test", "wrappers", "--test", "rows"]);
    session.tests(
        test.env("CARGO_TARGET_DIR", folder).env_remove("RUSTUP_TOOLCHAIN").current_dir(&session.root),
    );
    Ok(())
}
