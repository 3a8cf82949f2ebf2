//! From a tree to documents, collecting all that is wrong on the way.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::{self, Vec};

use crate::digits::exact;
use crate::json::Node;
use crate::limits::{ENTRIES, TEXT};
use crate::problem::{Gathered, Pointer, quoted};

/// Filled in from a value of a document: problems are noted, and whoever gathers them throws away what was
/// read. Filling in place, field by field, is a third of the size of reading and putting together.
pub(crate) trait Fill {
    fn fill(&mut self, node: &Node<'_>, at: &Pointer<'_>, gathered: &mut Gathered);
    /// Whether it may be left out of an object.
    fn is_optional(&self) -> bool {
        false
    }
}

/// A field that may be absent, and is not.
impl<T: Read> Fill for Option<T> {
    fn fill(&mut self, node: &Node<'_>, at: &Pointer<'_>, gathered: &mut Gathered) {
        self.insert(T::blank()).fill(node, at, gathered);
    }
    fn is_optional(&self) -> bool {
        true
    }
}

/// What a document is made of.
pub(crate) trait Read: Fill {
    /// How many of these a list may hold.
    const MOST: usize = ENTRIES;
    /// Before it is filled in.
    fn blank() -> Self;
}

/// The fields of an object, to be taken in their order.
pub(crate) struct Fields<'a, 'n> {
    found: vec::IntoIter<(&'static str, Option<&'n Node<'n>>)>,
    at: &'a Pointer<'a>,
    gathered: &'a mut Gathered,
}

impl<'a, 'n> Fields<'a, 'n> {
    /// Each at most once, and none that is unknown.
    #[inline(never)]
    pub(crate) fn of(
        node: &'n Node<'n>,
        names: &'static [&'static str],
        at: &'a Pointer<'a>,
        gathered: &'a mut Gathered,
    ) -> Option<Self> {
        let Node::Object(members) = node else {
            refuse(node, "an object", at, gathered);
            return None;
        };
        let mut found = Vec::new();
        for name in names {
            found.push((*name, None));
        }
        for (name, value) in members {
            // Nothing more would be told, and to guess what millions of names may have meant takes its time.
            if gathered.is_full() {
                break;
            }
            match found.iter_mut().find(|(known, _)| known == name) {
                Some((_, slot @ None)) => *slot = Some(value),
                Some(_) => gathered.add(&at.field(name), None, "stands here twice; keep one of them"),
                None => gathered.add(&at.field(name), None, unknown("field", name, names)),
            }
        }
        Some(Self { found: found.into_iter(), at, gathered })
    }

    /// Fills the next field.
    #[inline(never)]
    pub(crate) fn fill(&mut self, field: &mut dyn Fill) {
        let (name, node) = self.found.next().unwrap_or_default();
        let at = self.at.field(name);
        match node.filter(|node| **node != Node::Null) {
            Some(node) => field.fill(node, &at, self.gathered),
            None if field.is_optional() => {}
            None => self.gathered.missing(&at, example(name)),
        }
    }
}

/// What a required field holds, and how it may look.
fn example(name: &str) -> &'static str {
    match name {
        "orders" | "treatments" => "a list",
        "order" => "the order's number, such as \"1041\"",
        "lot" => "the seed lot, such as \"TB-114\"",
        "amount" => "an amount of seed such as \"30000 lb\"",
        "size" => "a seed size such as \"2850 seeds/lb\"",
        "holds" => "how much seed it holds, such as \"40 units\"",
        "active" => "the common name of the substance",
        "per_seed" => "a dose on one seed such as \"0.03 mg/seed\"",
        "product" | "living" => "the name of the product",
        "rate" => "a dose of the substance such as \"40 g/100 kg\"",
        "content" => "a content such as \"480 g/L\"",
        "titre" => "a titre such as \"1e10 CFU/mL\"",
        "model" => "a survival model such as \"log_linear\"",
        "pack" | "part" | "tank" => "its name",
        "fill" | "capacity" => "a volume such as \"30 gal\"",
        "setting" | "value" => "a number",
        "flow" => "a flow such as \"40 fl oz/min\"",
        "from" | "to" => "a date and time such as \"2027-04-12T07:30:00-05:00\"",
        "for" => "a time such as \"20 d\"",
        "at" => "a temperature such as \"45 degF\"",
        "job" => "the job that was run",
        "seed" => "what the seed's scale showed, such as {\"mass\": \"30000 lb\"}",
        "start" | "end" | "reading" => "what gauge or scale showed, such as \"12.4 gal\" or \"40 lb\"",
        "resolution" => "the smallest step shown, such as \"0.1 gal\" or \"0.5 lb\"",
        "unit" => "a unit such as \"fl oz/cwt\"",
        _ => "a value",
    }
}

/// "is an unknown field; did you mean …?"
pub(crate) fn unknown(what: &str, word: &str, known: &[&str]) -> String {
    match hilum::text::closest(word, known.iter().copied()) {
        Some(meant) => format!("is an unknown {what}; did you mean {}?", quoted(meant)),
        None => format!("is an unknown {what}; known here: {}", known.join(", ")),
    }
}

/// Notes that a value is of the wrong kind.
pub(crate) fn refuse(node: &Node<'_>, wanted: &str, at: &Pointer<'_>, gathered: &mut Gathered) {
    gathered.add(at, shown(node), format!("is {}, but {wanted} is needed", node.kind()));
}

/// A simple value as it may be shown in a message.
fn shown(node: &Node<'_>) -> Option<String> {
    match node {
        Node::Bool(value) => Some(value.to_string()),
        Node::Number(value) => Some(exact(*value)),
        Node::Text(text) => Some(quoted(text)),
        Node::Null | Node::List(_) | Node::Object(_) => None,
    }
}

