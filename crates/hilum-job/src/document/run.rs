//! The run: what scales, gauges and clocks showed while a job was run.
//!
//! ```json
//! { "format": 1, "job": { … }, "tolerance": "5 %",
//!   "orders": [ {
//!     "order": "Q-311",
//!     "seed": { "start": "41200 lb", "end": "19840 lb", "weighed": "before", "resolution": "20 lb" },
//!     "tanks": [ { "tank": "Coat", "start": "9.2 gal", "end": "1.4 gal", "added": [ "9 gal" ],
//!                  "lost": { "reading": "12 fl oz", "resolution": "1 fl oz" }, "resolution": "0.1 gal" } ],
//!     "dry": [ { "product": "Talc", "start": "25 lb", "end": "3 lb", "resolution": "0.1 lb" } ],
//!     "from": "2027-04-14T07:20:00-05:00", "to": "2027-04-14T09:05:00-05:00",
//!     "operator": "R. Vance", "certificate": "AP-20871", "place": "Quillwater shed" } ] }
//! ```
//!
//! A reading is a quantity, or `{ "reading", "resolution" }`. The resolution is the smallest step that the
//! instrument shows; one beside the readings holds for each that has none of its own, 0 says that an amount is
//! known exactly. Rates refer to seed as it was before treating.

use alloc::string::String;
use alloc::vec::Vec;

use serde::Serialize;

use super::{Job, Quantity};
use crate::json::Node;
use crate::limits::{ORDERS, TANKS, TREATMENTS};
use crate::problem::{Gathered, Pointer};
use crate::read::{Fields, Fill, MaybeAbsent, Read, document, words};

impl MaybeAbsent for Job {}
impl MaybeAbsent for SeedReadings {}
impl MaybeAbsent for Reading {}

document! {
    /// A job, and what was read while it was run.
    pub struct Run {
        /// The version of this format: 1, also if absent.
        format: optional u32,
        /// The job that was run.
        job: required Job,
        /// How far a rate may be from its target, as a share; 5 % if absent.
        tolerance: optional Quantity,
        /// The orders that were run; not all of the job's need be here.
        orders: required Vec<RunOrder>,
    }
}

document! {
    /// What was read while one order was run.
    pub struct RunOrder, at most ORDERS {
        /// The order's number in the job; at most once in a run.
        order: required String,
        /// How much seed was treated.
        seed: required SeedReadings,
        /// What each tank gave.
        tanks: optional Vec<TankReadings>,
        /// What was used of each product that is applied dry.
        dry: optional Vec<DryReadings>,
        /// When the first seed was treated: RFC 3339.
        from: optional String,
        /// When the last seed was treated: RFC 3339.
        to: optional String,
        /// Who applied the products, or supervised it.
        operator: optional String,
        /// The number of that person's certificate or licence.
        certificate: optional String,
        /// Where the seed was treated.
        place: optional String,
    }
}

document! {
    /// How much seed was treated: its mass, or what a scale showed at the start and at the end.
    pub struct SeedReadings {
        /// A bin's or a totaliser's reading before the first seed; a mass.
        start: optional Reading,
        /// Its reading after the last seed; less than at the start for a bin, more for a totaliser.
        end: optional Reading,
        /// The mass of the seed, instead of start and end.
        mass: optional Reading,
        /// Whether it was weighed before treating (if absent) or after, with what was put on it.
        weighed: optional Weighed,
        /// The smallest step that the scale shows.
        resolution: optional Quantity,
    }
}

words! {
    /// When seed was weighed.
    pub enum Weighed {
        /// As it came.
        Before = "before",
        /// With the products on it, whose mass comes off.
        After = "after",
    }
}

document! {
    /// What one tank showed, all by volume or all by mass.
    pub struct TankReadings, at most TANKS {
        /// The tank's name in the job.
        tank: required String,
        /// What was in it before the first seed.
        start: required Reading,
        /// What was in it after the last seed.
        end: required Reading,
        /// What was put in between: a reading or a list of them.
        added: optional Readings,
        /// What was drawn but did not go on the seed: priming, flushing, catches not returned, spills.
        lost: optional Readings,
        /// The smallest step that the gauge, meter or scale shows.
        resolution: optional Quantity,
        /// Of the mix, where a mass must be turned into a volume or the reverse; from its parts if absent.
        density: optional Quantity,
    }
}

