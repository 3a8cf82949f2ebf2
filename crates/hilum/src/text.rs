//! "2.5 fl oz/cwt" → a quantity, without allocation.
//!
//! A quantity is a number, a space (optional before `%` and `°`) and a unit with at most one `/`; what is
//! below the line may carry a number: `mL/100 kg`, `fl oz/140000 seeds`. Numbers are written as in JSON;
//! `_` or a thin space may group digits. Units are spelled as the trade does, or in UCUM in the forms `a`,
//! `a/b` and `a/(n.b)`.
//!
//! ```
//! use hilum::quantity::{VolumePerMass, volume_per_mass::cubic_meter_per_kilogram};
//! use hilum::text;
//! # fn main() -> Result<(), hilum::text::TextError> {
//! let label: VolumePerMass = text::read("2.5 fl oz/cwt")?;
//! let ucum: VolumePerMass = text::read("2.5 [foz_us]/[scwt_av]")?;
//! assert_eq!(label, ucum);
//! // NIST SP 811: 29.573 529 562 5 mL and 45.359 237 kg.
//! let exact = 2.5 * 29.573_529_562_5e-6 / 45.359_237;
//! assert!((label.get::<cubic_meter_per_kilogram>() / exact - 1.0).abs() < 1e-15);
//! # Ok(()) }
//! ```

mod error;
mod number;
mod words;

pub use error::TextError;
pub use words::closest;

use crate::quantity::{Measure, Temperature};
use crate::seed::{Bushel, SeedUnit};
use crate::unit::{Powers, Unit};

/// One word of a unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Atom {
    /// A unit of the table.
    Unit(&'static Unit),
    /// Plants, in a stand.
    Plant,
    /// A seed unit: how much it is, the order or the label says.
    SeedUnit,
    /// A bushel: what it weighs, the order or the label says.
    Bushel,
    /// A point on the Celsius scale.
    Celsius,
    /// A point on the Fahrenheit scale.
    Fahrenheit,
}

/// A unit as written: one word, or one word over a number of another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Compound {
    /// Above the line.
    pub above: Atom,
    /// Below the line: how many of what.
    pub below: Option<(f64, Atom)>,
}

/// A quantity as written, before it is known what a unit or a bushel of this seed is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Written {
    /// The number.
    pub number: f64,
    /// The unit.
    pub unit: Compound,
}

/// What `unit` and `bu` mean here.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Bases {
    /// The seed unit.
    pub unit: Option<SeedUnit>,
    /// The bushel.
    pub bushel: Option<Bushel>,
}

/// How digits become a double: a number of JSON's grammar to the nearest double, as IEEE 754 rounds.
///
/// Core's own reader is a table of 10 kB; a script or a small machine may have another already.
pub type Decimal = fn(&str) -> Option<f64>;

/// What was written, in base units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Measured {
    /// A quantity and what it measures.
    Quantity {
        /// In base units.
        value: f64,
        /// What it measures.
        powers: Powers,
    },
    /// A point on the temperature scale.
    Temperature(Temperature),
}

/// Reads a quantity whose unit needs no explanation (neither `unit` nor `bu`).
///
/// # Errors
/// When the text is not a number and a known unit, or does not measure a `Q`.
pub fn read<Q: Measure>(text: &str) -> Result<Q, TextError> {
    match Written::read(text)?.measured(&Bases::default())? {
        Measured::Quantity { value, powers } if powers == Q::POWERS => Ok(Q::from_base(value)),
        Measured::Quantity { powers, .. } => {
            Err(TextError::WrongDimension { given: powers, wanted: Q::POWERS })
        }
        Measured::Temperature(_) => Err(TextError::TemperaturePoint),
    }
}

/// Reads a point on the temperature scale: `41 degF`, `5 °C`.
///
/// # Errors
/// When the text is anything else.
pub fn read_temperature(text: &str) -> Result<Temperature, TextError> {
    match Written::read(text)?.measured(&Bases::default())? {
        Measured::Temperature(at) => Ok(at),
        Measured::Quantity { .. } => Err(TextError::NotATemperature),
    }
}

impl Written {
    /// Reads a number and a unit.
    ///
    /// # Errors
    /// Where the text departs from the form; see [`TextError`] for the kinds.
    pub fn read(text: &str) -> Result<Self, TextError> {
        Self::read_with(text, number::nearest)
    }

    /// Reads a number and a unit, with a reader of decimals of the caller's.
    ///
    /// # Errors
    /// As [`Written::read`].
    pub fn read_with(text: &str, decimal: Decimal) -> Result<Self, TextError> {
        let text = text.trim();
        let (number, rest) = number::split(text, decimal)?;
        let unit = match rest.trim() {
            "" => return Err(TextError::NoUnit),
            unit if unit.len() < rest.len() || unit.starts_with('%') || unit.starts_with('°') => unit,
            _ => return Err(TextError::NoSpace),
        };
        // A unit may begin with a digit too: UCUM's international acre is 43560.[sft_i].
        let grouped = unit.as_bytes().first().is_some_and(u8::is_ascii_digit);
        let unit = Compound::read_with(unit, decimal)
            .map_err(|error| if grouped { TextError::SpaceInNumber } else { error })?;
        Ok(Self { number, unit })
    }

