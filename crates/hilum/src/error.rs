//! What was wrong with a number, and with which one.
//!
//! An [`Error`] is small, `Copy`, and carries the value that was refused in base units
//! (kg, m³, s, K, seeds, CFU and their quotients).

mod message;
mod number;

pub use message::Number;
pub use number::{OneNumber, Range, not_negative, positive, share};
pub(crate) use number::{given, temperature};

/// The least and the most, in base units, that a value other than 0 may have: no chain of this
/// crate's calculations then overflows or loses a value to underflow.
pub const SMALLEST: f64 = 1e-30;
/// See [`SMALLEST`].
pub const LARGEST: f64 = 1e30;

/// Why a calculation was refused.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the fields: which number, and its value in base units")]
pub enum Error {
    /// Not a number, or infinite.
    NotFinite { argument: Argument, value: f64 },
    /// Zero or negative where there must be some.
    NotPositive { argument: Argument, value: f64 },
    /// Negative where there may be none or some.
    Negative { argument: Argument, value: f64 },
    /// Beyond 1e-30…1e30 base units.
    OutOfRange { argument: Argument, value: f64 },
    /// A share below 0 or above 1.
    NotAShare { argument: Argument, value: f64 },
    /// A temperature that cannot be.
    BelowAbsoluteZero { argument: Argument, value: f64 },
    /// More than another number that bounds it.
    MoreThan { argument: Argument, value: f64, most: f64 },
    /// Not enough of them to calculate with.
    TooFew { argument: Argument, given: usize, least: usize },
    /// The same everywhere, where a difference is needed.
    AllEqual { argument: Argument, value: f64 },
    /// A count that should fall with time, but does not; the value is its change in log10 per second.
    NotFalling { argument: Argument, value: f64 },
    /// Less than the least that works.
    TooLittle { argument: Argument, value: f64, least: f64 },
    /// A pump curve whose catches were all made at one setting.
    OneSetting { value: f64 },
    /// A pump curve that does not rise.
    NotRising { value: f64 },
    /// More sizes of pack than a choice is made among.
    SizesOfPack { value: usize },
    /// More sets than can be counted.
    TooManySets { value: f64 },
    /// Neither 0 nor 1 to the most steps of a data dictionary entry.
    NotForTheBus { ddi: u16, value: f64, most: i32 },
    /// Not given, though this calculation needs it.
    Needed { argument: Argument },
}

