//! JSON text → a tree (RFC 8259).

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use hilum::text::Decimal;

use super::Node;
use crate::limits::DEPTH;

/// What was expected, where something else stands.
type Expected = &'static str;

/// The one value of a text.
pub(super) fn whole(text: &str, decimal: Decimal) -> Result<Node, String> {
    let mut reader = Reader { text, at: 0, decimal };
    let read = reader.value(1).and_then(|node| {
        reader.space();
        if reader.at < text.len() { Err("nothing more") } else { Ok(node) }
    });
    read.map_err(|expected| reader.told(expected))
}

struct Reader<'t> {
    text: &'t str,
    at: usize,
    decimal: Decimal,
}

const TOO_DEEP: Expected = "fewer levels";

impl Reader<'_> {
    /// Where reading stopped, and why.
    fn told(&self, expected: Expected) -> String {
        let before = self.text.as_bytes().get(..self.at).unwrap_or(&[]);
        let line = before.split(|byte| *byte == b'\n').count();
        let column = before.iter().rev().take_while(|byte| **byte != b'\n').count().saturating_add(1);
        let why = if expected == TOO_DEEP {
            format!("it is nested more than {DEPTH} levels deep")
        } else {
            format!("{expected} is expected")
        };
        format!("{why} at line {line} column {column}")
    }

    fn peek(&self) -> u8 {
        self.text.as_bytes().get(self.at).copied().unwrap_or(0)
    }

    fn step(&mut self) {
        self.at = self.at.saturating_add(1);
    }

    fn space(&mut self) {
        while matches!(self.peek(), b' ' | b'\t' | b'\n' | b'\r') {
            self.step();
        }
    }

    /// Whether a character comes next, after space; it is stepped over.
    fn comes(&mut self, wanted: u8) -> bool {
        self.space();
        let comes = self.peek() == wanted;
        if comes {
            self.step();
        }
        comes
    }

    fn value(&mut self, depth: usize) -> Result<Node, Expected> {
        self.space();
        match self.peek() {
            b'{' | b'[' if depth > DEPTH => Err(TOO_DEEP),
            b'{' => self.object(depth.saturating_add(1)),
            b'[' => self.list(depth.saturating_add(1)),
            b'"' => self.string().map(Node::Text),
            b'-' | b'0'..=b'9' => self.number(),
            b't' => self.word("true", Node::Bool(true)),
            b'f' => self.word("false", Node::Bool(false)),
            b'n' => self.word("null", Node::Null),
            _ => Err("a value"),
        }
    }

    fn word(&mut self, word: Expected, node: Node) -> Result<Node, Expected> {
        let rest = self.text.get(self.at..).unwrap_or("");
        if !rest.starts_with(word) {
            return Err(word);
        }
        self.at = self.at.saturating_add(word.len());
        Ok(node)
    }

    fn list(&mut self, depth: usize) -> Result<Node, Expected> {
        self.step();
        let mut list = Vec::new();
        if self.comes(b']') {
            return Ok(Node::List(list));
        }
        loop {
            list.push(self.value(depth)?);
            if self.comes(b']') {
                return Ok(Node::List(list));
            }
            if !self.comes(b',') {
                return Err("a comma or ]");
            }
        }
    }

    fn object(&mut self, depth: usize) -> Result<Node, Expected> {
        self.step();
        let mut object = Vec::new();
        if self.comes(b'}') {
            return Ok(Node::Object(object));
        }
        loop {
            self.space();
            if self.peek() != b'"' {
                return Err("a name in quotes");
            }
            let name = self.string()?;
            if !self.comes(b':') {
                return Err("a colon");
            }
            object.push((name, self.value(depth)?));
            if self.comes(b'}') {
                return Ok(Node::Object(object));
            }
            if !self.comes(b',') {
                return Err("a comma or }");
            }
        }
    }

    fn number(&mut self) -> Result<Node, Expected> {
        const EXPECTED: Expected = "a number as 0.5, 5 or 1e5";
        let start = self.at;
        if self.peek() == b'-' {
            self.step();
        }
        if self.peek() == b'0' {
            self.step();
        } else {
            self.digits()?;
        }
        if self.peek() == b'.' {
            self.step();
            self.digits()?;
        }
        if matches!(self.peek(), b'e' | b'E') {
            self.step();
            if matches!(self.peek(), b'+' | b'-') {
                self.step();
            }
            self.digits()?;
        }
        let digits = self.text.get(start..self.at).unwrap_or("");
        match (self.decimal)(digits) {
            Some(number) if number.is_finite() => Ok(Node::Number(number)),
            _ => Err(EXPECTED),
        }
    }

    fn digits(&mut self) -> Result<(), Expected> {
        if !self.peek().is_ascii_digit() {
            return Err("a digit");
        }
        while self.peek().is_ascii_digit() {
            self.step();
        }
        Ok(())
    }

    fn string(&mut self) -> Result<String, Expected> {
        self.step();
        let mut string = String::new();
        loop {
            let start = self.at;
            while !matches!(self.peek(), b'"' | b'\\' | 0..0x20) {
                self.step();
            }
            string.push_str(self.text.get(start..self.at).unwrap_or(""));
            match self.peek() {
                b'"' => {
                    self.step();
                    return Ok(string);
                }
                b'\\' => string.push(self.escape()?),
                _ => return Err("the end of a text, or a control character as an escape,"),
            }
        }
    }

    fn escape(&mut self) -> Result<char, Expected> {
        self.step();
        let letter = self.peek();
        self.step();
        Ok(match letter {
            b'"' | b'\\' | b'/' => char::from(letter),
            b'b' => '\u{8}',
            b'f' => '\u{c}',
            b'n' => '\n',
            b'r' => '\r',
            b't' => '\t',
            b'u' => return self.code_point(),
            _ => return Err("an escape such as \\n or \\u00e9"),
        })
    }

    /// `\u` is read; a character beyond the first plane is written as two halves (RFC 8259, 7).
    fn code_point(&mut self) -> Result<char, Expected> {
        const EXPECTED: Expected = "the other half of a surrogate pair";
        let first = self.hex()?;
        if !(0xD800..0xE000).contains(&first) {
            return char::from_u32(first).ok_or(EXPECTED);
        }
        if self.peek() != b'\\' {
            return Err(EXPECTED);
        }
        self.step();
        if self.peek() != b'u' {
            return Err(EXPECTED);
        }
        self.step();
        let second = self.hex()?;
        char::decode_utf16([first, second].map(|half| u16::try_from(half).unwrap_or(0)))
            .next()
            .and_then(Result::ok)
            .filter(|c| u32::from(*c) > 0xFFFF)
            .ok_or(EXPECTED)
    }

    fn hex(&mut self) -> Result<u32, Expected> {
        let mut value = 0_u32;
        for _ in 0..4 {
            let digit = char::from(self.peek()).to_digit(16).ok_or("four hexadecimal digits")?;
            value = value.saturating_mul(16).saturating_add(digit);
            self.step();
        }
        Ok(value)
    }
}

