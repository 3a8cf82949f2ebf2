//! What a case says.

use core::fmt;

use serde::Deserialize;
use serde::de::{Deserializer, Error as _, MapAccess, Visitor};

use crate::code::Code;

/// The files, by topic.
pub const TOPICS: &[(&str, &str)] = &[
    ("account", include_str!("../../data/account.json")),
    ("active", include_str!("../../data/active.json")),
    ("ddi", include_str!("../../data/ddi.json")),
    ("limit", include_str!("../../data/limit.json")),
    ("mix", include_str!("../../data/mix.json")),
    ("pack", include_str!("../../data/pack.json")),
    ("rate", include_str!("../../data/rate.json")),
    ("seed", include_str!("../../data/seed.json")),
    ("sowing", include_str!("../../data/sowing.json")),
    ("treater", include_str!("../../data/treater.json")),
    ("units", include_str!("../../data/units.json")),
    ("viability", include_str!("../../data/viability.json")),
];

/// A file.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Topic {
    /// What it asks.
    pub about: String,
    /// The cases.
    pub cases: Vec<Case>,
}

/// One calculation whose result is known.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Case {
    /// Unique over all files.
    pub id: String,
    /// What is calculated, as in [`crate::TABLE`].
    pub function: String,
    /// What goes in.
    pub inputs: Amounts,
    /// What comes out, or
    pub expect: Option<Amounts>,
    /// why it is refused.
    pub error: Option<Code>,
    /// How far off a result may be.
    pub tolerance: Option<Tolerance>,
    /// A key of `sources.json`.
    pub source: String,
    /// Where in the source.
    pub locator: String,
    /// What the expectation rests on.
    pub kind: Kind,
    /// How it was worked out.
    pub how: Option<String>,
    /// Why the source prints something else.
    pub disagrees: Option<String>,
    /// What it prints.
    pub printed: Option<Amounts>,
}

/// What an expectation rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Kind {
    /// The source prints it for these inputs.
    Published,
    /// It follows from a standard's definition alone.
    Standard,
    /// It is common practice of the trade.
    Practice,
    /// It was worked out as told.
    Worked,
    /// It is true by algebra.
    Identity,
}

impl Kind {
    /// As the files write it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::Standard => "standard",
            Self::Practice => "practice",
            Self::Worked => "worked",
            Self::Identity => "identity",
        }
    }
}

/// A quantity as text, or a plain number.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(untagged)]
pub enum Amount {
    /// `"2.5 fl oz/cwt"`
    Text(String),
    /// `0.25`
    Number(f64),
}

/// How far off a result may be.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(rename_all = "lowercase", deny_unknown_fields)]
pub enum Tolerance {
    /// So much.
    Abs(Amount),
    /// So much of what is expected.
    Rel(f64),
}

/// Named amounts, in the order of the file; a name may stand only once.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Amounts(pub Vec<(String, Amount)>);

impl Amounts {
    /// The amount of a name.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&Amount> {
        self.0.iter().find(|(own, _)| own == name).map(|(_, amount)| amount)
    }

    /// Whether these are the names, in whatever order.
    #[must_use]
    pub fn are(&self, names: &[&str]) -> bool {
        self.0.len() == names.len() && names.iter().all(|name| self.get(name).is_some())
    }
}

impl<'de> Deserialize<'de> for Amounts {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        struct Named;
        impl<'de> Visitor<'de> for Named {
            type Value = Amounts;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("named amounts")
            }
            fn visit_map<M: MapAccess<'de>>(self, mut map: M) -> Result<Amounts, M::Error> {
                let mut amounts = Amounts::default();
                while let Some((name, amount)) = map.next_entry::<String, Amount>()? {
                    if amounts.get(&name).is_some() {
                        return Err(M::Error::custom(format_args!("{name} is there twice")));
                    }
                    amounts.0.push((name, amount));
                }
                Ok(amounts)
            }
        }
        from.deserialize_map(Named)
    }
}

/// What is wrong with a file, and in which case.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DataError {
    /// The file or the case.
    pub at: String,
    /// What is wrong.
    pub problem: String,
}

impl DataError {
    pub(crate) fn new(at: impl Into<String>, problem: impl Into<String>) -> Self {
        Self { at: at.into(), problem: problem.into() }
    }
}

impl fmt::Display for DataError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.at, self.problem)
    }
}
impl core::error::Error for DataError {}

/// Every file.
///
/// # Errors
/// When one is not what its README says.
pub fn topics() -> Result<Vec<Topic>, DataError> {
    TOPICS
        .iter()
        .map(|(name, text)| {
            serde_json::from_str(text).map_err(|why| DataError::new(format!("{name}.json"), why.to_string()))
        })
        .collect()
}
