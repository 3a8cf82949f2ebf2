//! The published JSON Schemas are those of the Rust types, and the demo jobs and their plans keep them.
#![expect(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use std::fs;
use std::path::{Path, PathBuf};

use hilum_job::schema::schema_texts;
use jsonschema::Validator;
use serde_json::Value;

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap().to_owned()
}

/// `HILUM_WRITE_SCHEMAS=1 cargo test -p hilum-tests --test schemas` writes them anew.
#[test]
fn committed_schemas_are_those_of_the_types() {
    for (name, text) in schema_texts().unwrap() {
        let path = root().join(format!("crates/hilum-job/schema/{name}.schema.json"));
        if std::env::var_os("HILUM_WRITE_SCHEMAS").is_some() {
            fs::write(&path, &text).unwrap();
        }
        let committed = fs::read_to_string(&path).unwrap_or_default();
        assert!(committed == text, "{} is not what the types say", path.display());
    }
}

fn validator(name: &str) -> Validator {
    let texts = schema_texts().unwrap();
    let (_, text) = texts.iter().find(|(own, _)| *own == name).unwrap();
    jsonschema::validator_for(&serde_json::from_str(text).unwrap()).unwrap()
}

#[track_caller]
fn keeps(validator: &Validator, document: &Value, what: &str) {
    let errors: Vec<String> =
        validator.iter_errors(document).map(|e| format!("{}: {e}", e.instance_path())).collect();
    assert!(errors.is_empty(), "{what}: {errors:#?}");
}

#[test]
fn demo_jobs_and_their_plans_keep_the_schemas() {
    let (job_schema, plan_schema) = (validator("job"), validator("plan"));
    let mut seen = 0;
    for entry in fs::read_dir(root().join("examples/jobs")).unwrap() {
        let path = entry.unwrap().path();
        let text = fs::read_to_string(&path).unwrap();
        keeps(&job_schema, &serde_json::from_str(&text).unwrap(), &format!("{}", path.display()));
        let plan: Value = serde_json::from_str(&hilum_job::plan_json(&text).unwrap()).unwrap();
        keeps(&plan_schema, &plan, &format!("the plan of {}", path.display()));
        seen += 1;
    }
    assert!(seen >= 4, "{seen} demo jobs");
}

#[test]
fn the_schema_refuses_what_the_reader_refuses() {
    let schema = validator("job");
    for text in [
        r#"{"treatments": []}"#,
        r#"{"orders": [{"order": "1", "lot": "a", "amount": "1 kg", "sise": "5 seeds/kg"}], "treatments": []}"#,
        r#"{"orders": [], "treatments": [], "units": "imperial"}"#,
    ] {
        assert!(!schema.is_valid(&serde_json::from_str(text).unwrap()), "{text}");
        assert!(hilum_job::Job::from_json(text).is_err(), "{text}");
    }
}

/// A plan is read back as it was written.
#[test]
fn plans_read_back() {
    let text = fs::read_to_string(root().join("examples/jobs/dealer_day.json")).unwrap();
    let plan = hilum_job::plan(&hilum_job::Job::from_json(&text).unwrap()).unwrap();
    let back: hilum_job::Plan = serde_json::from_str(&plan.to_json().unwrap()).unwrap();
    assert_eq!(back, plan);
}