impl Read for String {
    fn blank() -> Self {
        Self::new()
    }
}

impl Fill for String {
    fn fill(&mut self, node: &Node<'_>, at: &Pointer<'_>, gathered: &mut Gathered) {
        let Node::Text(text) = node else { return refuse(node, "a text", at, gathered) };
        // A byte is a character at most.
        let length = if text.len() > TEXT { text.chars().count() } else { 0 };
        if length > TEXT {
            return gathered.add(
                at,
                shown(node),
                format!("has {length} characters; at most {TEXT} are read"),
            );
        }
        *self = text.to_string();
    }
}

impl Read for bool {
    fn blank() -> Self {
        false
    }
}

impl Fill for bool {
    fn fill(&mut self, node: &Node<'_>, at: &Pointer<'_>, gathered: &mut Gathered) {
        match node {
            Node::Bool(value) => *self = *value,
            _ => refuse(node, "true or false", at, gathered),
        }
    }
}

impl Read for f64 {
    fn blank() -> Self {
        0.0
    }
}

impl Fill for f64 {
    fn fill(&mut self, node: &Node<'_>, at: &Pointer<'_>, gathered: &mut Gathered) {
        match node {
            Node::Number(value) => *self = *value,
            _ => refuse(node, "a number", at, gathered),
        }
    }
}

impl Read for u32 {
    fn blank() -> Self {
        0
    }
}

impl Fill for u32 {
    fn fill(&mut self, node: &Node<'_>, at: &Pointer<'_>, gathered: &mut Gathered) {
        let Node::Number(value) = node else { return refuse(node, "a number", at, gathered) };
        match hilum::math::to_i32(*value).and_then(|whole| Self::try_from(whole).ok()) {
            Some(count) => *self = count,
            None => gathered.add(at, shown(node), format!("must be a whole number from 0 to {}", i32::MAX)),
        }
    }
}

impl<T: Read> Read for Vec<T> {
    fn blank() -> Self {
        Self::new()
    }
}

impl<T: Read> Fill for Vec<T> {
    fn fill(&mut self, node: &Node<'_>, at: &Pointer<'_>, gathered: &mut Gathered) {
        fill_list(self, T::MOST, node, at, gathered);
    }
}

/// A list of whatever documents are made of.
trait List {
    /// A blank entry at its end.
    fn add(&mut self) -> Option<&mut dyn Fill>;
}

impl<T: Read> List for Vec<T> {
    fn add(&mut self) -> Option<&mut dyn Fill> {
        self.push(T::blank());
        let last: &mut dyn Fill = self.last_mut()?;
        Some(last)
    }
}

fn fill_list(list: &mut dyn List, most: usize, node: &Node<'_>, at: &Pointer<'_>, gathered: &mut Gathered) {
    let Node::List(items) = node else { return refuse(node, "a list", at, gathered) };
    if items.len() > most {
        let message = format!("has {} entries; at most {most} are read", items.len());
        return gathered.add(at, None, message);
    }
    for (i, item) in items.iter().enumerate() {
        if let Some(blank) = list.add() {
            blank.fill(item, &at.item(i), gathered);
        }
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
            fn blank() -> Self {
                Self { $($field: document!(@blank $kind $type)),+ }
            }
        }

        impl crate::read::Fill for $name {
            fn fill(
                &mut self,
                node: &crate::json::Node<'_>,
                at: &crate::problem::Pointer<'_>,
                gathered: &mut crate::problem::Gathered,
            ) {
                const NAMES: &[&str] = &[$(crate::read::plain_name(stringify!($field))),+];
                if let Some(mut fields) = crate::read::Fields::of(node, NAMES, at, gathered) {
                    $(fields.fill(&mut self.$field);)+
                }
            }
        }
    };
    (@type required $type:ty) => { $type };
    (@type optional $type:ty) => { Option<$type> };
    (@blank required $type:ty) => { <$type as crate::read::Read>::blank() };
    (@blank optional $type:ty) => { None };
}
pub(crate) use document;

/// Which of the words this is.
pub(crate) fn word(
    node: &Node<'_>,
    words: &[&str],
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<usize> {
    let Node::Text(text) = node else {
        refuse(node, "a text", at, gathered);
        return None;
    };
    let found = words.iter().position(|word| word == text);
    if found.is_none() {
        gathered.add(at, Some(quoted(text)), unknown("word", text, words));
    }
    found
}

/// A word from a fixed list.
macro_rules! words {
    ($(#[$doc:meta])* pub enum $name:ident {
        $(#[$first_doc:meta])* $first:ident = $first_word:literal,
        $($(#[$variant_doc:meta])* $variant:ident = $word:literal,)*
    }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        pub enum $name {
            $(#[$first_doc])* #[serde(rename = $first_word)] $first,
            $($(#[$variant_doc])* #[serde(rename = $word)] $variant,)*
        }

        impl crate::read::Read for $name {
            fn blank() -> Self {
                Self::$first
            }
        }

        impl crate::read::Fill for $name {
            fn fill(
                &mut self,
                node: &crate::json::Node<'_>,
                at: &crate::problem::Pointer<'_>,
                gathered: &mut crate::problem::Gathered,
            ) {
                const WORDS: &[&str] = &[$first_word $(, $word)*];
                const ALL: &[$name] = &[$name::$first $(, $name::$variant)*];
                if let Some(word) = crate::read::word(node, WORDS, at, gathered).and_then(|at| ALL.get(at)) {
                    *self = *word;
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
