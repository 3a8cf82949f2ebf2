//! What a function returns.

use core::ffi::{CStr, c_char};

use hilum::text::TextError;

use crate::argument;

/// One row of the list in `hilum.h`: the number, the name behind `HILUM_`, and the words.
pub type Row = (i32, &'static str, &'static CStr);

/// Why there is no result: a kind, and in thousands the number that was at fault.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Status(i32);

/// Numbers are never reused: a new row takes the next free one of its group.
macro_rules! kinds {
    ($($number:literal $name:ident $words:literal;)+) => {
        /// For the header.
        pub const KINDS: &[Row] = &[$(($number, stringify!($name), $words)),+];

        #[cfg_attr(not(feature = "job"), expect(dead_code, reason = "only documents are refused so"))]
        impl Status {
            $(pub(crate) const $name: Self = Self($number);)+
        }
    };
}

kinds! {
    0 OK c"no error";
    1 NULL c"a pointer that is needed is NULL";
    2 NO_SUCH_UNIT c"there is no unit of this number";
    3 NO_SUCH_CHOICE c"there is no choice of this number";
    4 NOT_UTF8 c"the text is not UTF-8";
    5 TOO_LONG c"a list or a text is longer than any memory";
    6 ROOM_TOO_SMALL c"there is too little room for the result; what is needed was written";
    7 NOT_MADE c"the structure was not made by the function that makes it";
    8 NO_SUCH_DDI c"there is no data dictionary entry of this number here";
    9 NO_SUCH_INDEX c"the index is beyond the end";
    99 UNKNOWN c"refused for a reason that this version of the C library has no number for";

    100 NOT_FINITE c"must be a finite number";
    101 NOT_POSITIVE c"must be more than 0";
    102 NEGATIVE c"must not be negative";
    103 OUT_OF_RANGE c"must lie within 1e-30 and 1e30 base units";
    104 NOT_A_SHARE c"must lie within 0 % and 100 % (1 = 100 %)";
    105 BELOW_ABSOLUTE_ZERO c"must be at or above absolute zero (-273.15 degC)";
    106 MORE_THAN c"must not be more than the number that bounds it";
    107 TOO_FEW c"more of them are needed";
    108 ALL_EQUAL c"must differ, but all are the same";
    109 NOT_FALLING c"must fall with time";
    110 TOO_LITTLE c"must be at least what the others come to";
    111 ONE_SETTING c"a pump curve of several catches needs two different settings";
    112 NOT_RISING c"the flow of a pump must rise with its setting";
    113 SIZES_OF_PACK c"a choice is made among 1 to 8 sizes of pack";
    114 TOO_MANY_SETS c"so many sets cannot be counted; look at the coverage of a set and the mass of seed";
    115 NOT_FOR_THE_BUS c"is more steps than the data dictionary entry carries, or less than half a step";
    116 NEEDED c"is needed here";

    200 EMPTY c"the text is empty; write a number, a space and a unit, as in \"2.5 fl oz/cwt\"";
    201 NOT_A_NUMBER c"the text does not begin with a number";
    202 NUMBER_FORM c"the number has a form that is not read; write it as 0.5, 5 or 1e5";
    203 COMMA c"there is a comma in the number; write 1000 or 1_000, and a point for decimals";
    204 SPACE_IN_NUMBER c"there is a space in the number; write 140000 or 140_000";
    205 NO_SPACE c"a space is needed between number and unit, and the number in full (140000000, not 140M)";
    206 NUMBER_TOO_LONG c"the number has more than 100 characters";
    207 TOO_LARGE c"the number is too large to calculate with";
    208 TEXT_NOT_FINITE c"the text is not a finite number; write a number, a space and a unit";
    209 NO_UNIT c"there is no unit; write a number, a space and a unit, as in \"2.5 fl oz/cwt\"";
    210 BARE_OUNCE c"a bare \"oz\" may be weight or volume; write \"oz av\" (weight) or \"fl oz\" (volume)";
    211 TON c"there are several tons; write t (1000 kg), or 2000 lb for a US short ton";
    212 UNKNOWN_UNIT c"the unit is unknown; hilum_text_suggestion tells what may have been meant";
    213 TWO_LINES c"there is more than one /; write one unit over one other";
    214 BELOW_THE_LINE c"the number below the line must be more than 0";
    215 UNIT_FORM c"the unit has a form that is not read; write a, a/b, a/100 b, or UCUM a/(100.b)";
    216 UNIT_NOT_GIVEN c"it is per unit, but it is not said how many seeds a unit is";
    217 BUSHEL_NOT_GIVEN c"it is per bushel, but it is not said what a bushel weighs";
    218 TEMPERATURE_POINT c"it is a temperature, but an amount is needed (a difference is written in K)";
    219 NOT_A_TEMPERATURE c"it is not a temperature; write degC or degF";
    220 WRONG_DIMENSION c"the unit measures something else than is needed here";

    300 BATCH_VALUE c"cannot be that";
    301 BATCH_NEEDS c"there must be one need per order and tank";
    302 BATCH_TOO_MANY c"there are more than the planner takes, or than there is room for";
    303 BATCH_TANK_TOO_SMALL c"a tank is too small: its smallest set does not fit, or only fills its lines";
    304 BATCH_WORK c"the planner was given less working memory than it asked for";

    400 REFUSED c"the document is refused; the problems were written instead of the result";
}