document! {
    /// What was used of a product that is applied dry, by mass.
    pub struct DryReadings, at most TREATMENTS {
        /// The product.
        product: required String,
        /// What there was of it before the first seed.
        start: required Reading,
        /// What was left of it after the last seed.
        end: required Reading,
        /// What was put in between: a reading or a list of them.
        added: optional Readings,
        /// What was spilt or swept up.
        lost: optional Readings,
        /// The smallest step that the scale shows.
        resolution: optional Quantity,
    }
}

/// What an instrument showed.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(untagged)]
pub enum Reading {
    /// An amount; its resolution stands beside the readings, if anywhere.
    Amount(Quantity),
    /// An amount with a resolution of its own.
    Resolved {
        /// What was read.
        reading: Quantity,
        /// The smallest step that the instrument shows.
        resolution: Quantity,
    },
}

/// One reading or several.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(untagged)]
pub enum Readings {
    /// One.
    One(Reading),
    /// As many as there were.
    Several(Vec<Reading>),
}

impl Readings {
    /// Each of them.
    #[must_use]
    pub fn as_slice(&self) -> &[Reading] {
        match self {
            Self::One(reading) => core::slice::from_ref(reading),
            Self::Several(readings) => readings,
        }
    }
}

impl Read for Reading {
    fn blank() -> Self {
        Self::Amount(Quantity::blank())
    }
}

impl Fill for Reading {
    fn fill(&mut self, node: &Node<'_>, at: &Pointer<'_>, gathered: &mut Gathered) {
        let names: &[&str] = &["reading", "resolution"];
        let mut reading = Quantity::blank();
        *self = match node {
            Node::Object(members) if members.iter().any(|(name, _)| names.contains(&name.as_ref())) => {
                let mut resolution = Quantity::blank();
                if let Some(mut fields) = Fields::of(node, &["reading", "resolution"], at, gathered) {
                    fields.fill(&mut reading);
                    fields.fill(&mut resolution);
                }
                Self::Resolved { reading, resolution }
            }
            _ => {
                reading.fill(node, at, gathered);
                Self::Amount(reading)
            }
        };
    }
}

impl Read for Readings {
    fn blank() -> Self {
        Self::Several(Vec::new())
    }
}

impl Fill for Readings {
    fn fill(&mut self, node: &Node<'_>, at: &Pointer<'_>, gathered: &mut Gathered) {
        *self = if matches!(node, Node::List(_)) {
            let mut several = Vec::new();
            several.fill(node, at, gathered);
            Self::Several(several)
        } else {
            let mut one = Reading::blank();
            one.fill(node, at, gathered);
            Self::One(one)
        };
    }
}

#[cfg(test)]
mod tests {
    use alloc::string::ToString;

    use super::*;
    use crate::problem::nearest;

    /// What a text is read as, and what is wrong with it.
    fn read<T: Read>(text: &str) -> Result<T, alloc::string::String> {
        let mut gathered = Gathered::default();
        let mut read = T::blank();
        read.fill(&Node::parse(text, nearest).unwrap(), &Pointer::Root, &mut gathered);
        gathered.settle(Some(read)).map_err(|problems| problems.to_string())
    }

    #[test]
    fn a_reading_is_an_amount_or_carries_its_resolution() {
        let gallons = Reading::Amount("12.4 gal".into());
        assert_eq!(read(r#""12.4 gal""#), Ok(gallons.clone()));
        let pair = Quantity::Pair { value: 12.4, unit: "gal".into() };
        assert_eq!(read(r#"{"value": 12.4, "unit": "gal"}"#), Ok(Reading::Amount(pair)));
        let resolved = Reading::Resolved { reading: "12.4 gal".into(), resolution: "0.1 gal".into() };
        assert_eq!(read(r#"{"reading": "12.4 gal", "resolution": "0.1 gal"}"#), Ok(resolved));
        assert_eq!(read(r#""12.4 gal""#), Ok(Readings::One(gallons.clone())));
        assert_eq!(read(r#"["12.4 gal"]"#), Ok(Readings::Several(alloc::vec![gallons])));
    }

    #[test]
    fn a_reading_that_says_half_is_refused() {
        let refused = |text: &str| read::<Reading>(text).unwrap_err();
        assert!(refused(r#"{"resolution": "0.1 gal"}"#).starts_with("/reading: "));
        assert!(refused(r#"{"reading": "12 gal", "resolutoin": "1 gal"}"#).starts_with("/resolutoin: "));
        assert!(refused("12.4").contains("a quantity"));
    }
}