#[cfg(test)]
mod tests {
    use alloc::vec;

    use super::*;
    use crate::problem::nearest;

    fn number(text: &str) -> Result<f64, String> {
        match whole(text, nearest)? {
            Node::Number(number) => Ok(number),
            other => Err(format!("{other:?}")),
        }
    }

    // serde_json, with exact conversion of decimals, is the general-purpose library that reads the same text.
    #[test]
    fn the_same_is_read_and_refused_as_serde_json_does() {
        let texts = [
            "",
            " ",
            "{",
            "[",
            "]",
            "{}",
            "[]",
            "{} {}",
            "[1,]",
            "[,1]",
            "{\"a\":}",
            "{\"a\" 1}",
            "{a:1}",
            "nul",
            "null",
            "true",
            "tru e",
            "false",
            "-",
            "-0",
            "0",
            "00",
            "01",
            "1.",
            ".5",
            "1.5e",
            "1e5",
            "1E+5",
            "1e-5",
            "+1",
            "1e400",
            "-1e400",
            "1e-400",
            "NaN",
            "Infinity",
            "\"",
            "\"a",
            "\"\\\"\"",
            "\"\\x\"",
            "\"\\u12\"",
            "\"\\u00e9\"",
            "\"\\ud83c\\udf31\"",
            "\"\\ud83c\"",
            "\"\\ud83cx\"",
            "\"\\udf31\"",
            "\"\\ud83c\\u0041\"",
            "\"\u{1}\"",
            "\"\u{7f}\"",
            "\"\n\"",
            "\"種\"",
            "\u{a0}1",
            "[1 2]",
            "[1,2]",
            "{\"a\":1,}",
            "{\"a\":1 \"b\":2}",
            "\t{\r\n\"a\" : [ 1 , 2 ] }\n",
            "9007199254740993",
            "0.1e1",
            "123456789012345678901234567890",
            "1e5x",
            "\"\\/\\b\\f\\n\\r\\t\"",
            "/*c*/1",
            "'a'",
            "\0",
            "\"\0\"",
        ];
        for text in texts {
            let theirs = serde_json::from_str::<serde_json::Value>(text);
            match whole(text, nearest) {
                Ok(node) => {
                    assert_eq!(Ok(node), theirs.map(|value| as_node(&value)).map_err(|_| ()), "{text}");
                }
                Err(why) => assert!(theirs.is_err(), "{text}: {why}"),
            }
        }
    }

    fn as_node(value: &serde_json::Value) -> Node {
        use serde_json::Value;
        match value {
            Value::Null => Node::Null,
            Value::Bool(value) => Node::Bool(*value),
            Value::Number(number) => number.as_f64().map_or(Node::Null, Node::Number),
            Value::String(text) => Node::Text(text.clone()),
            Value::Array(list) => Node::List(list.iter().map(as_node).collect()),
            Value::Object(object) => {
                Node::Object(object.iter().map(|(name, value)| (name.clone(), as_node(value))).collect())
            }
        }
    }

    #[test]
    fn decimals_are_read_to_the_nearest_double() {
        // IEEE 754: halfway between two doubles, the even one; 2^53 + 1 is such.
        assert_eq!(number("9007199254740993"), Ok(9_007_199_254_740_992.0));
        assert_eq!(number("-0").map(f64::is_sign_negative), Ok(true));
    }

    #[test]
    fn names_stay_in_order_and_twice() {
        let twice = vec![("b".into(), Node::Null), ("a".into(), Node::Null), ("b".into(), Node::Bool(true))];
        assert_eq!(whole("{\"b\":null,\"a\":null,\"b\":true}", nearest), Ok(Node::Object(twice)));
    }

    #[test]
    fn the_place_is_told() {
        assert_eq!(
            whole("{\n  \"a\": x", nearest)
                .map_err(|why| why.contains("a value is expected at line 2 column 8")),
            Err(true)
        );
        let deep = "[".repeat(DEPTH + 1);
        assert_eq!(whole(&deep, nearest).map_err(|why| why.contains("nested more than")), Err(true));
        let just = format!("{}{}", "[".repeat(DEPTH), "]".repeat(DEPTH));
        assert!(whole(&just, nearest).is_ok());
    }
}