impl Status {
    pub(crate) const fn number(self) -> i32 {
        self.0
    }

    pub(crate) const fn of(self, argument: i32) -> Self {
        Self(self.0 + 1000 * argument)
    }

    /// What kind of refusal it is, and of which argument.
    pub(crate) fn parts(error: hilum::Error) -> (Self, Option<hilum::Argument>) {
        use hilum::Error;
        let (kind, argument) = match error {
            Error::NotFinite { argument, .. } => (Self::NOT_FINITE, argument),
            Error::NotPositive { argument, .. } => (Self::NOT_POSITIVE, argument),
            Error::Negative { argument, .. } => (Self::NEGATIVE, argument),
            Error::OutOfRange { argument, .. } => (Self::OUT_OF_RANGE, argument),
            Error::NotAShare { argument, .. } => (Self::NOT_A_SHARE, argument),
            Error::BelowAbsoluteZero { argument, .. } => (Self::BELOW_ABSOLUTE_ZERO, argument),
            Error::MoreThan { argument, .. } => (Self::MORE_THAN, argument),
            Error::TooFew { argument, .. } => (Self::TOO_FEW, argument),
            Error::AllEqual { argument, .. } => (Self::ALL_EQUAL, argument),
            Error::NotFalling { argument, .. } => (Self::NOT_FALLING, argument),
            Error::TooLittle { argument, .. } => (Self::TOO_LITTLE, argument),
            Error::Needed { argument } => (Self::NEEDED, argument),
            Error::OneSetting { .. } => return (Self::ONE_SETTING, None),
            Error::NotRising { .. } => return (Self::NOT_RISING, None),
            Error::SizesOfPack { .. } => return (Self::SIZES_OF_PACK, None),
            Error::TooManySets { .. } => return (Self::TOO_MANY_SETS, None),
            Error::NotForTheBus { .. } => return (Self::NOT_FOR_THE_BUS, None),
            _ => return (Self::UNKNOWN, None),
        };
        (kind, Some(argument))
    }
}

impl From<hilum::Error> for Status {
    fn from(error: hilum::Error) -> Self {
        let (kind, argument) = Self::parts(error);
        argument.map_or(kind, |argument| kind.of(argument::of_value(argument)))
    }
}

