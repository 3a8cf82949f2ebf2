//! Format, lints, tests, documentation, packages: cargo's own commands.

use std::fs;

use crate::command::{cargo, cargo_home};
use crate::step::Session;

/// The crates that people depend on.
pub(super) const PUBLISHED: [&str; 2] = ["hilum", "hilum-job"];

pub(super) fn fmt(session: &mut Session) -> Result<(), String> {
    session.check_command(&mut cargo(&session.root, &["fmt", "--all", "--check"]));
    Ok(())
}

pub(super) fn clippy(session: &mut Session) -> Result<(), String> {
    let all = ["clippy", "--workspace", "--all-targets", "--all-features", "--", "-D", "warnings"];
    session.check_command(&mut cargo(&session.root, &all));
    Ok(())
}

pub(super) fn tests(session: &mut Session) -> Result<(), String> {
    let all = ["test", "--workspace", "--all-features", "--no-fail-fast"];
    session.tests(&mut cargo(&session.root, &all));
    Ok(())
}

pub(super) fn docs(session: &mut Session) -> Result<(), String> {
    let mut doc = cargo(&session.root, &["doc", "--no-deps", "--all-features"]);
    doc.args(of_published()).env("RUSTDOCFLAGS", "-D warnings");
    session.check_command(&mut doc);
    Ok(())
}

pub(super) fn package(session: &mut Session) -> Result<(), String> {
    forget_unpacked();
    let mut package = cargo(&session.root, &["package", "--allow-dirty"]);
    session.check_command(package.args(of_published()));
    Ok(())
}

/// Cargo unpacks a crate that another one's package needs by name and version, and never again: the sources of
/// an earlier run would stand in for today's.
fn forget_unpacked() {
    let Some(home) = cargo_home() else { return };
    let Ok(registries) = fs::read_dir(home.join("registry/src")) else { return };
    // A registry without a host is a folder that cargo made for a packaging.
    let of_folders =
        registries.flatten().filter(|entry| entry.file_name().to_string_lossy().starts_with('-'));
    for unpacked in of_folders.filter_map(|entry| fs::read_dir(entry.path()).ok()).flatten().flatten() {
        let name = unpacked.file_name();
        if PUBLISHED.iter().any(|ours| name.to_string_lossy().starts_with(&format!("{ours}-"))) {
            drop(fs::remove_dir_all(unpacked.path()));
        }
    }
}

fn of_published() -> impl Iterator<Item = &'static str> {
    PUBLISHED.into_iter().flat_map(|name| ["--package", name])
}
