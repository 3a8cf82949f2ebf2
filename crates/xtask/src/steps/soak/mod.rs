//! What takes too long for every change.

mod attack;
mod coverage;
mod mutants;
mod parity;
pub(crate) mod rivals;
mod supply;

pub(super) use attack::fuzz;
pub(super) use coverage::coverage;
pub(super) use mutants::mutants;
pub(super) use parity::parity;
pub(super) use rivals::rivals;
pub(super) use supply::supply;

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

/// A cargo of another toolchain.
fn cargo_of(session: &Session, toolchain: &str, arguments: &[&str]) -> Command {
    let mut command = Command::new("cargo");
    command.arg(format!("+{toolchain}")).args(arguments).env_remove("RUSTUP_TOOLCHAIN").env_remove("CARGO");
    command.current_dir(&session.root);
    command
}

/// A subcommand of cargo that is no part of it; built once, beside what cargo builds.
fn tool(session: &Session, name: &str) -> Result<std::path::PathBuf, String> {
    let folder = target_folder()?.join("tools");
    let program = folder.join("bin").join(name);
    if !program.is_file() {
        let root = folder.to_string_lossy().into_owned();
        command::run(&mut cargo(&session.root, &["install", "--locked", "--root", &root, name]))?;
    }
    Ok(program)
}

/// A Python with packages from its registry; built once.
pub(crate) fn python(root: &std::path::Path, packages: &[&str]) -> Result<std::path::PathBuf, String> {
    let folder = target_folder()?.join("python");
    let program = folder.join("bin/python");
    if !program.is_file() {
        command::run(Command::new("python3").args(["-m", "venv"]).arg(&folder).current_dir(root))?;
    }
    let mut install = Command::new(&program);
    command::run(
        install.args(["-m", "pip", "install", "--quiet", "--disable-pip-version-check"]).args(packages),
    )?;
    Ok(program)
}
