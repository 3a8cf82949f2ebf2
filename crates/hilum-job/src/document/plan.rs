//! The plan: what to open, mix, pump and expect, and what is wrong with it.

use alloc::string::String;
use alloc::vec::Vec;

use serde::{Deserialize, Serialize};

use super::{Finding, Out, Units};

/// The plan of a job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Plan {
    /// The version of this format: 1.
    pub format: u32,
    /// The version of the library that wrote it.
    pub hilum: String,
    /// The job's title.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub title: Option<String>,
    /// What it is written in.
    pub units: Units,
    /// The orders, in running order.
    pub orders: Vec<PlannedOrder>,
    /// The treatments, in the job's order.
    pub treatments: Vec<PlannedTreatment>,
    /// Active ingredients per order, summed over products and what was on the seed.
    pub actives: Vec<PlannedActive>,
    /// The tanks, in the job's order.
    pub tanks: Vec<PlannedTank>,
    /// Treatments without a tank.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dry: Option<Vec<DryTreatment>>,
    /// What it costs, in the job's currency.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost: Option<Cost>,
    /// What is wrong with the plan or worth knowing, the gravest first.
    pub findings: Vec<Finding>,
}

/// One order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct PlannedOrder {
    /// Its number.
    pub order: String,
    /// The seed lot.
    pub lot: String,
    /// Mass of seed.
    pub mass: Out,
    /// Number of seeds.
    pub seeds: Out,
    /// Seed units.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub units: Option<Out>,
    /// Bushels.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bushels: Option<Out>,
    /// Packages, rounded up.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub packages: Option<u32>,
    /// Area that it sows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub area: Option<Out>,
    /// The least mass that the size's tolerance leaves possible.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mass_low: Option<Out>,
    /// The most.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mass_high: Option<Out>,
    /// All liquid on the seed.
    pub liquid: OrderLiquid,
    /// The facts of a bag tag.
    pub record: Record,
}

/// Liquid over all tanks.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct OrderLiquid {
    /// Per mass of seed.
    pub per_mass: Out,
    /// The most that the seed takes up.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limit: Option<Out>,
}

/// What a tag on the bag and the treating record must say.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Record {
    /// The products.
    pub treated_with: Vec<String>,
    /// The active ingredients, with what was on the seed already.
    pub actives: Vec<String>,
    /// The standing cautions.
    pub cautions: Vec<String>,
    /// The day of treating.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub treated_on: Option<String>,
    /// The day by which the living product must be in the ground.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inoculant_use_before: Option<String>,
    /// The most that may be sown per area.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub max_sowing: Option<Out>,
    /// What a record asks for and the job does not say.
    pub missing: Vec<String>,
}

/// One treatment.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct PlannedTreatment {
    /// Its name.
    pub product: String,
    /// Its tank.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tank: Option<String>,
    /// What the orders take up.
    pub needed: Out,
    /// The least, within the sizes' tolerance.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub needed_low: Option<Out>,
    /// The most.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub needed_high: Option<Out>,
    /// Its dose on each order that gets it.
    pub orders: Vec<PlannedDose>,
    /// What to open.
    pub packs: Vec<OpenedPack>,
    /// What is left of what is opened.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub leftover: Option<Out>,
    /// Price of what is opened.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost_opened: Option<f64>,
    /// Its share that goes on seed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost_applied: Option<f64>,
}

/// The dose of one treatment on one order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct PlannedDose {
    /// The order.
    pub order: String,
    /// Per mass of seed.
    pub per_mass: Out,
    /// Per seed.
    pub per_seed: Out,
    /// Per seed unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub per_unit: Option<Out>,
    /// Per bushel.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub per_bushel: Option<Out>,
    /// Per area sown.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub per_area: Option<Out>,
    /// The label's other statements of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub statements: Option<Vec<StatementCheck>>,
    /// The active ingredients in it.
    pub actives: Vec<DoseActive>,
    /// The living cells in it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub living: Option<LivingCells>,
}

/// Another statement of a dose, against the one that governs.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct StatementCheck {
    /// As stated.
    pub stated: String,
    /// The seed size at which the two agree.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub implied_size: Option<Out>,
    /// Stated / governing − 1, at this order's size.
    pub difference: f64,
}

