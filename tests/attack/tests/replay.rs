//! What the fuzzer found, and seeds that reach far, again: every file of `corpus/`, and a stretch of bytes from a
//! generator.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "a test stops at the first surprise"
)]

use std::fs;
use std::path::Path;

fn files(of: &str) -> Vec<std::path::PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("corpus").join(of);
    let mut files: Vec<_> = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.sort();
    files
}

/// Knuth's multiplicative generator: the same bytes everywhere.
fn bytes(seed: u64, length: usize) -> Vec<u8> {
    let mut state = seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1;
    (0..length)
        .map(|_| {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            state.to_be_bytes()[0]
        })
        .collect()
}

fn replay(of: &str) {
    let (_, attack) = hilum_attack::ALL.iter().find(|(name, _)| *name == of).unwrap();
    let files = files(of);
    assert!(!files.is_empty(), "{of} has no seeds");
    for file in files {
        println!("{}", file.display());
        attack(&fs::read(file).unwrap());
    }
    for seed in 0..40 {
        attack(&bytes(seed, 700));
    }
}

macro_rules! replayed {
    ($($name:ident)+) => { $(#[test] fn $name() { replay(stringify!($name)); })+ };
}

replayed! { text job run c_abi batch monitor }

#[test]
fn every_attack_is_replayed() {
    let names: Vec<&str> = hilum_attack::ALL.iter().map(|(name, _)| *name).collect();
    assert_eq!(names, ["text", "job", "run", "c_abi", "batch", "monitor"]);
}
