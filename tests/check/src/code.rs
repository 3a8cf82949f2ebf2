//! Why a calculation is refused, in one word that every language's runner knows.

use core::fmt;

use hilum::Error;
use hilum::text::TextError;
use serde::Deserialize;

macro_rules! codes {
    ($($name:ident $word:literal;)+) => {
        /// Why a calculation is refused.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
        #[expect(missing_docs, reason = "the words say it; the README lists them")]
        pub enum Code {
            $(#[serde(rename = $word)] $name,)+
        }
        impl Code {
            /// As the files write it.
            #[must_use]
            pub const fn word(self) -> &'static str {
                match self { $(Self::$name => $word,)+ }
            }
        }
    };
}

codes! {
    NotFinite "not_finite";
    NotPositive "not_positive";
    Negative "negative";
    OutOfRange "out_of_range";
    NotAShare "not_a_share";
    BelowAbsoluteZero "below_absolute_zero";
    MoreThan "more_than";
    TooFew "too_few";
    AllEqual "all_equal";
    NotFalling "not_falling";
    TooLittle "too_little";
    OneSetting "one_setting";
    NotRising "not_rising";
    SizesOfPack "sizes_of_pack";
    TooManySets "too_many_sets";
    NotForTheBus "not_for_the_bus";
    Needed "needed";
    WrongDimension "wrong_dimension";
    UnknownUnit "unknown_unit";
}

impl fmt::Display for Code {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.word())
    }
}

/// What came instead of a result.
#[derive(Clone, Debug, PartialEq)]
pub enum Refusal {
    /// The core refused a value.
    Value(Error),
    /// The text was not a quantity of the dimension needed.
    Text(TextError),
    /// The case itself is at fault.
    Case(String),
}

impl From<Error> for Refusal {
    fn from(error: Error) -> Self {
        Self::Value(error)
    }
}
impl From<TextError> for Refusal {
    fn from(error: TextError) -> Self {
        Self::Text(error)
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Value(error) => error.fmt(f),
            Self::Text(error) => error.fmt(f),
            Self::Case(problem) => f.write_str(problem),
        }
    }
}

impl Refusal {
    /// The word for it; `None` when no case could expect it.
    #[must_use]
    pub const fn code(&self) -> Option<Code> {
        match self {
            Self::Value(error) => of_value(*error),
            Self::Text(error) => of_text(*error),
            Self::Case(_) => None,
        }
    }
}

const fn of_value(error: Error) -> Option<Code> {
    Some(match error {
        Error::NotFinite { .. } => Code::NotFinite,
        Error::NotPositive { .. } => Code::NotPositive,
        Error::Negative { .. } => Code::Negative,
        Error::OutOfRange { .. } => Code::OutOfRange,
        Error::NotAShare { .. } => Code::NotAShare,
        Error::BelowAbsoluteZero { .. } => Code::BelowAbsoluteZero,
        Error::MoreThan { .. } => Code::MoreThan,
        Error::TooFew { .. } => Code::TooFew,
        Error::AllEqual { .. } => Code::AllEqual,
        Error::NotFalling { .. } => Code::NotFalling,
        Error::TooLittle { .. } => Code::TooLittle,
        Error::OneSetting { .. } => Code::OneSetting,
        Error::NotRising { .. } => Code::NotRising,
        Error::SizesOfPack { .. } => Code::SizesOfPack,
        Error::TooManySets { .. } => Code::TooManySets,
        Error::NotForTheBus { .. } => Code::NotForTheBus,
        Error::Needed { .. } => Code::Needed,
        _ => return None,
    })
}

const fn of_text(error: TextError) -> Option<Code> {
    Some(match error {
        TextError::WrongDimension { .. } | TextError::TemperaturePoint | TextError::NotATemperature => {
            Code::WrongDimension
        }
        TextError::UnknownUnit { .. } => Code::UnknownUnit,
        _ => return None,
    })
}
