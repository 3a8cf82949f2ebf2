//! Does it work in a browser, for everyone?

use std::fs;
use std::path::Path;
use std::process::Command;

use crate::command::{self, cargo};
use crate::step::Session;
use crate::steps::wasm::{PACKAGE, node_tests, packages, work};

const CHROMIUM: &str = "/usr/bin/chromium";
const PAGE: &str = "examples/dealer-page";
/// What the page's numbers are compared with: an example, and the document that it is given.
const SHEETS: [(&str, &str); 2] =
    [("plan_day", "examples/jobs/dealer_day.json"), ("close_day", "examples/runs/dealer_day_run.json")];

pub(super) fn web(session: &mut Session) -> Result<(), String> {
    if !session.path(PACKAGE).join("dist/hilum.js").is_file() {
        return Err("The npm package is not built; run `cargo xtask wasm web`.".into());
    }
    chromium()?;
    packages(session, PACKAGE)?;
    node_tests(session, PACKAGE, &["browser/check_values.test.mjs".into()]);
    packages(session, PAGE)?;
    sheets(session)?;
    let tests = ["test/plan", "test/form", "test/account", "test/everyone", "test/beside"];
    node_tests(session, PAGE, &tests.map(|name| format!("{name}.test.mjs")));
    Ok(())
}

/// The sheets that the terminal shows of the documents that the page begins with.
fn sheets(session: &Session) -> Result<(), String> {
    for (example, document) in SHEETS {
        let run = ["run", "--quiet", "--release", "--example", example, "--", document];
        let text = command::output(&mut cargo(&session.root, &run))?;
        let path = work()?.join(format!("{example}.txt"));
        fs::write(&path, text).map_err(|why| format!("{} cannot be written: {why}.", path.display()))?;
    }
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
