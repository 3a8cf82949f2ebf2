//! The documents as Rust types, field by field as they are written.

mod account;
mod finding;
mod job;
mod plan;
mod quantity;
mod run;

pub use account::*;
pub use finding::{Code, Finding, Severity};
pub use job::{
    ActiveContent, ActiveLimit, ActiveOnSeed, ActiveRate, After, Choose, CurvePoint, Job, Living, Order,
    Pack, Package, Part, Pump, Refill, Shift, Sowing, Storage, Survival, SurvivalModel, Tank, Treater,
    Treatment, Units, WithLiving,
};
pub use plan::*;
pub use quantity::{Out, Quantity};
pub use run::{DryReadings, Reading, Readings, Run, RunOrder, SeedReadings, TankReadings, Weighed};

use alloc::string::String;

use hilum::text::Decimal;

use crate::json::Node;
use crate::limits::BYTES;
use crate::problem::{Gathered, Pointer, Problem, Problems, nearest};
use crate::read::Read;

impl Job {
    /// Reads a job from JSON text.
    ///
    /// # Errors
    /// All that is wrong with the form of the document: not JSON, unknown or duplicate fields, wrong kinds.
    /// What is wrong with its quantities is found when it is planned.
    pub fn from_json(text: &str) -> Result<Self, Problems> {
        read(text, nearest)
    }
}

impl Run {
    /// Reads a run from JSON text.
    ///
    /// # Errors
    /// As [`Job::from_json`]; what is wrong with its quantities is found when it is accounted for.
    pub fn from_json(text: &str) -> Result<Self, Problems> {
        read(text, nearest)
    }
}

/// Reads a document from JSON text.
pub(crate) fn read<T: Read>(text: &str, decimal: Decimal) -> Result<T, Problems> {
    let whole = |message| Problems::one(Problem { pointer: String::new(), value: None, message });
    if text.len() > BYTES {
        return Err(whole(alloc::format!("has {} bytes; at most {BYTES} (16 MiB) are read", text.len())));
    }
    let node = Node::parse(text.strip_prefix('\u{FEFF}').unwrap_or(text), decimal)
        .map_err(|error| whole(alloc::format!("is not JSON that can be read: {error}")))?;
    let mut gathered = Gathered::reading(decimal);
    let mut read = T::blank();
    read.fill(&node, &Pointer::Root, &mut gathered);
    gathered.settle(Some(read))
}
