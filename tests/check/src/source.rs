//! Where the values come from.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::case::{Amount, DataError};

/// One entry of the bibliography.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Source {
    /// What it is called.
    pub title: String,
    /// Who wrote or issued it.
    pub authors_or_body: String,
    /// When; empty where the copy does not say.
    pub year: Amount,
    /// Where it is found.
    #[serde(rename = "where")]
    pub place: String,
    /// How its figures were come by.
    pub seen: Seen,
}

/// How a figure was come by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Seen {
    /// Seen in a stored copy.
    Read,
    /// Recalled, not seen.
    Memory,
    /// Our own arithmetic.
    Derived,
}

/// The bibliography.
///
/// # Errors
/// When the file is not what its README says.
pub fn sources() -> Result<BTreeMap<String, Source>, DataError> {
    serde_json::from_str(include_str!("../../data/sources.json"))
        .map_err(|why| DataError::new("sources.json", why.to_string()))
}
