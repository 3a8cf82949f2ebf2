//! Findings: what is wrong with a plan or an account, or worth knowing.

use alloc::string::String;

use serde::{Deserialize, Serialize};

/// How grave a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Severity {
    /// Do not treat like this.
    Stop,
    /// Look at this before treating.
    Warn,
    /// Worth knowing.
    Note,
}

/// What was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Code {
    /// Seed at or below freezing under a liquid.
    FrozenSeed,
    /// A living product in one tank with a product not declared for it.
    LivingSharesTank,
    /// Declared not to go on one seed with a living product.
    UnsafeWithLiving,
    /// Nothing declared about a living product on the same seed.
    CompatibilityUnknown,
    /// A metal near living cells.
    MetalNearLiving,
    /// A living product in a tank without an agitator.
    NotAgitated,
    /// One set covers more seed than can be run in its pot life.
    PackOutlastsPotLife,
    /// Planting after the life on seed.
    OnSeedLifeExceeded,
    /// Fewer living cells than the minimum.
    TooFewCells,
    /// Treated seed stored too warm.
    StorageTooWarm,
    /// Treated seed in direct sun.
    Sunlight,
    /// Seed treated after the product expires.
    ProductExpired,
    /// A crop that the label does not name.
    CropNotOnLabel,
    /// Above the label's most.
    AboveMaxRate,
    /// Below the label's least.
    BelowMinRate,
    /// More active per area and season than allowed.
    SeasonLimit,
    /// More active per seed or mass than allowed.
    ActiveLimit,
    /// An active that is on the seed already.
    ActiveAlreadyOnSeed,
    /// More liquid than the seed takes up.
    LiquidTooHigh,
    /// Too little liquid to cover the seed.
    LiquidTooLow,
    /// Actives on the seed and no colourant.
    NoColourant,
    /// Not enough on the shelf.
    ShortOfProduct,
    /// Not all seed can be treated in the shifts.
    OutOfTime,
    /// The smallest set does not fit the tank.
    TankTooSmall,
    /// A flow that the pump does not give evenly.
    PumpOutOfRange,
    /// A mix that the agitator does not reach.
    BelowMinFill,
    /// Stated and computed coverage differ.
    CoverageDisagrees,
    /// Two statements of one dose differ.
    StatementsDisagree,
    /// Slightly more seed than fewer sets cover.
    AlmostCovered,
    /// Two orders need different mixes of one tank.
    RecipeChanges,
    /// A search stopped at its bound.
    BoundReached,
    /// Something not given leaves a calculation out.
    MissingInput,
    /// The standing cautions.
    TreatedSeed,
    /// Applied above the label's most.
    AppliedAboveMax,
    /// Applied below the label's least.
    AppliedBelowMin,
}

/// One finding.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Finding {
    /// How grave it is.
    pub severity: Severity,
    /// What it is.
    pub code: Code,
    /// Where in the job: a JSON pointer (RFC 6901).
    pub r#where: String,
    /// What is the matter, and what to do.
    pub message: String,
}
