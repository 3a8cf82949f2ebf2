//! Documents → JSON text.

use alloc::format;
use alloc::string::{String, ToString};
use core::fmt::{self, Display};

use serde::ser::{Impossible, Serialize, SerializeSeq, SerializeStruct, Serializer};

/// A document as JSON text, without space.
pub(crate) fn text<T: Serialize>(document: &T) -> Result<String, Unwritable> {
    let mut text = String::new();
    document.serialize(Writer(&mut text))?;
    Ok(text)
}

/// A kind of value that no document holds.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Unwritable;
impl Display for Unwritable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("it holds a kind of value that is not written")
    }
}
impl core::error::Error for Unwritable {}
impl serde::ser::Error for Unwritable {
    fn custom<T: Display>(_: T) -> Self {
        Self
    }
}

struct Writer<'t>(&'t mut String);

/// The inside of a list or an object.
struct Inside<'t> {
    text: &'t mut String,
    is_first: bool,
    end: char,
}

impl Inside<'_> {
    fn next(&mut self) {
        if !core::mem::take(&mut self.is_first) {
            self.text.push(',');
        }
    }

    #[inline(never)]
    fn name(&mut self, name: &'static str) {
        self.next();
        quote(self.text, name);
        self.text.push(':');
    }
}

impl SerializeSeq for Inside<'_> {
    type Ok = ();
    type Error = Unwritable;
    fn serialize_element<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Unwritable> {
        self.next();
        value.serialize(Writer(self.text))
    }
    fn end(self) -> Result<(), Unwritable> {
        self.text.push(self.end);
        Ok(())
    }
}

impl SerializeStruct for Inside<'_> {
    type Ok = ();
    type Error = Unwritable;
    #[inline(never)]
    fn serialize_field<T: Serialize + ?Sized>(
        &mut self,
        name: &'static str,
        value: &T,
    ) -> Result<(), Unwritable> {
        self.name(name);
        value.serialize(Writer(self.text))
    }
    fn end(self) -> Result<(), Unwritable> {
        self.text.push(self.end);
        Ok(())
    }
}

/// A number as serde_json writes it: the fewest digits that are read as the same double; with a point; as 1e-7
/// or 1e16 where that is shorter.
fn number(text: &mut String, value: f64) {
    if !value.is_finite() {
        return text.push_str("null");
    }
    let scientific = format!("{value:e}");
    let (mantissa, exponent) = scientific.split_once('e').unwrap_or((&scientific, "0"));
    let exponent = exponent.parse::<i32>().unwrap_or(0);
    if (-5..16).contains(&exponent) {
        let plain = value.to_string();
        text.push_str(&plain);
        if !plain.contains('.') {
            text.push_str(".0");
        }
    } else {
        text.push_str(mantissa);
        text.push('e');
        if exponent > 0 {
            text.push('+');
        }
        text.push_str(&exponent.to_string());
    }
}

fn quote(text: &mut String, string: &str) {
    text.push('"');
    for c in string.chars() {
        match c {
            '"' => text.push_str("\\\""),
            '\\' => text.push_str("\\\\"),
            '\u{8}' => text.push_str("\\b"),
            '\u{c}' => text.push_str("\\f"),
            '\n' => text.push_str("\\n"),
            '\r' => text.push_str("\\r"),
            '\t' => text.push_str("\\t"),
            c if c < ' ' => {
                text.push_str("\\u00");
                for half in [u32::from(c) >> 4, u32::from(c) & 0xF] {
                    text.extend(char::from_digit(half, 16));
                }
            }
            c => text.push(c),
        }
    }
    text.push('"');
}

macro_rules! whole {
    ($($name:ident $type:ty;)+) => {$(
        fn $name(self, value: $type) -> Result<(), Unwritable> {
            self.0.push_str(&value.to_string());
            Ok(())
        }
    )+};
}

impl<'t> Serializer for Writer<'t> {
    type Ok = ();
    type Error = Unwritable;
    type SerializeSeq = Inside<'t>;
    type SerializeStruct = Inside<'t>;
    type SerializeTuple = Impossible<(), Unwritable>;
    type SerializeTupleStruct = Impossible<(), Unwritable>;
    type SerializeTupleVariant = Impossible<(), Unwritable>;
    type SerializeMap = Impossible<(), Unwritable>;
    type SerializeStructVariant = Impossible<(), Unwritable>;

