//! The symbols that the library exports.

use std::collections::BTreeSet;
use std::process::Command;

use crate::prototype::declared;
use crate::{compare, header, program};

/// The global symbols that a library defines.
fn exported(file: &str, arguments: &[&str]) -> BTreeSet<String> {
    let text = program::run(Command::new("nm").args(arguments).arg(program::library(file)));
    let names = text.lines().filter_map(|line| line.rsplit_once(" T ")).map(|(_, name)| name.to_owned());
    names.collect()
}

/// The functions that only the feature `job` brings.
fn is_of_job(name: &str) -> bool {
    name.ends_with("_json")
}

#[test]
fn the_exports_are_those_committed_and_those_of_the_header() {
    let shared = exported("libhilum_c.so", &["-D", "--defined-only"]);
    let header: BTreeSet<String> = declared(&header::committed())
        .functions
        .into_iter()
        .map(|function| function.name)
        .filter(|name| cfg!(feature = "job") || !is_of_job(name))
        .collect();
    assert_eq!(shared, header, "the shared library against the header");
    let in_archive = exported("libhilum_c.a", &["--defined-only"]);
    let ours: BTreeSet<String> = in_archive.into_iter().filter(|name| name.starts_with("hilum")).collect();
    assert_eq!(ours, header, "the static library against the header");
    let core: String =
        shared.iter().filter(|name| !is_of_job(name)).map(|name| format!("{name}\n")).collect();
    compare("exports.txt", &core);
}
