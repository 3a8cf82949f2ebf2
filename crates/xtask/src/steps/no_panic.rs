//! Is a panic left in a linked image?

use std::path::PathBuf;

use crate::command::{self, cargo, inspector, target_folder};
use crate::step::Session;
use crate::steps::targets::{CORTEX_M, installed};

const PACKAGE: &str = "hilum-no-panic";

pub(super) fn no_panic(session: &mut Session) -> Result<(), String> {
    installed(CORTEX_M)?;
    // A check that cannot fail is none: a panic put there on purpose must be seen.
    let seen = match inspected(session, &["--features", "panics"])? {
        Inspected::Panics(_) => Ok(()),
        Inspected::Clean => Err("The panic put there on purpose was not seen.".into()),
    };
    session.check("a panic put there on purpose is seen", seen);
    let clean = match inspected(session, &[])? {
        Inspected::Clean => Ok(()),
        Inspected::Panics(symbols) => Err(format!("The image can panic; it holds {symbols}.")),
    };
    session.check("no function that tests/no_panic calls can panic", clean);
    Ok(())
}

enum Inspected {
    Clean,
    /// The symbols that say so.
    Panics(String),
}

fn inspected(session: &Session, features: &[&str]) -> Result<Inspected, String> {
    let image = linked(session, features)?;
    let found = command::output(&mut inspector(&session.root, &["panics", &image.to_string_lossy()]))?;
    let symbols: Vec<&str> = found.lines().filter(|line| !line.is_empty()).collect();
    Ok(if symbols.is_empty() { Inspected::Clean } else { Inspected::Panics(symbols.join(", ")) })
}

/// Links with the linker that comes with Rust, which drops what nothing calls.
fn linked(session: &Session, features: &[&str]) -> Result<PathBuf, String> {
    let build = ["build", "--release", "--package", PACKAGE, "--target", CORTEX_M];
    command::run(cargo(&session.root, &build).args(features))?;
    Ok(target_folder()?.join(CORTEX_M).join("release").join(PACKAGE))
}
