//! A result in base units.

use core::fmt;

use hilum::quantity::{self, Temperature};
use hilum::text::Measured;
use hilum::unit::Powers;

/// What a number measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// Nothing: a setting, a count of sets, a difference, a logarithm.
    Number,
    /// A quantity, in base units.
    Quantity(Powers),
    /// A point on the temperature scale, in °C.
    Temperature,
}

/// In base units: `:m3.kg-1`, `:1` for a share, `:degC` for a point of temperature, nothing for a number.
impl fmt::Display for Measure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Powers { length, mass, time, temperature, seeds, cells } = match self {
            Self::Number => return Ok(()),
            Self::Temperature => return f.write_str(":degC"),
            Self::Quantity(powers) => *powers,
        };
        let powers =
            [(length, "m"), (mass, "kg"), (time, "s"), (temperature, "K"), (seeds, "seeds"), (cells, "CFU")];
        let mut before = ":";
        for (power, base) in powers.into_iter().filter(|(power, _)| *power != 0) {
            write!(f, "{before}{base}")?;
            if power != 1 {
                write!(f, "{power}")?;
            }
            before = ".";
        }
        if before == ":" { f.write_str(":1") } else { Ok(()) }
    }
}

/// A result.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Value {
    /// What it is called.
    pub name: &'static str,
    /// In base units: kg, m³, s, K, seeds, CFU and their quotients; °C for a point of temperature.
    pub base: f64,
    /// What it measures.
    pub measure: Measure,
}

impl Value {
    pub(crate) fn quantity<Q: quantity::Measure>(name: &'static str, quantity: Q) -> Self {
        Self { name, base: quantity.to_base(), measure: Measure::Quantity(Q::POWERS) }
    }
    pub(crate) const fn number(name: &'static str, number: f64) -> Self {
        Self { name, base: number, measure: Measure::Number }
    }
    pub(crate) const fn measured(name: &'static str, measured: Measured) -> Self {
        let (base, measure) = split(measured);
        Self { name, base, measure }
    }
}

/// The number of base units, and what it measures.
pub(crate) const fn split(measured: Measured) -> (f64, Measure) {
    match measured {
        Measured::Quantity { value, powers } => (value, Measure::Quantity(powers)),
        Measured::Temperature(at) => (Temperature::celsius(at), Measure::Temperature),
    }
}
