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
    let differing = |with: &BTreeSet<String>| with.symmetric_difference(&header).cloned().collect::<Vec<_>>();
    assert_eq!(differing(&shared), [""; 0], "the shared library against the header");
    let in_archive = exported("libhilum_c.a", &["--defined-only"]);
    let ours: BTreeSet<String> = in_archive.into_iter().filter(|name| name.starts_with("hilum")).collect();
    assert_eq!(differing(&ours), [""; 0], "the static library against the header");
    let core: Vec<&str> = shared.iter().map(String::as_str).filter(|name| !is_of_job(name)).collect();
    compare(
        "exports.txt",
        &(core.join(
            "
",
        ) + "
"),
    );
}
