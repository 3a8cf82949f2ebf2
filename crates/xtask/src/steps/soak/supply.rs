//! What the published crates stand on: licences, sources, the oldest compiler, the oldest dependencies, the bills of materials.

use std::fs;
use std::path::Path;
use std::process::Command;

use super::{cargo_of, python, tool};
use crate::bom;
use crate::command::{self, target_folder};
use crate::step::Session;

/// `rust-version` of the workspace; a test holds the two equal.
const OLDEST: &str = "1.88.0";
const CHECKED: [&str; 6] = ["--package", "hilum", "--package", "hilum-job", "--package", "hilum-c"];

pub(in crate::steps) fn supply(session: &mut Session) -> Result<(), String> {
    licences(session)?;
    oldest_compiler(session);
    oldest_dependencies(session)?;
    bills(session)
}

/// Licences, bans and sources by .deny.toml. The database of advisories is asked where it can be reached.
fn licences(session: &mut Session) -> Result<(), String> {
    let program = tool(session, "cargo-deny")?;
    let mut deny = Command::new(program);
    deny.args(["--all-features", "--config", ".deny.toml", "check", "bans", "licenses", "sources"]);
    session.check_command(deny.current_dir(&session.root));
    Ok(())
}

/// The crates build with the compiler that they promise to build with.
fn oldest_compiler(session: &mut Session) {
    let install = ["toolchain", "install", OLDEST, "--profile", "minimal", "--no-self-update"];
    let outcome = command::run(Command::new("rustup").args(install)).and_then(|()| {
        let folder = target_folder()?.join("oldest");
        let mut check = cargo_of(session, OLDEST, &["check", "--locked", "--all-features"]);
        command::run(check.args(CHECKED).env("CARGO_TARGET_DIR", folder))
    });
    session.check(format_args!("Rust {OLDEST} builds the published crates"), outcome);
}

/// The versions in the manifests are true: the least of each is enough. In a copy, whose Cargo.lock is another.
fn oldest_dependencies(session: &mut Session) -> Result<(), String> {
    let copy = target_folder()?.join("minimal");
    let unwritten = |why: std::io::Error| format!("{} cannot be written: {why}.", copy.display());
    if copy.exists() {
        fs::remove_dir_all(&copy).map_err(unwritten)?;
    }
    let files = command::output(Command::new("git").args(["ls-files"]).current_dir(&session.root))?;
    for file in files.lines() {
        let to = copy.join(file);
        if let Some(folder) = to.parent() {
            fs::create_dir_all(folder).map_err(unwritten)?;
        }
        fs::copy(session.path(file), &to).map_err(unwritten)?;
    }
    alone(&copy.join("Cargo.toml"))?;
    let mut update = cargo_of(session, "nightly", &["update", "-Z", "direct-minimal-versions"]);
    let mut check = cargo_of(session, "stable", &["check", "--all-features"]);
    let folder = target_folder()?.join("minimal-target");
    let outcome = command::run(update.current_dir(&copy))
        .and_then(|()| command::run(check.args(CHECKED).env("CARGO_TARGET_DIR", folder).current_dir(&copy)));
    session.check("the published crates build with the oldest dependencies that they allow", outcome);
    Ok(())
}

/// Leaves the tools and tests out of a workspace: they need newer versions than what is published does.
fn alone(manifest: &Path) -> Result<(), String> {
    let unusable = |why| format!("{} cannot be used: {why}.", manifest.display());
    let text = fs::read_to_string(manifest).map_err(unusable)?;
    let lines = text.lines().filter(|line| !line.starts_with("default-members")).map(|line| {
        if line.starts_with("members = ") {
            "members = [\"crates/hilum\", \"crates/hilum-job\", \"bindings/c\", \"tests/check\"]"
        } else {
            line
        }
    });
    fs::write(manifest, lines.collect::<Vec<_>>().join("\n")).map_err(unusable)
}

/// The bills of materials are what CycloneDX says they are, by its own schema.
fn bills(session: &mut Session) -> Result<(), String> {
    const CHECK: &str = "import sys
from cyclonedx.schema import SchemaVersion
from cyclonedx.validation.json import JsonStrictValidator
error = JsonStrictValidator(SchemaVersion.V1_6).validate_str(open(sys.argv[1]).read())
sys.exit(str(error) if error else 0)";
    let python = python(&session.root, &["cyclonedx-python-lib[json-validation]==11.12.0"])?;
    for package in bom::PACKAGES {
        let file = target_folder()?.join(format!("{}.cdx.json", package.name));
        bom::write(&session.root, package, &file)?;
        let outcome = command::run(Command::new(&python).arg("-c").arg(CHECK).arg(&file));
        session.check(format_args!("the bill of materials of {} is CycloneDX 1.6", package.name), outcome);
    }
    Ok(())
}

/// Whether a manifest promises the compiler that is tried.
#[cfg_attr(not(test), expect(dead_code, reason = "only the test asks"))]
fn promises(manifest: &Path) -> bool {
    let oldest = OLDEST.trim_end_matches(".0");
    fs::read_to_string(manifest).is_ok_and(|text| text.contains(&format!("rust-version = \"{oldest}\"")))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_oldest_compiler_is_the_one_that_is_promised() {
        assert!(promises(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../../Cargo.toml")));
    }
}
