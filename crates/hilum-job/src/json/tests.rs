//! serde_json, which read these documents before, is asked what it makes of the same texts.

use alloc::format;
use alloc::string::ToString;
use core::fmt;

use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};

use super::*;
use crate::dice::Dice;
use crate::problem::nearest;

impl<'de> Deserialize<'de> for Node<'de> {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(Any)
    }
}

struct Any;

impl<'de> Visitor<'de> for Any {
    type Value = Node<'de>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a JSON value")
    }
    fn visit_unit<E>(self) -> Result<Node<'de>, E> {
        Ok(Node::Null)
    }
    fn visit_bool<E>(self, value: bool) -> Result<Node<'de>, E> {
        Ok(Node::Bool(value))
    }
    fn visit_f64<E>(self, value: f64) -> Result<Node<'de>, E> {
        Ok(Node::Number(value))
    }
    #[expect(clippy::cast_precision_loss, clippy::as_conversions, reason = "JSON numbers are doubles here")]
    fn visit_u64<E>(self, value: u64) -> Result<Node<'de>, E> {
        Ok(Node::Number(value as f64))
    }
    #[expect(clippy::cast_precision_loss, clippy::as_conversions, reason = "JSON numbers are doubles here")]
    fn visit_i64<E>(self, value: i64) -> Result<Node<'de>, E> {
        Ok(Node::Number(value as f64))
    }
    fn visit_str<E>(self, value: &str) -> Result<Node<'de>, E> {
        Ok(Node::Text(value.to_string().into()))
    }
    fn visit_seq<A: SeqAccess<'de>>(self, mut from: A) -> Result<Node<'de>, A::Error> {
        let mut list = Vec::new();
        while let Some(node) = from.next_element()? {
            list.push(node);
        }
        Ok(Node::List(list))
    }
    fn visit_map<A: MapAccess<'de>>(self, mut from: A) -> Result<Node<'de>, A::Error> {
        let mut object = Vec::new();
        while let Some((name, value)) = from.next_entry::<String, Node>()? {
            object.push((name.into(), value));
        }
        Ok(Node::Object(object))
    }
}

/// How serde_json's messages begin, and what is said here.
const SAID: &[(&str, &str)] = &[
    ("EOF", "it ends too early"),
    ("expected `:`", "a colon is missing"),
    ("expected `,`", "a comma or a closing bracket is missing"),
    ("expected value", "a value is missing"),
    ("expected ident", "words need quotes"),
    ("key must be", "a name needs quotes"),
    ("trailing comma", "a comma is too many"),
    ("trailing characters", "something stands behind the end"),
    ("control character", "a line break in a text"),
    ("invalid escape", "a backslash in a text"),
    ("lone leading surrogate", "half a character"),
    ("unexpected end of hex", "half a character"),
    ("invalid number", "a number is written as"),
    ("number out of range", "a number is too large"),
];

/// The same tree, or the same words about the same place. In an escape and in an exponent, serde_json has read on when it tells
/// that they are wrong; what is told of these is held below.
fn alike(text: &str) -> bool {
    match (serde_json::from_str::<Node>(text), Node::parse(text, nearest)) {
        // Written out, -0 is another than 0.
        (Ok(theirs), Ok(ours)) => assert_eq!(format!("{ours:?}"), format!("{theirs:?}"), "{text}"),
        (Err(theirs), Err(ours)) => {
            let told = theirs.to_string();
            let (_, words) = SAID.iter().find(|(begins, _)| told.starts_with(begins)).expect(&told);
            let place = format!("(line {}, column {})", theirs.line(), theirs.column());
            let apart = ["a backslash", "half a", "a number is too large"];
            let same = ours.starts_with(words) && ours.ends_with(&place);
            assert!(same || apart.iter().any(|begins| ours.starts_with(begins)), "{text}: {ours}; {told}");
            return false;
        }
        (theirs, ours) => panic!("{text}: {theirs:?}, {ours:?}"),
    }
    true
}

