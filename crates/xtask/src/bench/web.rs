//! The npm package in Node and in Chromium, over the same in JavaScript.

use std::path::Path;
use std::process::Command;

use super::measured;
use super::table::Row;

pub(super) fn rows(root: &Path) -> Result<Vec<Row>, String> {
    if !root.join("bindings/wasm/npm/dist/numbers.js").is_file() {
        return Err("The npm package is not built; run `cargo xtask wasm web` first.".into());
    }
    measured(Command::new("node").arg("benches/node/wasm.mjs").current_dir(root))
}
