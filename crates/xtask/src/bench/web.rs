//! The npm package in Node and in Chromium, over the same in JavaScript.

use std::path::Path;
use std::process::Command;

use super::measured;
use super::table::Row;
use crate::command::{self, cargo};

pub(super) fn rows(root: &Path) -> Result<Vec<Row>, String> {
    if !root.join("bindings/wasm/npm/dist/numbers.js").is_file() {
        return Err("The npm package is not built; run `cargo xtask wasm web` first.".into());
    }
    let arguments = ["run", "--release", "--quiet", "--package", "hilum-benches", "--bin", "job"];
    let job = command::output(&mut cargo(root, &arguments))?;
    measured(Command::new("node").arg("benches/node/wasm.mjs").env("HILUM_JOB", job.trim()).current_dir(root))
}