    /// The quantity in base units: (number · above) / (count · below), always in this order, so that text
    /// and typed values have the same bits.
    ///
    /// # Errors
    /// When `unit` or `bu` is written and `bases` does not say what it is.
    pub fn measured(&self, bases: &Bases) -> Result<Measured, TextError> {
        match (self.unit.above, self.unit.below) {
            (Atom::Celsius, None) => Ok(Measured::Temperature(Temperature::from_celsius(self.number))),
            (Atom::Fahrenheit, None) => Ok(Measured::Temperature(Temperature::from_fahrenheit(self.number))),
            _ => {
                let scale = self.unit.scale(bases)?;
                Ok(Measured::Quantity { value: scale.base(self.number), powers: scale.powers })
            }
        }
    }
}

impl Compound {
    /// Reads a unit without its number.
    ///
    /// # Errors
    /// When a word is unknown or the form is not `a`, `a/b` or `a/(n.b)`.
    pub fn read(text: &str) -> Result<Self, TextError> {
        Self::read_with(text, number::nearest)
    }

    /// Reads a unit without its number, with a reader of decimals of the caller's.
    ///
    /// # Errors
    /// As [`Compound::read`].
    pub fn read_with(text: &str, decimal: Decimal) -> Result<Self, TextError> {
        let text = text.trim();
        let Some((above, below)) = cut(text, b'/') else {
            return Ok(Self { above: words::atom(text)?, below: None });
        };
        if cut(below, b'/').is_some() {
            return Err(TextError::TwoLines);
        }
        let above = words::atom(above.trim())?;
        Ok(Self { above, below: Some(below_the_line(below.trim(), decimal)?) })
    }

    /// What a number of base units is in this unit: value · (count · below) / above.
    ///
    /// # Errors
    /// When `unit` or `bu` is written and `bases` does not say what it is, and for a temperature point.
    pub fn count_in(&self, value: f64, bases: &Bases) -> Result<f64, TextError> {
        self.scale(bases).map(|scale| scale.number(value))
    }

    /// What it comes to, for many numbers of it.
    ///
    /// # Errors
    /// As [`Compound::count_in`].
    pub fn scale(&self, bases: &Bases) -> Result<Scale, TextError> {
        let (above, powers) = self.above.size(bases)?;
        Ok(match self.below {
            None => Scale { above, below: None, powers },
            Some((count, below)) => {
                let (below, under) = below.size(bases)?;
                Scale { above, below: Some(count * below), powers: powers.over(under) }
            }
        })
    }
}

/// A unit's size in base units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// Base units in one of what is above the line.
    pub above: f64,
    /// Base units in all that is below it.
    pub below: Option<f64>,
    /// What it measures.
    pub powers: Powers,
}

impl Scale {
    /// A number of the unit in base units: (number · above) / (count · below), always in this order.
    #[must_use]
    pub fn base(self, number: f64) -> f64 {
        match self.below {
            None => number * self.above,
            Some(below) => (number * self.above) / below,
        }
    }

    /// A number of base units in the unit: value · (count · below) / above.
    #[must_use]
    pub fn number(self, base: f64) -> f64 {
        match self.below {
            None => base / self.above,
            Some(below) => base * below / self.above,
        }
    }
}

/// What stands before and behind the first of an ASCII character.
fn cut(text: &str, at: u8) -> Option<(&str, &str)> {
    let before = text.bytes().position(|byte| byte == at)?;
    Some((text.get(..before)?, text.get(before.saturating_add(1)..)?))
}

/// `cwt`, `100 kg`, `(100.kg)`.
fn below_the_line(text: &str, decimal: Decimal) -> Result<(f64, Atom), TextError> {
    if let Some(inner) = text.strip_prefix('(') {
        let inner = inner.strip_suffix(')').ok_or(TextError::Form)?;
        let (count, unit) = cut(inner, b'.').ok_or(TextError::Form)?;
        let (count, rest) = number::split(count, decimal)?;
        return if rest.is_empty() {
            Ok((number::below_line(count)?, words::atom(unit)?))
        } else {
            Err(TextError::Form)
        };
    }
    if !matches!(text.as_bytes().first(), Some(b'0'..=b'9' | b'-')) {
        return Ok((1.0, words::atom(text)?));
    }
    let (count, rest) = number::split(text, decimal)?;
    match rest.trim() {
        "" => Err(TextError::NoUnit),
        unit if unit.len() < rest.len() => Ok((number::below_line(count)?, words::atom(unit)?)),
        _ => Err(TextError::NoSpace),
    }
}

impl Atom {
    /// Base units in one, and what it measures.
    fn size(self, bases: &Bases) -> Result<(f64, Powers), TextError> {
        use crate::quantity::{mass, seeds};
        match self {
            Self::Unit(unit) => Ok((unit.factor, unit.powers)),
            Self::Plant => Ok((1.0, seeds::POWERS)),
            Self::SeedUnit => match bases.unit {
                Some(SeedUnit::Count(unit)) => Ok((unit.0, seeds::POWERS)),
                Some(SeedUnit::Mass(unit)) => Ok((unit.0, mass::POWERS)),
                None => Err(TextError::UnitNotGiven),
            },
            Self::Bushel => {
                bases.bushel.map(|bushel| (bushel.0, mass::POWERS)).ok_or(TextError::BushelNotGiven)
            }
            Self::Celsius | Self::Fahrenheit => Err(TextError::TemperaturePoint),
        }
    }
}

#[cfg(test)]
mod tests;
