//! From a tree to documents, collecting all that is wrong on the way.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::json::Node;
use crate::limits::{ENTRIES, TEXT};
use crate::problem::{Gathered, Pointer, quoted};

/// Read from a value of a document. `None` when it cannot be: a problem is then noted.
pub(crate) trait Read: Sized {
    /// How many of these a list may hold.
    const MOST: usize = ENTRIES;
    fn read(node: &Node, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Self>;
}

/// Read from a field that may be absent.
pub(crate) trait ReadField: Sized {
    fn read_field(node: Option<&Node>, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Self>;
}

impl<T: Read> ReadField for Option<T> {
    fn read_field(node: Option<&Node>, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Self> {
        match node {
            None | Some(Node::Null) => Some(None),
            Some(node) => T::read(node, at, gathered).map(Some),
        }
    }
}

/// A required field.
pub(crate) fn required<T: Read>(node: Option<&Node>, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<T> {
    match node {
        None | Some(Node::Null) => {
            gathered.add(at, None, "is required, but is missing");
            None
        }
        Some(node) => T::read(node, at, gathered),
    }
}

/// The fields of an object: each at most once, and none that is unknown.
pub(crate) fn fields<'n, const N: usize>(
    node: &'n Node,
    names: [&'static str; N],
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<[Option<&'n Node>; N]> {
    let Node::Object(members) = node else {
        refuse(node, "an object", at, gathered);
        return None;
    };
    let mut found = [None; N];
    for (name, value) in members {
        // Nothing more would be told, and to guess what millions of names may have meant takes its time.
        if gathered.is_full() {
            break;
        }
        match names.iter().zip(found.iter_mut()).find(|(known, _)| *known == name) {
            Some((_, slot @ None)) => *slot = Some(value),
            Some(_) => gathered.add(&at.field(name), None, "stands here twice; keep one of them"),
            None => gathered.add(&at.field(name), None, unknown("field", name, &names)),
        }
    }
    Some(found)
}

/// "is an unknown field; did you mean …?"
pub(crate) fn unknown(what: &str, word: &str, known: &[&str]) -> String {
    match hilum::text::closest(word, known.iter().copied()) {
        Some(meant) => format!("is an unknown {what}; did you mean {}?", quoted(meant)),
        None => format!("is an unknown {what}; known here: {}", known.join(", ")),
    }
}

/// Notes that a value is of the wrong kind.
pub(crate) fn refuse(node: &Node, wanted: &str, at: &Pointer<'_>, gathered: &mut Gathered) {
    gathered.add(at, shown(node), format!("is {}, but {wanted} is needed", node.kind()));
}

/// A simple value as it may be shown in a message.
fn shown(node: &Node) -> Option<String> {
    match node {
        Node::Bool(value) => Some(value.to_string()),
        Node::Number(value) => Some(format!("{value:?}")),
        Node::Text(text) => Some(quoted(text)),
        Node::Null | Node::List(_) | Node::Object(_) => None,
    }
}

impl Read for String {
    fn read(node: &Node, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Self> {
        let Node::Text(text) = node else {
            refuse(node, "a text", at, gathered);
            return None;
        };
        // A byte is a character at most.
        let length = if text.len() > TEXT { text.chars().count() } else { 0 };
        if length > TEXT {
            gathered.add(at, shown(node), format!("has {length} characters; at most {TEXT} are read"));
            return None;
        }
        Some(text.clone())
    }
}

impl Read for bool {
    fn read(node: &Node, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Self> {
        if let Node::Bool(value) = node {
            return Some(*value);
        }
        refuse(node, "true or false", at, gathered);
        None
    }
}

impl Read for f64 {
    fn read(node: &Node, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Self> {
        if let Node::Number(value) = node {
            return Some(*value);
        }
        refuse(node, "a number", at, gathered);
        None
    }
}

impl Read for u32 {
    fn read(node: &Node, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Self> {
        let value = f64::read(node, at, gathered)?;
        let Some(count) = hilum::math::to_i32(value).and_then(|whole| Self::try_from(whole).ok()) else {
            gathered.add(at, shown(node), format!("must be a whole number from 0 to {}", i32::MAX));
            return None;
        };
        Some(count)
    }
}

impl<T: Read> Read for Vec<T> {
    fn read(node: &Node, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Self> {
        let Node::List(items) = node else {
            refuse(node, "a list", at, gathered);
            return None;
        };
        if items.len() > T::MOST {
            gathered.add(at, None, format!("has {} entries; at most {} are read", items.len(), T::MOST));
            return None;
        }
        // Every item is read, so that every problem is found.
        let read: Vec<Option<T>> =
            items.iter().enumerate().map(|(i, item)| T::read(item, &at.item(i), gathered)).collect();
        read.into_iter().collect()
    }
}

/// An object of a document: a struct, its reading, its writing and its schema from one declaration.
/// A field of an `Option` may be absent.
macro_rules! document {
    (
        $(#[$doc:meta])*
        pub struct $name:ident $(, at most $most:ident)? {
            $($(#[$field_doc:meta])* $field:ident: $kind:ident $type:ty,)+
        }
    ) => {
        $(#[$doc])*
        #[derive(Clone, Debug, PartialEq, serde::Serialize)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        #[serde(deny_unknown_fields)]
        pub struct $name {
            $($(#[$field_doc])* #[serde(skip_serializing_if = "crate::read::is_absent")] pub $field: document!(@type $kind $type),)+
        }

        impl crate::read::Read for $name {
            $(const MOST: usize = $most;)?
            fn read(
                node: &crate::json::Node,
                at: &crate::problem::Pointer<'_>,
                gathered: &mut crate::problem::Gathered,
            ) -> Option<Self> {
                let [$($field),+] = crate::read::fields(
                    node,
                    [$(crate::read::plain_name(stringify!($field))),+],
                    at,
                    gathered,
                )?;
                $(let $field = document!(
                    @read $kind $field, &at.field(crate::read::plain_name(stringify!($field))), gathered
                );)+
                Some(Self { $($field: $field?),+ })
            }
        }
    };
    (@type required $type:ty) => { $type };
    (@type optional $type:ty) => { Option<$type> };
    (@read required $node:expr, $at:expr, $gathered:expr) => { crate::read::required($node, $at, $gathered) };
    (@read optional $node:expr, $at:expr, $gathered:expr) => { crate::read::ReadField::read_field($node, $at, $gathered) };
}
pub(crate) use document;

/// A word from a fixed list.
macro_rules! words {
    ($(#[$doc:meta])* pub enum $name:ident { $($(#[$variant_doc:meta])* $variant:ident = $word:literal,)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        pub enum $name { $($(#[$variant_doc])* #[serde(rename = $word)] $variant,)+ }

        impl crate::read::Read for $name {
            fn read(
                node: &crate::json::Node,
                at: &crate::problem::Pointer<'_>,
                gathered: &mut crate::problem::Gathered,
            ) -> Option<Self> {
                let word = alloc::string::String::read(node, at, gathered)?;
                match word.as_str() {
                    $($word => Some(Self::$variant),)+
                    _ => {
                        let value = Some(crate::problem::quoted(&word));
                        gathered.add(at, value, crate::read::unknown("word", &word, &[$($word),+]));
                        None
                    }
                }
            }
        }
    };
}
pub(crate) use words;

/// A field's name without Rust's mark for names that are Rust's own words.
pub(crate) const fn plain_name(name: &'static str) -> &'static str {
    match name.as_bytes() {
        [b'r', b'#', ..] => name.split_at(2).1,
        _ => name,
    }
}

/// Whether a field is left out of what is written.
pub(crate) fn is_absent<T: MaybeAbsent>(field: &T) -> bool {
    field.is_absent()
}

/// What may be left out.
pub(crate) trait MaybeAbsent {
    fn is_absent(&self) -> bool {
        false
    }
}

impl<T> MaybeAbsent for Option<T> {
    fn is_absent(&self) -> bool {
        self.is_none()
    }
}
