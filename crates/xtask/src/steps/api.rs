//! Is the public API the one that was agreed?

use std::collections::BTreeSet;
use std::fs;

use crate::command::{self, inspector};
use crate::step::{Lists, Session};
use crate::steps::code::PUBLISHED;

pub(super) fn api(session: &mut Session) -> Result<(), String> {
    for package in PUBLISHED {
        let outcome = one(session, package);
        session.check(format_args!("public API of {package}"), outcome);
    }
    Ok(())
}

fn one(session: &Session, package: &str) -> Result<(), String> {
    let list = format!("crates/{package}/api.txt");
    let path = session.path(&list);
    let now = listed(session, package)?;
    if session.lists == Lists::Rewrite {
        return fs::write(&path, now).map_err(|why| format!("{list} cannot be written: {why}."));
    }
    let agreed = fs::read_to_string(&path).map_err(|why| format!("{list} cannot be read: {why}."))?;
    let differences = differences(&agreed, &now);
    if differences.is_empty() {
        return Ok(());
    }
    for difference in &differences {
        println!("{difference}");
    }
    Err(format!(
        "{list} and the sources differ in {} lines; if that is meant, run `cargo xtask api --bless`. \
         A line that went away or changed breaks callers.",
        differences.len()
    ))
}

/// The public items of a crate as its sources are now.
pub(super) fn listed(session: &Session, package: &str) -> Result<String, String> {
    let root = session.path(format!("crates/{package}/src/lib.rs"));
    command::output(&mut inspector(&session.root, &["api", package, &root.to_string_lossy()]))
}

/// Lines that are in one list only.
fn differences(agreed: &str, now: &str) -> Vec<String> {
    let (old, new): (BTreeSet<&str>, BTreeSet<&str>) = (agreed.lines().collect(), now.lines().collect());
    let gone = old.difference(&new).map(|line| format!("- {line}"));
    gone.chain(new.difference(&old).map(|line| format!("+ {line}"))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_in_one_list_only_are_differences() {
        assert_eq!(differences("a\nb\nc\n", "a\nc\nd\n"), ["- b", "+ d"]);
        assert!(differences("a\nb\n", "a\nb\n").is_empty());
    }
}
