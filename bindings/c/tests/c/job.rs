//! Whole jobs over C, and from another language through C: the very bytes that Rust writes.

use std::fs;
use std::path::PathBuf;
use std::process::Command;

use crate::header::root;
use crate::program::{C11, SANITIZED, folder, library, run, sources};

const JOBS: &[&str] = &["dealer_day", "small_farm"];

fn examples() -> PathBuf {
    root().join("../../examples")
}

fn job(name: &str) -> PathBuf {
    examples().join("jobs").join(name).with_extension("json")
}

fn plan(name: &str) -> String {
    hilum_job::plan_json(&fs::read_to_string(job(name)).unwrap()).unwrap()
}

#[test]
fn a_plan_over_c_is_the_plan_of_rust_byte_for_byte() {
    for (way, program) in [(C11, "job"), (SANITIZED, "job-sanitized")] {
        let program = way.program(&sources().join("job.c"), program);
        for name in JOBS {
            let expected = folder("job").join(name);
            fs::write(&expected, plan(name)).unwrap();
            assert_eq!(run(Command::new(&program).arg(job(name)).arg(&expected)), "0 failed\n");
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
    for name in JOBS {
        assert_eq!(run(python().arg(job(name))), plan(name));
    }
    let refused = folder("job").join("refused.json");
    fs::write(&refused, "{}").unwrap();
    let output = python().arg(&refused).output().unwrap();
    assert_eq!(output.status.code(), Some(1));
    assert!(String::from_utf8_lossy(&output.stderr).contains("is refused: [{\"pointer\":"));
}
