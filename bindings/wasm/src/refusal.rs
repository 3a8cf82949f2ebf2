//! Why a calculation is refused, as numbers.
#![cfg_attr(
    not(all(feature = "text", feature = "numbers", feature = "shed")),
    allow(dead_code, reason = "each entry refuses some of this")
)]

use hilum::Error;
use hilum::unit::Powers;

/// What is wrong, with which input.
#[derive(Clone, Copy)]
pub(crate) struct Refusal {
    code: f64,
    field: Option<usize>,
    value: f64,
    /// What was written and what is needed, as powers of the base quantities.
    more: More,
}

#[derive(Clone, Copy)]
enum More {
    Nothing,
    Powers(Powers, Powers),
}

macro_rules! codes {
    ($(#[$doc:meta])* $list:ident: $($number:literal $name:ident $word:literal;)+) => {
        $(const $name: f64 = $number;)+
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
    /// None yet.
    pub(crate) const NONE: Self = Self::new(OTHER, f64::NAN);

    pub(crate) const fn new(code: f64, value: f64) -> Self {
        Self { code, field: None, value, more: More::Nothing }
    }

    pub(crate) const fn wrong_dimension(given: Powers, wanted: Powers) -> Self {
        Self { code: WRONG_DIMENSION, field: None, value: f64::NAN, more: More::Powers(given, wanted) }
    }

    /// A point on the scale where an amount is needed.
    pub(crate) const fn temperature_point() -> Self {
        Self::new(TEMPERATURE_POINT, f64::NAN)
    }

    /// An amount where a point on the scale is needed.
    pub(crate) const fn not_a_temperature() -> Self {
        Self::new(NOT_A_TEMPERATURE, f64::NAN)
    }

    /// Not a number, or infinite.
    #[cfg(feature = "text")]
    pub(crate) const fn not_finite(value: f64) -> Self {
        Self::new(NOT_FINITE, value)
    }

    /// Too large for a double in the unit wanted.
    #[cfg(feature = "text")]
    pub(crate) const fn out_of_range(value: f64) -> Self {
        Self::new(OUT_OF_RANGE, value)
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

    /// The same, said of an input; the first one to say it is right.
    pub(crate) fn said_of(self, field: usize) -> Self {
        Self { field: self.field.or(Some(field)), ..self }
    }

    #[cfg(feature = "shed")]
    pub(crate) fn code_and_value(self) -> [f64; 2] {
        [self.code, self.value]
    }

    /// What is wrong.
    #[cfg(all(feature = "numbers", not(feature = "text")))]
    pub(crate) fn code(self) -> f64 {
        self.code
    }

    /// Its code; `field, row, value`, and what there is more, are left in the room. A field of -1 is no input.
    #[cfg(feature = "text")]
    pub(crate) fn tell(self, row: usize, room: &mut [f64]) -> f64 {
        let (given, wanted) = match self.more {
            More::Powers(given, wanted) => (given, wanted),
            More::Nothing => (NO_POWERS, NO_POWERS),
        };
        let [given, wanted] = [given, wanted]
            .map(|of| [of.length, of.mass, of.time, of.temperature, of.seeds, of.cells].map(f64::from));
        let field = self.field.map_or(-1.0, count);
        let all = [field, count(row), self.value].into_iter().chain(given).chain(wanted);
        for (place, number) in room.iter_mut().zip(all) {
            *place = number;
        }
        self.code
    }
}

#[cfg(feature = "text")]
const NO_POWERS: Powers = hilum::quantity::ratio::POWERS;

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
