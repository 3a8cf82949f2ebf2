//! The README tells the truth: its program runs, its names exist.

use std::collections::BTreeSet;
use std::fs;
use std::process::Command;

use crate::header::{committed, root};
use crate::program::{C99, folder, run};

fn readme() -> String {
    fs::read_to_string(root().join("README.md")).unwrap()
}

#[test]
fn the_program_in_the_readme_prints_what_it_says() {
    let readme = readme();
    let program = readme.split("```c\n").nth(1).unwrap().split("```").next().unwrap();
    let source = folder("readme").join("readme.c");
    fs::write(&source, program).unwrap();
    assert_eq!(run(&mut Command::new(C99.program(&source, "readme"))), "65.0 L\n");
}

#[test]
fn every_name_in_the_readme_is_in_the_header() {
    let (readme, header) = (readme(), committed());
    let words = |text: &str| -> BTreeSet<String> {
        let words = text.split(|c: char| !c.is_ascii_alphanumeric() && c != '_');
        let names = words.filter(|word| word.starts_with("hilum_") || word.starts_with("HILUM_"));
        names.map(str::to_owned).collect()
    };
    let known = words(&header);
    let others = ["hilum_job", "HILUM_BLESS", "hilum_", "HILUM_"];
    let missing: Vec<_> = words(&readme)
        .into_iter()
        .filter(|name| !known.contains(name) && !others.contains(&name.as_str()))
        .collect();
    assert!(missing.is_empty(), "{missing:?}");
}
