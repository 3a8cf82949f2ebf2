//! JSON Schemas (draft 2020-12) of the documents, made from the Rust types.

use alloc::string::String;
use alloc::vec::Vec;

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

/// Each document's name and schema as JSON text, as committed in `schema/`.
///
/// # Errors
/// When a schema cannot be written, which none made here is known to cause.
pub fn schema_texts() -> Result<Vec<(&'static str, String)>, serde_json::Error> {
    let text = |schema: &Schema| serde_json::to_string_pretty(schema).map(|text| text + "\n");
    schemas().iter().map(|(name, schema)| Ok((*name, text(schema)?))).collect()
}
