//! Whole jobs over C, and from another language through C: the very bytes that Rust writes.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::header::root;
use crate::program::{C11, SANITIZED, folder, library, run, sources};

fn examples() -> PathBuf {
    root().join("../../examples")
}

/// Each demo job, which Node and Chromium plan too (bindings/wasm/npm).
fn jobs() -> Vec<PathBuf> {
    let jobs: Vec<PathBuf> =
        fs::read_dir(examples().join("jobs")).unwrap().map(|entry| entry.unwrap().path()).collect();
    assert!(!jobs.is_empty());
    jobs
}

fn plan(job: &Path) -> String {
    hilum_job::plan_json(&fs::read_to_string(job).unwrap()).unwrap()
}

#[test]
fn a_plan_over_c_is_the_plan_of_rust_byte_for_byte() {
    for (way, program) in [(C11, "job"), (SANITIZED, "job-sanitized")] {
        let program = way.program(&sources().join("job.c"), program);
        for job in jobs() {
            let expected = folder("job").join(job.file_name().unwrap());
            fs::write(&expected, plan(&job)).unwrap();
            assert_eq!(run(Command::new(&program).arg(&job).arg(&expected)), "0 failed\n");
        }
    }
}

#[test]
fn python_plans_the_demo_job_through_c() {
    let script = examples().join("other_languages/plan_day.py");
    assert!(fs::read_to_string(&script).unwrap().lines().count() < 60);
    let python = || {
        let mut python = Command::new("python3");
        python.arg(&script).arg(library("libhilum_c.so"));
        python
    };
    for job in jobs() {
        assert_eq!(run(python().arg(&job)), plan(&job));
    }
    let refused = folder("job").join("refused.json");
    fs::write(&refused, "{}").unwrap();
    let output = python().arg(&refused).output().unwrap();
    assert_eq!(output.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&output.stderr).contains("is refused: [{\"pointer\":"));
}