/// An active ingredient in a dose.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct DoseActive {
    /// Its name.
    pub active: String,
    /// Per mass of seed.
    pub per_mass: Out,
    /// Per seed.
    pub per_seed: Out,
    /// Per area sown.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub per_area: Option<Out>,
}

/// Living cells on each seed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct LivingCells {
    /// When it is treated.
    pub at_treating: Out,
    /// On planting day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_planting: Option<Out>,
    /// The least on planting day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub minimum: Option<Out>,
    /// The last moment to plant.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub plant_by: Option<String>,
    /// What sets that moment.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub because: Option<PlantByReason>,
}

/// Sets of one pack size to open.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct OpenedPack {
    /// The pack size.
    pub pack: String,
    /// How many sets.
    pub sets: u32,
    /// Cases they come in, rounded up.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cases: Option<u32>,
    /// The seed that these sets cover.
    pub covers: Out,
}

/// An active ingredient on an order's seed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct PlannedActive {
    /// Its name.
    pub active: String,
    /// The order.
    pub order: String,
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

/// One tank.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct PlannedTank {
    /// Its name.
    pub tank: String,
    /// Its mixes' composition.
    pub recipes: Vec<Recipe>,
    /// What it does for each order.
    pub orders: Vec<TankOrder>,
    /// Its mixes, in order.
    pub batches: Vec<Batch>,
}

/// The composition of a mix.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Recipe {
    /// The orders it serves.
    pub orders: Vec<String>,
    /// What is in it.
    pub parts: Vec<RecipePart>,
}

/// A tank's work on one order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct TankOrder {
    /// The order.
    pub order: String,
    /// Slurry per mass of seed.
    pub slurry: Out,
    /// Pump flow while seed runs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub flow: Option<Out>,
    /// Pump setting for that flow.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub setting: Option<f64>,
    /// Slurry per charge of a batch treater.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub per_charge: Option<Out>,
}

/// One mix.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Batch {
    /// Its number in the tank, from 1.
    pub number: u32,
    /// When to begin mixing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mix_at: Option<String>,
    /// When it is ready.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ready_at: Option<String>,
    /// When the last seed is treated with it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub done_at: Option<String>,
    /// Until when it is good.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub use_by: Option<String>,
    /// What to pour, in this order.
    pub pour: Vec<Pour>,
    /// Volume mixed.
    pub mixed: Out,
    /// Whole sets of the living product that go in.
    pub sets: Vec<BatchSets>,
    /// The seed it treats.
    pub orders: Vec<BatchOrder>,
    /// Volume that goes on seed.
    pub applied: Out,
    /// Volume that fills empty lines.
    pub hold_up: Out,
    /// Volume thrown away.
    pub discarded: Out,
}

/// Sets poured into a mix.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct BatchSets {
    /// The pack size.
    pub pack: String,
    /// How many.
    pub sets: u32,
}

/// Seed that a mix treats.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct BatchOrder {
    /// The order.
    pub order: String,
    /// Mass of seed.
    pub mass: Out,
}

/// A treatment without a tank.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct DryTreatment {
    /// Its name.
    pub product: String,
    /// What each order takes.
    pub orders: Vec<DryOrder>,
}

/// A dry product for an order.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct DryOrder {
    /// The order.
    pub order: String,
    /// Mass of product.
    pub mass: Out,
}

/// Plain numbers in the job's currency.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Cost {
    /// What is opened.
    pub opened: f64,
    /// What goes on seed.
    pub applied: f64,
    /// Applied, per seed unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub per_unit: Option<f64>,
    /// Applied, per area sown.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub per_area: Option<f64>,
}

/// A part of a mix: a product, or water.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct RecipePart {
    /// The product; absent for water.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub product: Option<String>,
    /// True for water; absent for a product.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub water: Option<bool>,
    /// Its share of the mix, by volume.
    pub share: f64,
}

/// What to pour of one part.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Pour {
    /// The product; absent for water.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub product: Option<String>,
    /// True for water; absent for a product.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub water: Option<bool>,
    /// Its volume.
    pub volume: Out,
    /// Its mass, where the density is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mass: Option<Out>,
}

/// What sets the last moment to plant.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum PlantByReason {
    /// The living product's own life on seed.
    OnSeedLife,
    /// Its life beside a partner on the same seed.
    Partner,
    /// The count falls to the minimum.
    Minimum,
}
