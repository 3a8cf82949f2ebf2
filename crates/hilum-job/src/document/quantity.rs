//! Quantities as documents write them.

use alloc::borrow::Cow;
use alloc::string::String;

use serde::{Deserialize, Serialize};

use crate::json::Node;
use crate::problem::{Gathered, Pointer};
use crate::read::{Read, fields, refuse, required};

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
    fn read(node: &Node, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Self> {
        match node {
            Node::Text(_) => String::read(node, at, gathered).map(Self::Text),
            Node::Object(_) => {
                let [value, unit] = fields(node, ["value", "unit"], at, gathered)?;
                let value = required(value, &at.field("value"), gathered);
                let unit = required(unit, &at.field("unit"), gathered);
                Some(Self::Pair { value: value?, unit: unit? })
            }
            _ => {
                refuse(
                    node,
                    "a quantity, as \"2.5 fl oz/cwt\" or {\"value\": 2.5, \"unit\": \"fl oz/cwt\"},",
                    at,
                    gathered,
                );
                None
            }
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
