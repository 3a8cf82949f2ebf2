//! The clean job, and edits to it.

use hilum_job::document::{Code, Finding};
use hilum_job::{Job, Plan, plan};
use serde_json::Value;

/// A job that nothing is wrong with, and that says all there is to say.
pub(crate) fn clean() -> Value {
    serde_json::from_str(include_str!("clean.json")).unwrap()
}

/// The clean job with edits: an object of places and what stands there; `null` takes it away, the place
/// behind the last of a list adds to it.
pub(crate) fn edited(edits: &str) -> Value {
    let edits: Value = serde_json::from_str(edits).unwrap_or_else(|error| panic!("{edits}: {error}"));
    let mut job = clean();
    for (pointer, value) in edits.as_object().unwrap() {
        let (parent, last) = pointer.rsplit_once('/').unwrap();
        match job.pointer_mut(parent) {
            Some(Value::Object(fields)) => drop(fields.insert(last.into(), value.clone())),
            Some(Value::Array(items)) => {
                let place: usize = last.parse().unwrap();
                if place == items.len() { items.push(value.clone()) } else { items[place] = value.clone() }
            }
            other => panic!("{pointer}: {other:?}"),
        }
    }
    job
}

pub(crate) fn planned(job: &Value) -> Plan {
    let read = Job::from_json(&job.to_string()).unwrap_or_else(|problem| panic!("{problem}"));
    plan(&read).unwrap_or_else(|problem| panic!("{problem}"))
}

pub(crate) fn findings(job: &Value) -> Vec<Finding> {
    planned(job).findings
}

/// As the documents write it.
pub(crate) fn name(code: Code) -> String {
    serde_json::to_value(code).unwrap().as_str().unwrap().to_owned()
}
