//! Documents: any text, and sound documents with places changed.

use hilum_job::Problems;

use crate::{edits, promises};

const JOBS: &[&str] = &[
    include_str!("../../tests/documents/sound.json"),
    include_str!("../../tests/findings/clean.json"),
    include_str!("../../../examples/jobs/dealer_day.json"),
    include_str!("../../../examples/jobs/inoculant_on_top.json"),
    include_str!("../../../examples/jobs/plant_week.json"),
    include_str!("../../../examples/jobs/small_farm.json"),
];
const RUNS: &[&str] = &[
    include_str!("../../tests/documents/run.json"),
    include_str!("../../../examples/runs/dealer_day_run.json"),
];

/// Plans a job.
pub fn job(bytes: &[u8]) {
    let Some(text) = edits::text(bytes, JOBS) else { return };
    match hilum_job::plan_json(&text) {
        Ok(plan) => promises::plan(&text, &plan),
        Err(problems) => refused(&text, &problems),
    }
}

/// Accounts for a run.
pub fn run(bytes: &[u8]) {
    let Some(text) = edits::text(bytes, RUNS) else { return };
    match hilum_job::account_json(&text) {
        Ok(account) => promises::account(&account),
        Err(problems) => refused(&text, &problems),
    }
}

/// A refusal says where, what, and what to do, in few words.
fn refused(text: &str, problems: &Problems) {
    assert!((1..=hilum_job::limits::PROBLEMS).contains(&problems.len()));
    for problem in problems.iter() {
        let said = problem.to_string();
        assert!(said.len() <= 1_500 && !said.chars().any(char::is_control), "{said:?}");
        promises::plain_words(&problem.message, text);
        assert!(problem.pointer.is_empty() || problem.pointer.starts_with('/'), "{said:?}");
    }
}
