//! JSON Schemas (draft 2020-12) of the documents, made from the Rust types.

use schemars::{Schema, schema_for};

use crate::document::{Account, Job, Plan, Run};

/// Each document's name and schema.
#[must_use]
pub fn schemas() -> [(&'static str, Schema); 4] {
    [
        ("job", schema_for!(Job)),
        ("plan", schema_for!(Plan)),
        ("run", schema_for!(Run)),
        ("account", schema_for!(Account)),
    ]
}