/// Which number of a calculation.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, thiserror::Error)]
#[non_exhaustive]
pub enum Argument {
    /// The mass of seed.
    #[error("the mass of seed")]
    SeedMass,
    /// The number of seeds.
    #[error("the number of seeds")]
    Seeds,
    /// The seed size.
    #[error("the seed size")]
    SeedSize,
    /// The mass of a thousand seeds.
    #[error("the mass of a thousand seeds")]
    ThousandSeedMass,
    /// The tolerance of the seed size.
    #[error("the tolerance of the seed size")]
    SizeTolerance,
    /// The seed unit.
    #[error("the seed unit")]
    SeedUnit,
    /// The bushel.
    #[error("the bushel")]
    Bushel,
    /// The share.
    #[error("the share")]
    Share,
    /// The germination.
    #[error("the germination")]
    Germination,
    /// The emergence.
    #[error("the emergence")]
    Emergence,
    /// The seeds sown per area.
    #[error("the seeds sown per area")]
    Sown,
    /// The sowing rate.
    #[error("the sowing rate")]
    SowingRate,
    /// The area.
    #[error("the area")]
    Area,
    /// The rate per mass of seed.
    #[error("the rate per mass of seed")]
    RatePerMass,
    /// The rate per bushel.
    #[error("the rate per bushel")]
    RatePerBushel,
    /// The rate per seed.
    #[error("the rate per seed")]
    RatePerSeed,
    /// The rate per unit.
    #[error("the rate per unit")]
    RatePerUnit,
    /// The rate per area.
    #[error("the rate per area")]
    RatePerArea,
    /// The amount of product.
    #[error("the amount of product")]
    ProductAmount,
    /// The density.
    #[error("the density")]
    Density,
    /// How long something lasts.
    #[error("the duration")]
    Duration,
    /// The temperature.
    #[error("the temperature")]
    Temperature,
    /// The content of active ingredient.
    #[error("the content of active ingredient")]
    ActiveContent,
    /// The titre.
    #[error("the titre")]
    Titre,
    /// The part's share of the set.
    #[error("the part's share of the set")]
    PartOfSet,
    /// The volume or mass of the part.
    #[error("the amount of the part")]
    Part,
    /// The volume or mass of the whole set.
    #[error("the amount of the set")]
    Set,
    /// The share of the cells that arrives alive on the seed.
    #[error("the recovery")]
    Recovery,
    /// A decimal reduction time.
    #[error("the decimal reduction time")]
    DecimalReduction,
    /// The fast decimal reduction time of two.
    #[error("the fast decimal reduction time")]
    FastReduction,
    /// The scale of a Weibull survival curve.
    #[error("the scale of the survival curve")]
    WeibullScale,
    /// The shape of a Weibull survival curve.
    #[error("the shape of the survival curve")]
    WeibullShape,
    /// The temperature at which a survival curve was measured.
    #[error("the reference temperature of the survival curve")]
    ReferenceTemperature,
    /// The warming that kills ten times as fast.
    #[error("the z value of the survival curve")]
    ZValue,
    /// How long a storage period lasts.
    #[error("the length of the storage period")]
    StoragePeriod,
    /// The temperature of a storage period.
    #[error("the storage temperature")]
    StorageTemperature,
    /// The time since the seed was treated.
    #[error("the time since treating")]
    TimeSinceTreating,
    /// What a scale, a meter or a gauge shows.
    #[error("the reading")]
    Reading,
    /// The smallest step of a scale, a meter or a gauge.
    #[error("the resolution of the reading")]
    Resolution,
    /// The amount used, by the readings.
    #[error("the amount used by the readings")]
    Used,
    /// When a controller read its sensors.
    #[error("the time of the reading")]
    ReadingTime,
    /// The total of seed so far.
    #[error("the total of seed")]
    SeedTotal,
    /// The total of liquid so far.
    #[error("the total of liquid")]
    LiquidTotal,
    /// What is left in the tank.
    #[error("the content of the tank")]
    TankContent,
    /// When a sample was counted.
    #[error("the times of the counts")]
    CountTime,
    /// A count of living cells.
    #[error("the count")]
    Count,
    /// How long the treated seed keeps.
    #[error("the life on the seed")]
    Life,
    /// The seed that a set covers.
    #[error("the seed that a set covers")]
    Coverage,
    /// The seed that sets must cover.
    #[error("the seed that sets must cover")]
    Need,
    /// The seed that the opened sets cover.
    #[error("the seed that the opened sets cover")]
    Covered,
    /// The price of a set.
    #[error("the price of a set")]
    Price,
    /// The number of sets.
    #[error("the number of sets")]
    Sets,
    /// The rate of a product in the mix.
    #[error("the rate of a product in the mix")]
    MixRate,
    /// The volume that the mix is made up to.
    #[error("the volume per mass of seed that the mix is made up to")]
    MakeUpTo,
    /// The volume of mix.
    #[error("the volume of mix")]
    MixVolume,
    /// The hold-up.
    #[error("the hold-up of pump and lines")]
    HoldUp,
    /// The least fill.
    #[error("the least fill of the tank")]
    MinFill,
    /// The share of a product in the mix.
    #[error("the share of a product in the mix")]
    MixShare,
    /// The flow of seed.
    #[error("the flow of seed")]
    SeedFlow,
    /// The flow of liquid.
    #[error("the flow of liquid")]
    LiquidFlow,
    /// The utilisation.
    #[error("the utilisation")]
    Utilisation,
    /// The charge of a batch treater.
    #[error("the charge of a batch treater")]
    Charge,
    /// The cycle of a batch treater.
    #[error("the cycle of a batch treater")]
    Cycle,
    /// The volume caught.
    #[error("the volume caught")]
    CaughtVolume,
    /// The mass caught.
    #[error("the mass caught")]
    CaughtMass,
    /// The time of the catch.
    #[error("the time of the catch")]
    CatchTime,
    /// The setting of the pump.
    #[error("the setting of the pump")]
    Setting,
    /// The pump curve.
    #[error("a catch of the pump curve")]
    PumpCurve,
    /// The mass of a dump.
    #[error("the mass of a dump")]
    Dump,
    /// The number of dumps.
    #[error("the number of dumps")]
    Dumps,
    /// The time that the dumps took.
    #[error("the time that the dumps took")]
    DumpTime,
    /// The limit of an active per area and season.
    #[error("the season's limit")]
    SeasonLimit,
    /// What was used of it.
    #[error("what the season has used")]
    SeasonUsed,
    /// A value for the bus, or from it.
    #[error("the value on the bus")]
    BusValue,
}
