//! JSON text → a tree that keeps what a map would lose: duplicate names, and the order of fields.

use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::fmt;

use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};

use crate::limits::DEPTH;

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

    /// Reads JSON text, or says where it is none, and why.
    pub(crate) fn parse(text: &str) -> Result<Self, String> {
        if let Some((line, column)) = too_deep(text) {
            return Err(alloc::format!(
                "it is nested more than {DEPTH} levels deep (line {line}, column {column})"
            ));
        }
        serde_json::from_str(text).map_err(|error| told(&error))
    }
}

/// What the reader says, by how it begins, and how a person would.
const SAID: &[(&str, &str)] = &[
    ("EOF", "it ends too early; a quote or a bracket is not closed"),
    ("expected `:`", "a colon is missing"),
    ("expected `,`", "a comma or a closing bracket is missing"),
    ("expected value", "a value is missing"),
    ("expected ident", "words need quotes, but for true and false"),
    ("key must be", "a name needs quotes"),
    ("trailing comma", "a comma is too many"),
    ("trailing characters", "something stands behind the end"),
    ("control character", "a line break in a text is written \\n"),
    ("invalid escape", "a backslash in a text is written twice"),
    (
        "lone leading surrogate",
        "half a character is written as an escape; write both halves, or the character itself",
    ),
    (
        "unexpected end of hex",
        "half a character is written as an escape; write both halves, or the character itself",
    ),
    ("invalid number", "a number is written as 0.5, 5 or 1e5"),
    ("number out of range", "a number is too large"),
];

fn told(error: &serde_json::Error) -> String {
    let own = error.to_string();
    let words = SAID.iter().find(|(begins, _)| own.starts_with(begins));
    let words = words.map_or("JSON does not have this", |(_, words)| words);
    alloc::format!("{words} (line {}, column {})", error.line(), error.column())
}

/// The mark around texts.
const QUOTE: u8 = 0x22;

/// Line and column of the first bracket that is nested too deep. Looked for before reading: a reader that refused it on its way
/// would be compiled with all that it takes to put an error's text together.
fn too_deep(text: &str) -> Option<(usize, usize)> {
    let (mut line, mut column, mut depth) = (1_usize, 0_usize, 0_usize);
    let (mut quoted, mut escaped) = (false, false);
    for byte in text.bytes() {
        column = column.saturating_add(1);
        match byte {
            b'\n' => (line, column) = (line.saturating_add(1), 0),
            _ if escaped => escaped = false,
            b'\\' => escaped = quoted,
            QUOTE => quoted = !quoted,
            b'[' | b'{' if !quoted => depth = depth.saturating_add(1),
            b']' | b'}' if !quoted => depth = depth.saturating_sub(1),
            _ => {}
        }
        if depth > DEPTH {
            return Some((line, column));
        }
    }
    None
}

impl<'de> Deserialize<'de> for Node {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(Any)
    }
}

/// Takes whatever value comes.
struct Any;

impl<'de> Visitor<'de> for Any {
    type Value = Node;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a JSON value")
    }
    fn visit_unit<E>(self) -> Result<Node, E> {
        Ok(Node::Null)
    }
    fn visit_bool<E>(self, value: bool) -> Result<Node, E> {
        Ok(Node::Bool(value))
    }
    fn visit_f64<E>(self, value: f64) -> Result<Node, E> {
        Ok(Node::Number(value))
    }
    #[expect(clippy::cast_precision_loss, clippy::as_conversions, reason = "JSON numbers are doubles here")]
    fn visit_u64<E>(self, value: u64) -> Result<Node, E> {
        Ok(Node::Number(value as f64))
    }
    #[expect(clippy::cast_precision_loss, clippy::as_conversions, reason = "JSON numbers are doubles here")]
    fn visit_i64<E>(self, value: i64) -> Result<Node, E> {
        Ok(Node::Number(value as f64))
    }
    fn visit_str<E>(self, value: &str) -> Result<Node, E> {
        Ok(Node::Text(value.to_string()))
    }
    fn visit_string<E>(self, value: String) -> Result<Node, E> {
        Ok(Node::Text(value))
    }
    fn visit_seq<A: SeqAccess<'de>>(self, mut from: A) -> Result<Node, A::Error> {
        let mut list = Vec::new();
        while let Some(node) = from.next_element()? {
            list.push(node);
        }
        Ok(Node::List(list))
    }
    fn visit_map<A: MapAccess<'de>>(self, mut from: A) -> Result<Node, A::Error> {
        let mut object = Vec::new();
        while let Some(member) = from.next_entry()? {
            object.push(member);
        }
        Ok(Node::Object(object))
    }
}
