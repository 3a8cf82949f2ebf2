//! JSON text → a tree that keeps what a map would lose: duplicate names, and the order of fields.

use alloc::borrow::Cow;
use alloc::string::String;
use alloc::vec::Vec;

use hifijson::escape::Error as Escape;
use hifijson::num::LexWrite;
use hifijson::str::{Error as InText, LexAlloc};
use hifijson::token::{Expect, Lex};
use hifijson::{Read, SliceLexer};
use hilum::text::Decimal;

use crate::limits::DEPTH;

#[cfg(test)]
mod tests;

/// One value of a document, whose text it borrows from.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Node<'t> {
    Null,
    Bool(bool),
    Number(f64),
    Text(Cow<'t, str>),
    List(Vec<Self>),
    Object(Vec<(Cow<'t, str>, Self)>),
}

impl<'t> Node<'t> {
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
    pub(crate) fn parse(text: &'t str, decimal: Decimal) -> Result<Self, String> {
        if let Some(bytes) = too_deep(text) {
            return Err(told(&alloc::format!("it is nested more than {DEPTH} levels deep"), text, bytes));
        }
        let mut lexer = SliceLexer::new(text.as_bytes());
        let read = lexer.exactly_one(Lex::ws_peek, |next, lexer| value(next, lexer, decimal));
        read.map_err(|wrong| {
            let left = lexer.as_slice().len();
            let bytes = text.len().saturating_sub(left);
            match wrong {
                Wrong::Next(_) if left == 0 => told(ENDS, text, bytes),
                Wrong::Next(words) => told(words, text, bytes.saturating_add(1)),
                Wrong::Last(words) => told(words, text, bytes),
            }
        })
    }
}

/// Why this is not JSON, as a person would say it.
enum Wrong {
    /// Because of what stands next, or because nothing does.
    Next(&'static str),
    /// Because of what was read last.
    Last(&'static str),
}

const ENDS: &str = "it ends too early; a quote or a bracket is not closed";

impl From<Expect> for Wrong {
    fn from(expected: Expect) -> Self {
        Self::Next(match expected {
            Expect::Value | Expect::ValueOrEnd => "a value is missing",
            Expect::CommaOrEnd => "a comma or a closing bracket is missing",
            Expect::String => "a name needs quotes",
            Expect::Colon => "a colon is missing",
            Expect::Eof => "something stands behind the end",
        })
    }
}

impl From<InText> for Wrong {
    fn from(error: InText) -> Self {
        let half = "half a character is written as an escape; write both halves, or the character itself";
        match error {
            InText::Control => Self::Last("a line break in a text is written \\n"),
            InText::Eof | InText::Escape(Escape::Eof) => Self::Last(ENDS),
            InText::Escape(Escape::ExpectedLowSurrogate) => Self::Next(half),
            InText::Escape(Escape::InvalidChar(_)) => Self::Last(half),
            InText::Escape(_) => Self::Last("a backslash in a text is written twice"),
            InText::Utf8(_) => Self::Last("JSON does not have this"),
        }
    }
}

/// Why, and the line and column of the last of so many bytes.
fn told(words: &str, text: &str, bytes: usize) -> String {
    let read = text.as_bytes().get(..bytes).unwrap_or_default();
    let (mut line, mut column) = (0_usize, 0);
    for bytes in read.split(|byte| *byte == b'\n') {
        (line, column) = (line.saturating_add(1), bytes.len());
    }
    alloc::format!("{words} (line {line}, column {column})")
}

/// The mark around texts.
const QUOTE: u8 = 0x22;

/// How many bytes there are up to the first bracket that is nested too deep. Looked for before reading, which then need not
/// count how deep it is.
fn too_deep(text: &str) -> Option<usize> {
    let mut depth = 0_usize;
    let (mut quoted, mut escaped) = (false, false);
    for (before, byte) in text.bytes().enumerate() {
        match byte {
            _ if escaped => escaped = false,
            b'\\' => escaped = quoted,
            QUOTE => quoted = !quoted,
            b'[' | b'{' if !quoted => depth = depth.saturating_add(1),
            b']' | b'}' if !quoted => depth = depth.saturating_sub(1),
            _ => {}
        }
        if depth > DEPTH {
            return Some(before.saturating_add(1));
        }
    }
    None
}

fn value<'t>(next: u8, lexer: &mut SliceLexer<'t>, decimal: Decimal) -> Result<Node<'t>, Wrong> {
    match next {
        QUOTE => Ok(Node::Text(lexer.discarded().str_string()?)),
        b'-' | b'0'..=b'9' => number(lexer, decimal),
        b'{' => {
            let mut object = Vec::new();
            each(lexer, b'}', |next, lexer| member(next, lexer, decimal).map(|member| object.push(member)))?;
            Ok(Node::Object(object))
        }
        b'[' => {
            let mut list = Vec::new();
            each(lexer, b']', |next, lexer| value(next, lexer, decimal).map(|value| list.push(value)))?;
            Ok(Node::List(list))
        }
        b't' => word(lexer, "true", Node::Bool(true)),
        b'f' => word(lexer, "false", Node::Bool(false)),
        b'n' => word(lexer, "null", Node::Null),
        _ => Err(Expect::Value.into()),
    }
}

/// What stands between two brackets.
fn each<'t>(
    lexer: &mut SliceLexer<'t>,
    end: u8,
    mut read: impl FnMut(u8, &mut SliceLexer<'t>) -> Result<(), Wrong>,
) -> Result<(), Wrong> {
    lexer.discarded().seq(end, Lex::ws_peek, |next, lexer| match next {
        // An empty list ends before anything is read.
        _ if next == end => Err(Wrong::Next("a comma is too many")),
        _ => read(next, lexer),
    })
}

fn member<'t>(
    next: u8,
    lexer: &mut SliceLexer<'t>,
    decimal: Decimal,
) -> Result<(Cow<'t, str>, Node<'t>), Wrong> {
    lexer.expect(|_| Some(next), QUOTE).ok_or(Expect::String)?;
    let name = lexer.str_string()?;
    lexer.expect(Lex::ws_peek, b':').ok_or(Expect::Colon)?;
    let next = lexer.ws_peek().ok_or(Expect::Value)?;
    Ok((name, value(next, lexer, decimal)?))
}

fn word<'t>(lexer: &mut SliceLexer<'_>, word: &str, node: Node<'t>) -> Result<Node<'t>, Wrong> {
    // Letter by letter, to tell which one is wrong.
    let mut letters = word.bytes();
    match letters.try_for_each(|letter| lexer.expect(Read::peek_next, letter)) {
        Some(()) => Ok(node),
        None => Err(Wrong::Next("words need quotes, but for true and false")),
    }
}

fn number(lexer: &mut SliceLexer<'_>, decimal: Decimal) -> Result<Node<'static>, Wrong> {
    let digits = lexer.num_bytes().validated().ok();
    // The lexer takes 01 for two numbers.
    let digits = digits.filter(|_| !lexer.peek_next().is_some_and(|next| next.is_ascii_digit()));
    let (digits, _) = digits.ok_or(Wrong::Next("a number is written as 0.5, 5 or 1e5"))?;
    let number = core::str::from_utf8(digits).ok().and_then(decimal).filter(|number| number.is_finite());
    number.map(Node::Number).ok_or(Wrong::Last("a number is too large"))
}
