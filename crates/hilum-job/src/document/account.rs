//! The account: what was really applied, lot by lot, and the record of it.

use alloc::string::String;
use alloc::vec::Vec;

use serde::{Deserialize, Serialize};

use super::{Finding, Out, PlantByReason, Units};

/// The account of a run.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Account {
    /// The version of this format: 1.
    pub format: u32,
    /// The version of the library that wrote it.
    pub hilum: String,
    /// The job's title.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub title: Option<String>,
    /// What it is written in.
    pub units: Units,
    /// How far a rate may be from its target, as a share of it.
    pub tolerance: f64,
    /// The orders, as the run lists them.
    pub orders: Vec<AccountedOrder>,
    /// What is wrong with what was applied, or worth knowing, the gravest first. `where` points into the run.
    pub findings: Vec<Finding>,
}

/// What one order's seed got.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct AccountedOrder {
    /// Its number.
    pub order: String,
    /// The seed lot.
    pub lot: String,
    /// Mass of the seed that was treated, as it was before treating.
    pub mass: Out,
    /// How sure the readings make that: about 95 % coverage.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mass_uncertainty: Option<Out>,
    /// Mass of seed in the job.
    pub ordered: Out,
    /// What each tank gave.
    pub tanks: Vec<AccountedTank>,
    /// What was used of the products that are applied dry.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dry: Option<Vec<AccountedDry>>,
    /// Active ingredients on the seed, with what was there before; those of a product that was not read
    /// are left out.
    pub actives: Vec<AppliedActive>,
    /// Living cells on the seed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub living: Option<Vec<AppliedCells>>,
    /// The facts that record-keeping rules ask for.
    pub record: TreatingRecord,
}

/// Whether the right rate was applied.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// Less than the tolerance allows.
    Low,
    /// Within the tolerance.
    OnTarget,
    /// More than the tolerance allows.
    High,
    /// The readings are too coarse to say.
    CannotTell,
}

/// What one tank gave to one order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct AccountedTank {
    /// The tank.
    pub tank: String,
    /// Mix that went on the seed: start − end + added − lost.
    pub used: Out,
    /// Mix per mass of seed.
    pub achieved: Out,
    /// How sure the readings make that: about 95 % coverage; absent where a resolution is not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub uncertainty: Option<Out>,
    /// Mix per mass of seed that the job asks for.
    pub target: Out,
    /// achieved / target − 1
    pub deviation: f64,
    /// Whether that is within the tolerance.
    pub verdict: Verdict,
    /// What went on the seed of each product in the mix.
    pub products: Vec<AppliedProduct>,
}

/// What went on the seed of one product of a mix.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct AppliedProduct {
    /// The product.
    pub product: String,
    /// How much of it: its share of the mix that was used.
    pub used: Out,
    /// Per mass of seed.
    pub per_mass: Out,
    /// Per seed, at the order's size.
    pub per_seed: Out,
    /// The dose per mass that the job asks for.
    pub target: Out,
    /// per_mass / target − 1
    pub deviation: f64,
}

/// What was used of a product that is applied dry.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct AccountedDry {
    /// The product.
    pub product: String,
    /// What went on the seed: start − end + added − lost.
    pub used: Out,
    /// Per mass of seed.
    pub achieved: Out,
    /// How sure the readings make that: about 95 % coverage; absent where a resolution is not given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub uncertainty: Option<Out>,
    /// The dose per mass that the job asks for.
    pub target: Out,
    /// achieved / target − 1
    pub deviation: f64,
    /// Whether that is within the tolerance.
    pub verdict: Verdict,
    /// Per seed, at the order's size.
    pub per_seed: Out,
}

/// An active ingredient on an order's seed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct AppliedActive {
    /// Its name.
    pub active: String,
    /// Per seed.
    pub per_seed: Out,
    /// Per mass of seed.
    pub per_mass: Out,
    /// Per area sown, without the season's other uses.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub per_area: Option<Out>,
    /// The season's use, this one included, over the limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub share_of_season_limit: Option<f64>,
    /// The sowing rate at which the limit is met.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub max_sowing: Option<Out>,
}

/// Living cells on each seed, at the rate that was achieved.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct AppliedCells {
    /// The living product.
    pub product: String,
    /// When it was treated, after recovery.
    pub at_treating: Out,
    /// On planting day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_planting: Option<Out>,
    /// The least on planting day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub minimum: Option<Out>,
    /// The last moment to plant, counted from the order's `from`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub plant_by: Option<String>,
    /// What sets that moment.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub because: Option<PlantByReason>,
}

/// The facts that rules for keeping records ask for; what is absent is listed under `missing`.
///
/// Rules of states and other countries may ask for more. A sample of the seed, and label or invoice of each
/// product, are kept with the record (7 CFR 201.7a).
///
/// # References
/// - 7 CFR 110.3(a), of a restricted use pesticide: (1) brand or product name and EPA registration number,
///   (2) total amount applied, (3) location, size of area treated, and crop, commodity or site, (4) month, day
///   and year, (5) name and certification number of the applicator (read as of 2006). Part 110 was rescinded
///   with effect from 11 July 2025 (90 FR, 12 May 2025, FR Doc. 2025-08220; seen in summaries only), because
///   rules of states and 40 CFR 171.303(b)(7) ask for the same; the latter also for whom it was applied (seen
///   in a summary only).
/// - 7 CFR 201.7a: the names of all substances that a lot of seed was treated with.
/// - 7 CFR 201.24a: month and year beyond which an inoculant is no longer claimed to be effective.
/// - 7 CFR 201.31a: the label of treated seed names the substances, by their commonly accepted names.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct TreatingRecord {
    /// The products, with registration and total amount.
    pub products: Vec<RecordedProduct>,
    /// The active ingredients on the seed, with what was there before.
    pub actives: Vec<String>,
    /// Whose seed it is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub customer: Option<String>,
    /// What was treated.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub crop: Option<String>,
    /// The seed lot.
    pub lot: String,
    /// How much was treated: mass of seed.
    pub treated: Out,
    /// The day of treating, year-month-day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub treated_on: Option<String>,
    /// When the first seed was treated.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from: Option<String>,
    /// When the last seed was treated.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub to: Option<String>,
    /// Where.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub place: Option<String>,
    /// Who applied the products, or supervised it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub operator: Option<String>,
    /// The number of that person's certificate or licence.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub certificate: Option<String>,
    /// The day by which the living product must be in the ground.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inoculant_use_before: Option<String>,
    /// The standing cautions.
    pub cautions: Vec<String>,
    /// What the rules ask for and neither job nor run says.
    pub missing: Vec<String>,
}

/// A product as a record names it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct RecordedProduct {
    /// Its name.
    pub product: String,
    /// Its registration number.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub registration: Option<String>,
    /// Its lot number.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lot_number: Option<String>,
    /// The total that was applied to this order.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub amount: Option<Out>,
}