impl From<TextError> for Status {
    fn from(error: TextError) -> Self {
        match error {
            TextError::Empty => Self::EMPTY,
            TextError::NotANumber => Self::NOT_A_NUMBER,
            TextError::NumberForm => Self::NUMBER_FORM,
            TextError::Comma => Self::COMMA,
            TextError::SpaceInNumber => Self::SPACE_IN_NUMBER,
            TextError::NoSpace => Self::NO_SPACE,
            TextError::NumberTooLong => Self::NUMBER_TOO_LONG,
            TextError::TooLarge => Self::TOO_LARGE,
            TextError::NotFinite => Self::TEXT_NOT_FINITE,
            TextError::NoUnit => Self::NO_UNIT,
            TextError::BareOunce => Self::BARE_OUNCE,
            TextError::Ton => Self::TON,
            TextError::UnknownUnit { .. } => Self::UNKNOWN_UNIT,
            TextError::TwoLines => Self::TWO_LINES,
            TextError::BelowTheLine => Self::BELOW_THE_LINE,
            TextError::Form => Self::UNIT_FORM,
            TextError::UnitNotGiven => Self::UNIT_NOT_GIVEN,
            TextError::BushelNotGiven => Self::BUSHEL_NOT_GIVEN,
            TextError::TemperaturePoint => Self::TEMPERATURE_POINT,
            TextError::NotATemperature => Self::NOT_A_TEMPERATURE,
            TextError::WrongDimension { .. } => Self::WRONG_DIMENSION,
            _ => Self::UNKNOWN,
        }
    }
}

impl From<hilum::batch::Error> for Status {
    fn from(error: hilum::batch::Error) -> Self {
        use hilum::batch::Error;
        match error {
            Error::Value { field, .. } => Self::BATCH_VALUE.of(argument::of_field(field)),
            Error::Needs { .. } => Self::BATCH_NEEDS,
            Error::TooMany { counted, .. } => Self::BATCH_TOO_MANY.of(argument::of_count(counted)),
            Error::TankTooSmall { .. } => Self::BATCH_TANK_TOO_SMALL,
            Error::Memory { .. } => Self::BATCH_WORK,
            _ => Self::UNKNOWN,
        }
    }
}

/// What a status means, in English: "must be more than 0". Never NULL; static text.
///
/// Print hilum_status_subject before it: "the seed size" + " " + "must be more than 0".
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn hilum_status_message(status: i32) -> *const c_char {
    let kind = status.checked_rem(1000).unwrap_or_default();
    let row = KINDS.iter().find(|(own, ..)| *own == kind && status >= 0);
    row.map_or(c"this is no status of this library", |(.., words)| words).as_ptr()
}

/// Which number a status speaks of, in English: "the seed size". Empty when it speaks of none. Never NULL;
/// static text.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn hilum_status_subject(status: i32) -> *const c_char {
    argument::words(status.checked_div(1000).unwrap_or_default()).as_ptr()
}

/// The version of the library that runs, as HILUM_VERSION is that of the header: "0.1.0". Static text.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn hilum_version() -> *const c_char {
    VERSION.as_ptr()
}

const VERSION: &CStr = match CStr::from_bytes_with_nul(concat!(env!("CARGO_PKG_VERSION"), "\0").as_bytes()) {
    Ok(version) => version,
    Err(_) => c"",
};

/// The same as one number, for comparing: 10000 x major + 100 x minor + patch, as HILUM_VERSION_NUMBER is
/// that of the header.
#[must_use]
#[unsafe(no_mangle)]
pub extern "C" fn hilum_version_number() -> i32 {
    VERSION_NUMBER
}

pub(crate) const VERSION_NUMBER: i32 = 10_000 * decimal(env!("CARGO_PKG_VERSION_MAJOR").as_bytes())
    + 100 * decimal(env!("CARGO_PKG_VERSION_MINOR").as_bytes())
    + decimal(env!("CARGO_PKG_VERSION_PATCH").as_bytes());

/// A whole number out of its digits.
#[expect(clippy::as_conversions, reason = "a digit is not cut off, and traits are not const")]
const fn decimal(digits: &[u8]) -> i32 {
    match digits {
        [] => 0,
        [rest @ .., last] => 10 * decimal(rest) + (*last - b'0') as i32,
    }
}
