//! Why a calculation is refused, as numbers.
#![cfg_attr(
    not(all(feature = "text", feature = "numbers", feature = "shed")),
    allow(dead_code, reason = "each entry refuses some of this")
)]

use hilum::Error;

/// What is wrong, with what value.
#[derive(Clone, Copy)]
pub(crate) struct Refusal {
    code: f64,
    value: f64,
}

macro_rules! codes {
    ($(#[$doc:meta])* $list:ident: $($number:literal $name:ident $word:literal;)+) => {
        $(
            #[allow(dead_code, reason = "the script says some of them")]
            pub(crate) const $name: f64 = $number;
        )+
        $(#[$doc])*
        #[cfg(feature = "describe")]
        pub const $list: &[(f64, &str)] = &[$(($number, $word)),+];
    };
}
#[cfg(feature = "text")]
pub(crate) use codes;

codes! {
    /// What is refused of a value, and its name.
    CODES:
    1.0 NOT_FINITE "not_finite";
    2.0 NOT_POSITIVE "not_positive";
    3.0 NEGATIVE "negative";
    4.0 OUT_OF_RANGE "out_of_range";
    5.0 NOT_A_SHARE "not_a_share";
    6.0 BELOW_ABSOLUTE_ZERO "below_absolute_zero";
    7.0 MORE_THAN "more_than";
    8.0 TOO_FEW "too_few";
    9.0 ALL_EQUAL "all_equal";
    10.0 NOT_FALLING "not_falling";
    11.0 TOO_LITTLE "too_little";
    12.0 ONE_SETTING "one_setting";
    13.0 NOT_RISING "not_rising";
    14.0 SIZES_OF_PACK "sizes_of_pack";
    15.0 TOO_MANY_SETS "too_many_sets";
    16.0 NOT_FOR_THE_BUS "not_for_the_bus";
    17.0 NEEDED "needed";
    18.0 NOT_A_COUNT "not_a_count";
    19.0 OTHER "other";
    20.0 WRONG_DIMENSION "wrong_dimension";
    21.0 TEMPERATURE_POINT "temperature_point";
    22.0 NOT_A_TEMPERATURE "not_a_temperature";
    23.0 ALREADY_BELOW "already_below";
    24.0 NEVER "never";
    25.0 OUTSIDE_CURVE "outside_curve";
    26.0 NO_ENTRY "no_entry";
}

impl Refusal {
    pub(crate) const fn new(code: f64, value: f64) -> Self {
        Self { code, value }
    }

    /// What was written does not measure what is needed; what both are, the script knows.
    #[cfg(feature = "text")]
    pub(crate) const fn wrong_dimension() -> Self {
        Self::new(WRONG_DIMENSION, f64::NAN)
    }

    /// Not a number, or infinite.
    #[cfg(feature = "text")]
    pub(crate) const fn not_finite(value: f64) -> Self {
        Self::new(NOT_FINITE, value)
    }

    /// There are too few cells from the start.
    pub(crate) const fn already_below() -> Self {
        Self::new(ALREADY_BELOW, f64::NAN)
    }

    /// There are always enough.
    pub(crate) const fn never() -> Self {
        Self::new(NEVER, f64::NAN)
    }

    /// No setting between the catches gives this flow.
    pub(crate) const fn outside_curve() -> Self {
        Self::new(OUTSIDE_CURVE, f64::NAN)
    }

    /// No entry of the data dictionary that the core knows.
    pub(crate) fn no_entry(number: u32) -> Self {
        Self::new(NO_ENTRY, f64::from(number))
    }

    pub(crate) const fn not_a_count(value: f64) -> Self {
        Self::new(NOT_A_COUNT, value)
    }

    #[cfg(feature = "shed")]
    pub(crate) fn code_and_value(self) -> [f64; 2] {
        [self.code, self.value]
    }

    /// What is wrong.
    pub(crate) fn code(self) -> f64 {
        self.code
    }
}

/// A small number as a double.
pub(crate) fn count(number: usize) -> f64 {
    u32::try_from(number).map_or(f64::NAN, f64::from)
}

impl From<Error> for Refusal {
    fn from(error: Error) -> Self {
        match error {
            Error::NotFinite { value, .. } => Self::new(NOT_FINITE, value),
            Error::NotPositive { value, .. } => Self::new(NOT_POSITIVE, value),
            Error::Negative { value, .. } => Self::new(NEGATIVE, value),
            Error::OutOfRange { value, .. } => Self::new(OUT_OF_RANGE, value),
            Error::NotAShare { value, .. } => Self::new(NOT_A_SHARE, value),
            Error::BelowAbsoluteZero { value, .. } => Self::new(BELOW_ABSOLUTE_ZERO, value),
            Error::MoreThan { value, .. } => Self::new(MORE_THAN, value),
            Error::TooLittle { value, .. } => Self::new(TOO_LITTLE, value),
            Error::TooFew { given, .. } => Self::new(TOO_FEW, count(given)),
            Error::AllEqual { value, .. } => Self::new(ALL_EQUAL, value),
            Error::NotFalling { value, .. } => Self::new(NOT_FALLING, value),
            Error::OneSetting { value } => Self::new(ONE_SETTING, value),
            Error::NotRising { value } => Self::new(NOT_RISING, value),
            Error::SizesOfPack { value } => Self::new(SIZES_OF_PACK, count(value)),
            Error::TooManySets { value } => Self::new(TOO_MANY_SETS, value),
            Error::NotForTheBus { value, .. } => Self::new(NOT_FOR_THE_BUS, value),
            Error::Needed { .. } => Self::new(NEEDED, f64::NAN),
            _ => Self::new(OTHER, f64::NAN),
        }
    }
}

#[cfg(any(feature = "text", feature = "numbers"))]
pub(crate) use blame::{Blame, Refused, positive};

#[cfg(any(feature = "text", feature = "numbers"))]
mod blame;