impl Dice {
    fn digits(&mut self) -> String {
        let long = [1, 2, 5, 17, 21, 40, 800].get(self.below(7)).copied().unwrap_or(1);
        (0..=self.below(long)).map(|_| self.one_of(&["0", "1", "4", "5", "9"])).collect()
    }
    fn number(&mut self) -> String {
        let whole = match self.below(4) {
            0 => return format!("{:?}", f64::from_bits(self.bits())).replace("NaN", "0").replace("inf", "1"),
            1 => return self.bits().to_string(),
            2 => "0".to_string(),
            _ => "1".to_string() + &self.digits(),
        };
        let sign = self.one_of(&["", "-"]);
        let part = if self.below(2) == 0 { String::new() } else { ".".to_string() + &self.digits() };
        let power = if self.below(2) == 0 { String::new() } else { self.power() };
        format!("{sign}{whole}{part}{power}")
    }
    fn power(&mut self) -> String {
        let size = [10, 30, 310, 400, 3000].get(self.below(5)).copied().unwrap_or(1);
        format!("{}{}{}", self.one_of(&["e", "E"]), self.one_of(&["", "+", "-", "-0"]), self.below(size))
    }
    fn text(&mut self) -> String {
        let piece = [
            "a",
            "lot",
            " ",
            "\u{e9}",
            "\u{1f331}",
            "\\n",
            "\\\"",
            "\\/",
            "\\u00e9",
            "\\ud83c\\udf31",
            "\\\\",
            "\u{7f}",
        ];
        let inside: String = (0..self.below(6)).map(|_| self.one_of(&piece)).collect();
        format!("\"{inside}\"")
    }
    fn space(&mut self) -> &'static str {
        self.one_of(&["", "", "", " ", "\n", "\r\n\t"])
    }
    fn value(&mut self, deep: usize) -> String {
        let value = match self.below(if deep == 0 { 5 } else { 8 }) {
            0 => self.one_of(&["true", "false", "null"]).to_string(),
            1 | 2 => self.text(),
            3 | 4 => self.number(),
            5 => format!("[{}]", self.several(deep, Self::value)),
            _ => format!(
                "{{{}}}",
                self.several(deep, |dice, deep| {
                    let (name, before, after) = (dice.text(), dice.space(), dice.space());
                    format!("{before}{name}{after}:{}", dice.value(deep))
                })
            ),
        };
        format!("{}{value}{}", self.space(), self.space())
    }
    fn several(&mut self, deep: usize, one: impl Fn(&mut Self, usize) -> String) -> String {
        let all: Vec<String> = (0..self.below(4)).map(|_| one(self, deep - 1)).collect();
        if all.is_empty() { self.space().to_string() } else { all.join(",") }
    }
    /// The text with a piece taken out, put in or written twice, or cut off.
    fn broken(&mut self, text: &str) -> String {
        let chars: Vec<char> = text.chars().collect();
        let (from, to) = (self.below(chars.len() + 1), self.below(chars.len() + 1));
        let near = chars.len().min(from + self.below(3));
        let piece = |from, to| chars.get(from..to).unwrap_or_default().iter().collect::<String>();
        let (before, after) = (piece(0, from), piece(near, chars.len()));
        let put = [
            "", ",", ":", "[", "]", "{", "}", "\"", "\\", "\\u", "\\ud83c", "\\udf31", "\\x", "0", "-", ".",
            "e5", "1e999", "+", "t", "nul", "true", "\n", "\u{1}", "\u{0}", " ", "'", "//", "\u{feff}",
            "NaN", "\u{e9}", "\u{85}", "\u{b}", "\u{a0}",
        ];
        match self.below(4) {
            0 => before,
            1 => before + &piece(from, to) + &piece(from, chars.len()),
            _ => before + self.one_of(&put) + &after,
        }
    }
}

#[test]
fn texts_are_read_as_serde_json_reads_them() {
    let mut dice = Dice(0x5eed);
    let (mut read, mut refused) = (0, 0);
    for _ in 0..5_000 {
        let mut text = dice.value(4);
        for _ in 0..8 {
            *if alike(&text) { &mut read } else { &mut refused } += 1;
            text = dice.broken(&text);
        }
    }
    assert!(read > 5_000 && refused > 20_000, "{read} {refused}");
}

#[test]
fn numbers_are_the_doubles_of_serde_json() {
    let mut dice = Dice(0xd1ce);
    let read = (0..40_000).filter(|_| alike(&dice.number())).count();
    assert!(read > 20_000, "{read}");
    for number in [
        "-0",
        "0e9",
        "-0.0e-999999999999",
        "5e-324",
        "2e-324",
        "1.7976931348623158e308",
        "1e-5000",
        "9007199254740993",
    ] {
        assert!(alike(number), "{number}");
    }
    for number in [
        "1.7976931348623159e308",
        "1e999",
        "-1e99999999999",
        "01",
        "-01",
        "00",
        "+1",
        ".5",
        "5.",
        "1e",
        "1e+",
        "--1",
        "1.e5",
    ] {
        assert!(!alike(number), "{number}");
    }
}

#[test]
fn what_is_wrong_with_an_escape_is_told_where_it_is_wrong() {
    for (text, words, column) in [
        (r#"{"a": "\q"}"#, "a backslash", 9),
        (r#"{"a": "\u00g0"}"#, "a backslash", 12),
        (r#"{"a": "\udf31"}"#, "half a", 13),
        (r#"{"a": "\ud83c"}"#, "half a", 14),
        (r#"{"a": "\ud83c\n"}"#, "half a", 14),
        (r#"{"a": "\ud83c\ud83c"}"#, "half a", 20),
        (r#"{"a": 1e99999999999}"#, "a number is too large", 19),
    ] {
        let told = Node::parse(text, nearest).unwrap_err();
        let place = format!("(line 1, column {column})");
        assert!(told.starts_with(words) && told.ends_with(&place), "{text}: {told}");
    }
}
