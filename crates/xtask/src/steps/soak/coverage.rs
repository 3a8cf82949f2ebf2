//! Which lines does no test run?

use std::process::Command;

use super::tool;
use crate::command::{self, target_folder};
use crate::step::Session;

/// cargo-llvm-cov over hilum and hilum-job: a table by file, and the lines themselves under target/coverage.
pub(in crate::steps) fn coverage(session: &mut Session) -> Result<(), String> {
    let program = tool(session, "cargo-llvm-cov")?;
    command::run(Command::new("rustup").args(["component", "add", "llvm-tools"]).current_dir(&session.root))?;
    let folder = target_folder()?.join("coverage");
    let mut run = Command::new(program);
    run.args([
        "llvm-cov",
        "--html",
        "--package",
        "hilum",
        "--package",
        "hilum-job",
        "--package",
        "hilum-tests",
    ]);
    run.args(["--lib", "--tests", "--ignore-filename-regex", "tests/|bindings/"])
        .arg("--output-dir")
        .arg(&folder);
    // It compares times, and a build that counts its lines is slow.
    run.args(["--", "--skip", "no_document_makes_planning_slow"]).current_dir(&session.root);
    session.check_command(&mut run);
    Ok(())
}
