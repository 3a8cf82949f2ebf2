//! Why no batches could be planned.

/// What was given too many of, or too little room for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, thiserror::Error)]
#[non_exhaustive]
pub enum Counted {
    /// [`super::MAX_ORDERS`].
    #[error("orders")]
    Orders,
    /// [`super::MAX_TANKS`].
    #[error("tanks")]
    Tanks,
    /// [`super::MAX_SHIFTS`].
    #[error("shifts")]
    Shifts,
    /// [`super::MAX_SIZES`].
    #[error("set sizes of one tank")]
    SetSizes,
    /// [`super::MAX_MIXES`], or the room that the caller gave.
    #[error("batches")]
    Mixes,
    /// Portions of seed: the room that the caller gave.
    #[error("portions")]
    Portions,
    /// Whole sets of one size in one batch.
    #[error("sets in one batch")]
    Sets,
}

/// Which number of an order, a tank or a shift.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, thiserror::Error)]
#[non_exhaustive]
pub enum Field {
    /// The seed mass of order.
    #[error("the seed mass of order")]
    Mass,
    /// The seed speed of order.
    #[error("the seed speed of order")]
    Speed,
    /// The changeover before order.
    #[error("the changeover before order")]
    Changeover,
    /// The slurry per mass of seed of need.
    #[error("the slurry per mass of seed of need")]
    PerMass,
    /// The living share of need.
    #[error("the living share of need")]
    Living,
    /// The capacity of tank.
    #[error("the capacity of tank")]
    Capacity,
    /// The hold-up of tank.
    #[error("the hold-up of tank")]
    HoldUp,
    /// The mixing time of tank.
    #[error("the mixing time of tank")]
    Mixing,
    /// The pot life of tank.
    #[error("the pot life of tank")]
    PotLife,
    /// A set's volume of tank.
    #[error("a set's volume of tank")]
    Adds,
    /// A set's rank of tank.
    #[error("a set's rank of tank")]
    Rank,
    /// The hours of shift.
    #[error("the hours of shift")]
    Shift,
}

/// Why no batches could be planned. Numbers count from 0, in the order of the caller's slices.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
#[expect(missing_docs, reason = "the fields: which number, its place and its value, or how many of how many")]
pub enum Error {
    /// A number that cannot be.
    #[error("{field} {index} cannot be {value} (base units, counted from 0); check it")]
    Value { field: Field, index: usize, value: f64 },
    /// The table of needs does not hold one entry per order and tank.
    #[error("{needs} needs were given where there must be one per order and tank, {expected}")]
    Needs { needs: usize, expected: usize },
    /// More than the planner takes, or than the caller gave room for.
    #[error("more than {limit} {counted}: split the job, or use larger tanks or sets")]
    TooMany { counted: Counted, limit: usize },
    /// No whole set fits the tank, or none leaves anything once the lines are filled.
    #[error(
        "tank {tank}, counted from 0, is too small: its smallest set does not fit, or only fills its lines; use a larger tank or smaller sets"
    )]
    TankTooSmall { tank: usize },
    /// The working memory is smaller than [`super::Room`] asks for.
    #[error("the working memory holds {given} numbers, {needed} are needed")]
    Memory { given: usize, needed: usize },
}
