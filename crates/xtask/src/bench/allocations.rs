//! How often plans ask for memory.

use std::path::Path;

use crate::command::{self, cargo};

pub(super) fn table(root: &Path) -> Result<String, String> {
    let arguments = ["run", "--release", "--quiet", "--package", "hilum-benches", "--bin", "allocations"];
    let printed = command::output(&mut cargo(root, &arguments))?;
    let lines: Vec<String> = printed.lines().filter_map(line).collect();
    Ok(format!(
        "\n## memory\n\n| what | allocations | bytes in all | bytes at once |\n|---|---|---|---|\n{}",
        lines.concat()
    ))
}

fn line(printed: &str) -> Option<String> {
    let columns: Vec<&str> = printed.split('\t').collect();
    let [what, count, total, most] = columns.as_slice() else { return None };
    Some(format!("| {what} | {count} | {total} | {most} |\n"))
}
