//! What was wrong with a text, and how to write it instead.

use crate::unit::Powers;

/// Why a text is not a quantity.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum TextError {
    /// Nothing there.
    #[error("is empty; write a number, a space and a unit, as in \"2.5 fl oz/cwt\"")]
    Empty,
    /// It does not begin with a number.
    #[error("does not begin with a number; write a number, a space and a unit, as in \"2.5 fl oz/cwt\"")]
    NotANumber,
    /// `.5`, `+5`, `05`, `5.`
    #[error("has a number in a form that is not read; write it as 0.5, 5 or 1e5")]
    NumberForm,
    /// `1,000`
    #[error("has a comma in its number; write 1000 or 1_000, and a point for decimals")]
    Comma,
    /// `140 000`
    #[error("has a space in its number; write 140000 or 140_000")]
    SpaceInNumber,
    /// `140M`, `5kg`
    #[error("needs a space between number and unit, and the number in full (140000000, not 140M)")]
    NoSpace,
    /// More digits than any double has.
    #[error("has a number of more than 100 characters; write fewer digits, or 1e9 for 1000000000")]
    NumberTooLong,
    /// `1e400`
    #[error("has a number that is too large to calculate with; check its exponent")]
    TooLarge,
    /// `NaN`, `inf`
    #[error("is not a finite number; write a number, a space and a unit")]
    NotFinite,
    /// A number alone.
    #[error("has no unit; write a number, a space and a unit, as in \"2.5 fl oz/cwt\"")]
    NoUnit,
    /// `oz`
    #[error(
        "has a bare \"oz\", which may be weight or volume; write \"oz av\" (weight) or \"fl oz\" (volume)"
    )]
    BareOunce,
    /// `ton`
    #[error("has \"ton\", of which there are several; write t (1000 kg), or 2000 lb for a US short ton")]
    Ton,
    /// A word that is no unit here.
    #[error("has an unknown unit{}", Suggested(*.suggestion))]
    UnknownUnit {
        /// What may have been meant.
        suggestion: Option<&'static str>,
    },
    /// `mL/kg/d`
    #[error("has more than one /; write one unit over one other")]
    TwoLines,
    /// `mL/0 kg`
    #[error(
        "has a number below the line that is not more than 0; write how many of the unit, as in \"mL/100 kg\""
    )]
    BelowTheLine,
    /// Parentheses or dots where none can be.
    #[error("has a unit in a form that is not read; write a, a/b, a/100 b, or UCUM a/(100.b)")]
    Form,
    /// `unit`, and nothing says how many seeds that is.
    #[error(
        "is per unit, but it is not said how many seeds a unit is; give the unit, such as \"140000 seeds\", or write seeds"
    )]
    UnitNotGiven,
    /// `bu`, and nothing says what a bushel weighs.
    #[error(
        "is per bushel, but it is not said what a bushel weighs; give the bushel, such as \"60 lb\", or write a mass"
    )]
    BushelNotGiven,
    /// A point on the scale where an amount is needed.
    #[error("is a temperature, but here an amount is needed (a difference is written in K)")]
    TemperaturePoint,
    /// An amount, or a difference in K, where a point on the scale is needed.
    #[error("is not a temperature; write degC or degF")]
    NotATemperature,
    /// Another dimension than wanted.
    #[error("is {}, but {} is needed", Words(*.given), Words(*.wanted))]
    WrongDimension {
        /// What was written.
        given: Powers,
        /// What is needed.
        wanted: Powers,
    },
}

struct Suggested(Option<&'static str>);

impl core::fmt::Display for Suggested {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self.0 {
            Some(unit) => write!(f, "; did you mean \"{unit}\"?"),
            None => f.write_str("; write one such as kg, lb, mL, fl oz, seeds or CFU"),
        }
    }
}

struct Words(Powers);

impl core::fmt::Display for Words {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(self.0.name().unwrap_or("a quantity of a kind that is not used here"))
    }
}
