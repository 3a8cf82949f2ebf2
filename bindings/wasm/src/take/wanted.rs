//! What is looked at of an input before its calculation runs.

#[cfg(feature = "text")]
use hilum::error;
use hilum::unit::Powers;

use crate::value::Of;

/// What an input must be.
#[derive(Clone, Copy)]
pub(crate) struct Wanted {
    pub(crate) of: Of,
    pub(crate) check: Check,
}

impl Wanted {
    /// A number that measures this; numbers alone do not say what they measure.
    pub(crate) const fn of(powers: Powers, check: Check) -> Self {
        Self { of: Of::powers(powers), check }
    }

    /// A point on the temperature scale.
    pub(crate) const TEMPERATURE: Self = Self { of: Of::TEMPERATURE, check: Check::Temperature };

    /// Whatever there is; the calculation looks at it.
    pub(crate) const LATER: Self = Self { of: Of::NUMBER, check: Check::Later };
}

/// Which numbers an input may be; the core looks.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Check {
    Positive,
    NotNegative,
    Share,
    Temperature,
    /// Any number; the calculation looks at it.
    Any,
    /// What takes it looks at all of it.
    Later,
}

#[cfg(feature = "text")]
impl Check {
    /// Whether it lets a number pass.
    #[inline(always)]
    pub(crate) fn passes(self, base: f64) -> bool {
        let of = hilum::Argument::Share;
        match self {
            Self::Positive => error::positive(of, base).is_ok(),
            Self::NotNegative => error::not_negative(of, base).is_ok(),
            Self::Share => error::share(of, base).is_ok(),
            Self::Temperature | Self::Any | Self::Later => true,
        }
    }
}
