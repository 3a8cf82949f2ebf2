//! Does it work in a browser, for everyone?

use std::path::Path;
use std::process::Command;

use crate::command;
use crate::step::Session;
use crate::steps::wasm::{PACKAGE, node_tests, packages};

const CHROMIUM: &str = "/usr/bin/chromium";
const PAGE: &str = "examples/dealer-page";

pub(super) fn web(session: &mut Session) -> Result<(), String> {
    if !session.path(PACKAGE).join("dist/hilum.js").is_file() {
        return Err("The npm package is not built; run `cargo xtask wasm web`.".into());
    }
    chromium()?;
    packages(session, PACKAGE)?;
    node_tests(session, PACKAGE, &["browser/check_values.test.mjs".into()]);
    packages(session, PAGE)?;
    node_tests(session, PAGE, &["test/page.test.mjs".into()]);
    Ok(())
}

/// Makes sure that Debian's Chromium is there; root installs it.
pub(super) fn chromium() -> Result<(), String> {
    if Path::new(CHROMIUM).exists() || std::env::var_os("HILUM_CHROMIUM").is_some() {
        return Ok(());
    }
    let install = |arguments: &[&str]| command::run(Command::new("apt-get").args(arguments));
    install(&["update", "-qq"]).and_then(|()| install(&["install", "-y", "-qq", "chromium"])).map_err(|why| {
        format!("Chromium is missing: install Debian's chromium, or set HILUM_CHROMIUM to the program. {why}")
    })
}
