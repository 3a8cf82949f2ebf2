//! Format, lints, tests, documentation, packages: cargo's own commands.

use crate::command::cargo;
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
    let mut package = cargo(&session.root, &["package", "--allow-dirty"]);
    session.check_command(package.args(of_published()));
    Ok(())
}

fn of_published() -> impl Iterator<Item = &'static str> {
    PUBLISHED.into_iter().flat_map(|name| ["--package", name])
}
