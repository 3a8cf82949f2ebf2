//! Quantities as documents write them.

use alloc::borrow::Cow;
use alloc::string::String;

use serde::{Deserialize, Serialize};

use crate::json::Node;
use crate::problem::{Gathered, Pointer};
use crate::read::{Fields, Fill, Read, refuse};

/// A quantity as given: text such as `"2.5 fl oz/cwt"`, or number and unit apart.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(untagged)]
pub enum Quantity {
    /// `"2.5 fl oz/cwt"`
    Text(String),
    /// `{"value": 2.5, "unit": "fl oz/cwt"}`
    Pair {
        /// The number.
        value: f64,
        /// The unit.
        unit: String,
    },
}

impl From<&str> for Quantity {
    fn from(text: &str) -> Self {
        Self::Text(text.into())
    }
}

impl Read for Quantity {
    fn blank() -> Self {
        Self::Text(String::new())
    }
}

impl Fill for Quantity {
    fn fill(&mut self, node: &Node<'_>, at: &Pointer<'_>, gathered: &mut Gathered) {
        match node {
            Node::Text(_) => {
                let mut text = String::new();
                text.fill(node, at, gathered);
                *self = Self::Text(text);
            }
            Node::Object(_) => {
                let (mut value, mut unit) = (0.0, String::new());
                if let Some(mut fields) = Fields::of(node, &["value", "unit"], at, gathered) {
                    fields.fill(&mut value);
                    fields.fill(&mut unit);
                }
                *self = Self::Pair { value, unit };
            }
            _ => refuse(
                node,
                "a quantity, as \"2.5 fl oz/cwt\", \"92 %\" or {\"value\": 2.5, \"unit\": \"fl oz/cwt\"},",
                at,
                gathered,
            ),
        }
    }
}

/// A quantity as it is written in a plan or an account.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Out {
    /// The number, at full precision.
    pub value: f64,
    /// The unit.
    pub unit: Cow<'static, str>,
}
