//! What runs while this is built, and what it is promised to build with.
#![expect(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use std::collections::BTreeSet;
use std::process::Command;

use serde_json::Value;

/// Every crate whose build runs a script, and what for. What is published stands on the first eight alone.
const SCRIPTS: &[(&str, &str)] = &[
    ("libm", "which instructions the target has"),
    ("num-traits", "whether the target has total_cmp"),
    ("proc-macro2", "which unstable features the compiler has"),
    ("quote", "which compiler it is"),
    ("serde", "which compiler it is"),
    ("serde_core", "which compiler it is"),
    ("thiserror", "which unstable features the compiler has"),
    ("zmij", "which compiler it is"),
    ("serde_json", "how wide the target's words are"),
    ("ref-cast", "which compiler it is"),
    ("wasm-bindgen", "which compiler it is"),
    ("wasm-bindgen-shared", "a sum over its own sources, or the commit they are from"),
    ("hilum-c", "the name of the shared library"),
    ("hilum-attack", "calls of the C functions, from the committed header"),
    // Tools and tests.
    ("ahash", "which compiler it is"),
    ("alloca", "a file of C of its own, compiled"),
    ("cbindgen", "the list of its own tests"),
    ("crunchy", "loops written out, to a limit that features name"),
    ("getrandom", "which target it is"),
    ("hilum-benches", "the rivals in C, compiled"),
    ("jsonschema-value", "which features are on"),
    ("libc", "which target it is"),
    ("parking_lot_core", "which sanitizer is on"),
    ("prettyplease", "its version"),
    ("rustix", "which target it is"),
    ("rustversion", "which compiler it is"),
    ("target-tuple", "the name of the target"),
    ("unicode-general-category", "a table from a file of its own"),
    ("winapi", "which parts of Windows are asked for"),
    ("winapi-i686-pc-windows-gnu", "where its libraries lie"),
    ("winapi-x86_64-pc-windows-gnu", "where its libraries lie"),
    ("wit-bindgen", "an object file of its own"),
    ("zerocopy", "which compiler it is"),
];

/// How a script would reach out. Most ask the compiler for its version; wasm-bindgen-shared asks git for its own commit.
const REACHING: &[&str] = &[
    "std::net",
    "TcpStream",
    "UdpSocket",
    "reqwest",
    "ureq",
    "curl",
    "wget",
    "\"clone\"",
    "\"fetch\"",
    "\"sh\"",
    "\"bash\"",
    "\"cmd\"",
    "\"python",
];

fn metadata() -> Value {
    let mut cargo = Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    cargo.args(["metadata", "--format-version", "1", "--all-features", "--locked"]);
    let output = cargo.current_dir(env!("CARGO_MANIFEST_DIR")).output().unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    serde_json::from_slice(&output.stdout).unwrap()
}

fn text<'v>(value: &'v Value, field: &str) -> &'v str {
    value[field].as_str().unwrap_or_default()
}

#[test]
fn no_build_script_is_unknown_or_reaches_out() {
    let metadata = metadata();
    let mut there = BTreeSet::new();
    for package in metadata["packages"].as_array().unwrap() {
        let targets = package["targets"].as_array().unwrap();
        let script =
            |target: &&Value| target["kind"].as_array().unwrap().iter().any(|kind| kind == "custom-build");
        for target in targets.iter().filter(script) {
            there.insert(text(package, "name"));
            let source = std::fs::read_to_string(text(target, "src_path")).unwrap();
            let code: String = source.lines().filter(|line| !line.trim_start().starts_with("//")).collect();
            for reaching in REACHING {
                assert!(
                    !code.contains(reaching),
                    "{}: {reaching} in its build script",
                    text(package, "name")
                );
            }
        }
    }
    let known: BTreeSet<&str> = SCRIPTS.iter().map(|(name, _)| *name).collect();
    assert_eq!(there, known, "left: what there is; right: the list in this file");
}

#[test]
fn every_published_crate_says_with_which_compiler_it_builds() {
    let metadata = metadata();
    let ours =
        |package: &&Value| ["hilum", "hilum-job", "hilum-c", "hilum-wasm"].contains(&text(package, "name"));
    let promised: BTreeSet<&str> = metadata["packages"]
        .as_array()
        .unwrap()
        .iter()
        .filter(ours)
        .map(|package| text(package, "rust_version"))
        .collect();
    assert_eq!(promised, BTreeSet::from(["1.88"]));
}
