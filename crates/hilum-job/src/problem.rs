//! What is wrong with a document, where, and what would be right.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::fmt::{self, Display, Write};

use hilum::text::Decimal;
use serde::Serialize;

use crate::limits::PROBLEMS;

/// One thing that is wrong.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Problem {
    /// Where: a JSON pointer (RFC 6901) into the document; empty for the whole of it.
    pub pointer: String,
    /// The value that was refused, as written, shortened if long.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub value: Option<String>,
    /// What is wrong with it and what would be right.
    pub message: String,
}

impl Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        // The pointer is kept as it is for programs.
        let place = if self.pointer.is_empty() { "the document" } else { &harmless(&self.pointer) };
        match &self.value {
            Some(value) => write!(f, "{place}: {value} {}", self.message),
            None => write!(f, "{place}: {}", self.message),
        }
    }
}

/// All that is wrong with a document, first problem first, at most [`PROBLEMS`].
#[derive(Clone, Debug, PartialEq, Eq, Serialize, thiserror::Error)]
#[error("{}", .0.first().map(ToString::to_string).unwrap_or_default())]
pub struct Problems(Vec<Problem>);

impl Problems {
    /// Each problem.
    pub fn iter(&self) -> impl Iterator<Item = &Problem> {
        self.0.iter()
    }

    /// How many there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// Never: there is at least one.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The problems as JSON text: a list of objects with `pointer`, `value` if there is one, and `message`.
    #[must_use]
    pub fn to_json(&self) -> String {
        // Texts in a list are always written.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// The same problems of a document that stands inside another.
    pub(crate) fn under(mut self, place: &str) -> Self {
        for problem in &mut self.0 {
            problem.pointer.insert_str(0, place);
        }
        self
    }

    /// These problems and others, as many as are reported.
    pub(crate) fn and(mut self, others: Self) -> Self {
        self.0.extend(others.0);
        self.0.truncate(PROBLEMS);
        self
    }

    pub(crate) fn one(problem: Problem) -> Self {
        Self(alloc::vec![problem])
    }
}

/// Where problems gather while a document is read, and how its decimals are.
#[derive(Debug)]
pub(crate) struct Gathered {
    problems: Vec<Problem>,
    pub(crate) decimal: Decimal,
}

/// For what was read before.
impl Default for Gathered {
    fn default() -> Self {
        Self::reading(|_| None)
    }
}

impl Gathered {
    /// Whether as many are known as are reported.
    pub(crate) fn is_full(&self) -> bool {
        self.problems.len() >= PROBLEMS
    }

    pub(crate) fn reading(decimal: Decimal) -> Self {
        Self { problems: Vec::new(), decimal }
    }

    /// Notes a problem with the value at a place.
    pub(crate) fn add(&mut self, at: &Pointer<'_>, value: Option<String>, message: impl Into<String>) {
        if !self.is_full() {
            self.problems.push(Problem { pointer: at.to_string(), value, message: message.into() });
        }
    }

    /// Notes that there is nothing where something must be, and what could be there.
    pub(crate) fn missing(&mut self, at: &Pointer<'_>, give: &str) {
        self.add(at, None, format!("missing. Give {give}"));
    }

    /// What was read, if nothing is wrong with it.
    pub(crate) fn settle<T>(self, read: Option<T>) -> Result<T, Problems> {
        match read {
            Some(read) if self.problems.is_empty() => Ok(read),
            _ => Err(Problems(self.problems)),
        }
    }
}

/// The nearest double, by core's reader.
pub(crate) fn nearest(digits: &str) -> Option<f64> {
    digits.parse().ok()
}

/// A place in a document.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Pointer<'a> {
    Root,
    Field(&'a Pointer<'a>, &'a str),
    Item(&'a Pointer<'a>, usize),
}

impl<'a> Pointer<'a> {
    #[inline(never)]
    pub(crate) fn field(&'a self, name: &'a str) -> Pointer<'a> {
        Pointer::Field(self, name)
    }
    #[inline(never)]
    pub(crate) fn item(&'a self, index: usize) -> Pointer<'a> {
        Pointer::Item(self, index)
    }
}

impl Display for Pointer<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Root => Ok(()),
            Self::Field(parent, name) => {
                write!(f, "{parent}/")?;
                let mut chars = name.chars().take(80);
                chars.try_for_each(|c| match c {
                    '~' => f.write_str("~0"),
                    '/' => f.write_str("~1"),
                    c => f.write_char(c),
                })
            }
            Self::Item(parent, index) => write!(f, "{parent}/{index}"),
        }
    }
}

/// A text in quotes, shortened to what a message can carry.
pub(crate) fn quoted(text: &str) -> String {
    let end = text.char_indices().nth(60).map_or(text.len(), |(end, _)| end);
    let rest = if end < text.len() { "…" } else { "" };
    format!("\"{}{rest}\"", harmless(text.get(..end).unwrap_or_default()))
}

/// A text with what would move the print shown as JSON writes it.
fn harmless(text: &str) -> String {
    let mut shown = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '\n' => shown.push_str("\\n"),
            '\t' => shown.push_str("\\t"),
            '\r' => shown.push_str("\\r"),
            c if moves(c) => shown.extend(format!("\\u{:04x}", u32::from(c)).chars()),
            c => shown.push(c),
        }
    }
    shown
}

/// Control characters, and marks that turn the direction.
pub(crate) fn moves(c: char) -> bool {
    c.is_control() || matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

#[cfg(test)]
mod tests {
    use super::*;

    fn problems(count: usize, pointer: &str) -> Problems {
        let problem = Problem { pointer: pointer.into(), value: None, message: "is wrong".into() };
        Problems(alloc::vec![problem; count])
    }

    #[test]
    fn a_document_inside_another_tells_the_whole_way() {
        let inside = problems(1, "/orders/0").under("/job");
        assert_eq!(inside.to_string(), "/job/orders/0: is wrong");
        assert_eq!(problems(1, "").under("/job").to_string(), "/job: is wrong");
    }

    #[test]
    fn what_would_move_the_print_is_shown_as_json_writes_it() {
        let mut told = problems(1, "/or\u{1b}[2Jders");
        assert_eq!(told.to_string(), "/or\\u001b[2Jders: is wrong");
        told.0[0].value = Some(quoted("a\u{202e}b\nc\u{7}"));
        assert_eq!(told.to_string(), "/or\\u001b[2Jders: \"a\\u202eb\\nc\\u0007\" is wrong");
        assert_eq!(told.0[0].pointer, "/or\u{1b}[2Jders");
        assert_eq!(quoted(&"é".repeat(61)), format!("\"{}…\"", "é".repeat(60)));
    }

    #[test]
    fn problems_together_are_no_more_than_are_reported() {
        let all = problems(PROBLEMS - 1, "/job").and(problems(3, "/orders"));
        assert_eq!(all.len(), PROBLEMS);
        assert_eq!(all.iter().last().map(|problem| problem.pointer.as_str()), Some("/orders"));
    }
}
