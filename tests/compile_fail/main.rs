//! Mistakes that must not compile, and what the compiler says about them.
//!
//! After a change of a signature or of the compiler, `TRYBUILD=overwrite cargo test -p hilum-compile-fail`
//! writes the messages anew; read what it wrote.
#![expect(clippy::expect_used, reason = "a test may stop at what is not there")]

use std::path::Path;
use std::process::Command;
use std::{env, fs};

/// Compilers word their messages anew now and then; these are in the words of this one. That the mistakes do
/// not compile is held for every compiler by the documentation tests of the core.
const WRITTEN_WITH: &str = "rustc 1.95.";

#[test]
fn mistakes_do_not_compile() {
    let compiler = env::var_os("RUSTC").unwrap_or_else(|| "rustc".into());
    let version = Command::new(compiler).arg("--version").output().expect("the compiler tells its version");
    if String::from_utf8_lossy(&version.stdout).starts_with(WRITTEN_WITH) {
        trybuild::TestCases::new().compile_fail("cases/*.rs");
    } else {
        eprintln!("not compared: the messages were written with {WRITTEN_WITH}");
    }
}

/// What was expected and what was found, in the words of the documentation.
const NAMED: &[(&str, &str, &str)] = &[
    ("rate_per_seed_for_rate_per_mass", "PerMass<Liquid>", "PerSeed<Liquid>"),
    ("active_for_product", "PerMass<Liquid>", "PerMass<Active>"),
    ("product_for_active", "PerSeed<Active>", "PerSeed<Dry>"),
    ("dry_for_liquid", "PerMass<Liquid>", "PerMass<Dry>"),
    ("unit_of_mass_for_unit_of_seeds", "UnitOfSeeds", "UnitOfMass"),
    ("titre_per_mass_on_a_liquid", "PerSeed<Dry>", "PerSeed<Liquid>"),
    ("compared_in_two_bases", "PerArea<Liquid>", "PerSeed<Liquid>"),
    ("seed_flow_for_liquid_flow", "Flow", "SeedFlow"),
    ("share_for_number", "f64", "Share"),
    ("share_for_number", "Share", "floating-point number"),
];

#[test]
fn messages_name_the_types_of_the_trade() {
    for (case, expected, found) in NAMED {
        let message = message(case);
        let quoted = |word: &str| if word.contains(' ') { word.into() } else { format!("`{word}`") };
        let told = format!("expected {}, found {}", quoted(expected), quoted(found));
        assert!(message.contains(&told), "{case} does not say \"{told}\":\n{message}");
    }
}

#[test]
fn messages_are_free_of_the_machinery() {
    for entry in fs::read_dir(folder()).expect("the cases") {
        let path = entry.expect("an entry").path();
        let case = path.file_stem().and_then(|stem| stem.to_str()).expect("a name").to_owned();
        if path.extension().is_some_and(|end| end == "stderr") {
            let message = message(&case);
            for word in ["typenum", "PInt", "NInt", "Z0", "dyn ", "PhantomData"] {
                assert!(!message.contains(word), "{case} tells of {word}:\n{message}");
            }
        }
    }
}

fn folder() -> &'static Path {
    Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/cases"))
}

fn message(case: &str) -> String {
    fs::read_to_string(folder().join(case).with_extension("stderr")).expect(case)
}