    whole! { serialize_u32 u32; serialize_u64 u64; }
    fn serialize_f64(self, value: f64) -> Result<(), Unwritable> {
        number(self.0, value);
        Ok(())
    }
    fn serialize_bool(self, value: bool) -> Result<(), Unwritable> {
        self.0.push_str(if value { "true" } else { "false" });
        Ok(())
    }
    fn serialize_str(self, value: &str) -> Result<(), Unwritable> {
        quote(self.0, value);
        Ok(())
    }
    fn serialize_unit_variant(
        self,
        _: &'static str,
        _: u32,
        variant: &'static str,
    ) -> Result<(), Unwritable> {
        self.serialize_str(variant)
    }
    fn serialize_none(self) -> Result<(), Unwritable> {
        self.0.push_str("null");
        Ok(())
    }
    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Result<(), Unwritable> {
        value.serialize(self)
    }
    fn serialize_newtype_struct<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        value: &T,
    ) -> Result<(), Unwritable> {
        value.serialize(self)
    }
    fn serialize_seq(self, _: Option<usize>) -> Result<Inside<'t>, Unwritable> {
        self.0.push('[');
        Ok(Inside { text: self.0, is_first: true, end: ']' })
    }
    fn serialize_struct(self, _: &'static str, _: usize) -> Result<Inside<'t>, Unwritable> {
        self.0.push('{');
        Ok(Inside { text: self.0, is_first: true, end: '}' })
    }

    // No document holds these.
    fn serialize_i8(self, _: i8) -> Result<(), Unwritable> {
        Err(Unwritable)
    }
    fn serialize_i16(self, _: i16) -> Result<(), Unwritable> {
        Err(Unwritable)
    }
    fn serialize_i32(self, _: i32) -> Result<(), Unwritable> {
        Err(Unwritable)
    }
    fn serialize_i64(self, _: i64) -> Result<(), Unwritable> {
        Err(Unwritable)
    }
    fn serialize_u8(self, _: u8) -> Result<(), Unwritable> {
        Err(Unwritable)
    }
    fn serialize_u16(self, _: u16) -> Result<(), Unwritable> {
        Err(Unwritable)
    }
    fn serialize_f32(self, _: f32) -> Result<(), Unwritable> {
        Err(Unwritable)
    }
    fn serialize_char(self, _: char) -> Result<(), Unwritable> {
        Err(Unwritable)
    }
    fn serialize_bytes(self, _: &[u8]) -> Result<(), Unwritable> {
        Err(Unwritable)
    }
    fn serialize_unit(self) -> Result<(), Unwritable> {
        Err(Unwritable)
    }
    fn serialize_unit_struct(self, _: &'static str) -> Result<(), Unwritable> {
        Err(Unwritable)
    }
    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: &T,
    ) -> Result<(), Unwritable> {
        Err(Unwritable)
    }
    fn serialize_tuple(self, _: usize) -> Result<Self::SerializeTuple, Unwritable> {
        Err(Unwritable)
    }
    fn serialize_tuple_struct(
        self,
        _: &'static str,
        _: usize,
    ) -> Result<Self::SerializeTupleStruct, Unwritable> {
        Err(Unwritable)
    }
    fn serialize_tuple_variant(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: usize,
    ) -> Result<Self::SerializeTupleVariant, Unwritable> {
        Err(Unwritable)
    }
    fn serialize_map(self, _: Option<usize>) -> Result<Self::SerializeMap, Unwritable> {
        Err(Unwritable)
    }
    fn serialize_struct_variant(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: usize,
    ) -> Result<Self::SerializeStructVariant, Unwritable> {
        Err(Unwritable)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // serde_json is the general-purpose library that writes the same.
    #[test]
    fn numbers_are_written_as_serde_json_does() {
        let hard = [
            0.0,
            -0.0,
            1.0,
            -2.5,
            5e-324,
            1e-7,
            1e-6,
            1e-5,
            1.5e-5,
            1e-4,
            0.1,
            123_456.789,
            1e15,
            1.5e15,
            1e16,
            1.5e16,
            1e17,
            1e20,
            1e21,
            1e22,
            1e23,
            f64::MAX,
            f64::MIN_POSITIVE,
            f64::NAN,
            f64::INFINITY,
        ];
        for value in hard {
            assert_eq!(text(&value).unwrap(), serde_json::to_string(&value).unwrap());
        }
    }

    // Of two shortest that are equally near, each takes another.
    #[test]
    fn no_number_is_longer_than_serde_json_writes_it_and_all_are_read_as_they_were() {
        let mut bits = 0x9E37_79B9_7F4A_7C15_u64;
        for _ in 0..200_000 {
            bits ^= bits << 13;
            bits ^= bits >> 7;
            bits ^= bits << 17;
            let value = f64::from_bits(bits);
            let written = text(&value).unwrap();
            let theirs = serde_json::to_string(&value).unwrap();
            assert_eq!(written.len(), theirs.len(), "{written} {theirs}");
            let read = written.parse::<f64>().map(f64::to_bits);
            assert!(!value.is_finite() || read == Ok(bits), "{written} {theirs}");
        }
    }

    #[test]
    fn texts_are_written_as_serde_json_does() {
        let all: String = (0..0x300).filter_map(char::from_u32).chain("種🌱\u{2028}".chars()).collect();
        assert_eq!(super::text(&all).unwrap(), serde_json::to_string(&all).unwrap());
    }
}
