//! JSON text → a tree that keeps what a map would lose: duplicate names, and the order of fields.

use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::fmt;

use serde::de::{DeserializeSeed, Deserializer, Error, MapAccess, SeqAccess, Visitor};

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
        let mut reader = serde_json::Deserializer::from_str(text);
        let node = At { depth: 1 }.deserialize(&mut reader).and_then(|node| reader.end().map(|()| node));
        node.map_err(|error| told(&error))
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
    ("it is nested", "it is nested more than 32 levels deep"),
];

fn told(error: &serde_json::Error) -> String {
    let own = error.to_string();
    let words = SAID.iter().find(|(begins, _)| own.starts_with(begins));
    let words = words.map_or("JSON does not have this", |(_, words)| words);
    alloc::format!("{words} (line {}, column {})", error.line(), error.column())
}

/// A value at a depth of nesting.
#[derive(Clone, Copy)]
struct At {
    depth: usize,
}

impl At {
    fn inside<E: Error>(self) -> Result<Self, E> {
        if self.depth > DEPTH {
            return Err(E::custom(format_args!("it is nested more than {DEPTH} levels deep")));
        }
        Ok(Self { depth: self.depth.saturating_add(1) })
    }
}

impl<'de> DeserializeSeed<'de> for At {
    type Value = Node;
    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<Node, D::Error> {
        from.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for At {
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
        let inside = self.inside()?;
        let mut list = Vec::new();
        while let Some(node) = from.next_element_seed(inside)? {
            list.push(node);
        }
        Ok(Node::List(list))
    }
    fn visit_map<A: MapAccess<'de>>(self, mut from: A) -> Result<Node, A::Error> {
        let inside = self.inside()?;
        let mut object = Vec::new();
        while let Some(name) = from.next_key()? {
            object.push((name, from.next_value_seed(inside)?));
        }
        Ok(Node::Object(object))
    }
}
