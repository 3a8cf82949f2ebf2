//! JSON text → a tree that keeps what a map would lose: duplicate names, and the order of fields; and documents
//! → JSON text.
//!
//! Our own, because a general reader and writer of JSON are 40 kB of a web page's 300: their tables of powers
//! of ten stand beside those of core.

mod read;
mod write;

pub(crate) use write::text;

use alloc::string::String;
use alloc::vec::Vec;

use hilum::text::Decimal;

/// One value of a document.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Node {
    Null,
    Bool(bool),
    Number(f64),
    Text(String),
    List(Vec<Node>),
    Object(Vec<(String, Node)>),
}

impl Node {
    /// What kind of value this is, in words.
    pub(crate) fn kind(&self) -> &'static str {
        match self {
            Self::Null => "null",
            Self::Bool(_) => "true or false",
            Self::Number(_) => "a number",
            Self::Text(_) => "a text",
            Self::List(_) => "a list",
            Self::Object(_) => "an object",
        }
    }

    /// Reads JSON text; or says what is wrong with it, and where.
    pub(crate) fn parse(text: &str, decimal: Decimal) -> Result<Self, String> {
        read::whole(text, decimal)
    }
}
