//! Programs in C, compiled strictly and run: as they are, under sanitizers, under valgrind.

use std::process::Command;

use crate::program::{C11, C99, CXX17, SANITIZED, Way, folder, run, sources};

const STANDARDS: [Way; 3] = [C99, C11, CXX17];
const THREAD_SANITIZED: Way =
    Way { compiler: "gcc", flags: &["-std=c11", "-g", "-fsanitize=thread", "-x", "c"] };

#[test]
fn the_header_compiles_alone_in_every_standard() {
    for way in STANDARDS {
        run(&mut Command::new(way.program(&sources().join("header.c"), "header")));
    }
}

#[test]
fn a_dose_per_seed_is_no_dose_per_mass() {
    let source = sources().join("mistake.c");
    let wrong = folder("mistake").join("mistake.c");
    std::fs::write(&wrong, format!("#define MISTAKE\n{}", std::fs::read_to_string(&source).unwrap()))
        .unwrap();
    for way in STANDARDS {
        way.compiles(&source).unwrap();
        let why = way.compiles(&wrong).unwrap_err();
        assert!(why.contains("hilum_rate_per_seed") && why.contains("hilum_rate_per_mass"), "{why}");
    }
}

#[test]
fn a_shed_s_questions_are_answered_in_every_standard() {
    for (way, name) in STANDARDS.into_iter().zip(["shed-c99", "shed-c11", "shed-cxx17"]) {
        let program = way.program(&sources().join("shed.c"), name);
        assert_eq!(run(&mut Command::new(program)), "0 failed\n");
    }
}

#[test]
fn a_shed_s_questions_are_clean_under_sanitizers_and_valgrind() {
    let source = sources().join("shed.c");
    assert_eq!(run(&mut Command::new(SANITIZED.program(&source, "shed-sanitized"))), "0 failed\n");
    if Command::new("valgrind").arg("--version").output().is_err() {
        eprintln!("valgrind is not installed: not run");
        return;
    }
    let program = C11.program(&source, "shed-valgrind");
    let mut valgrind = Command::new("valgrind");
    valgrind.args(["--quiet", "--error-exitcode=9", "--leak-check=full"]).arg(program);
    assert_eq!(run(&mut valgrind), "0 failed\n");
}

#[test]
fn two_threads_get_what_one_gets_alone() {
    let source = sources().join("threads.c");
    assert_eq!(run(&mut Command::new(C11.program(&source, "threads"))), "0 failed\n");
    assert_eq!(run(&mut Command::new(THREAD_SANITIZED.program(&source, "threads-sanitized"))), "0 failed\n");
}
