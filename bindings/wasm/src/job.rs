//! Entry `hilum/job`: whole jobs as JSON text.

use alloc::string::String;

use hilum_job::Problems;
use wasm_bindgen::prelude::wasm_bindgen;

/// The plan of a job, an object: the very bytes that Rust writes; or a list of what is wrong with the job.
#[wasm_bindgen]
#[must_use]
pub fn plan(job: &str) -> String {
    told(hilum_job::plan_json(job))
}

/// The account of a run, an object: the very bytes that Rust writes; or a list of what is wrong with the run.
#[wasm_bindgen]
#[must_use]
pub fn account(run: &str) -> String {
    told(hilum_job::account_json(run))
}

/// The version of the library.
#[wasm_bindgen]
#[must_use]
pub fn version() -> String {
    hilum_job::VERSION.into()
}

/// A document is an object and problems are a list, so the first character tells which of them this is.
fn told(document: Result<String, Problems>) -> String {
    document.unwrap_or_else(|problems| serde_json::to_string(&problems).unwrap_or_default())
}
