//! What goes into a function, read as a document would be.

use hilum::quantity::{Measure, Temperature};
use hilum::seed::{Bushel, SeedUnit, UnitOfMass, UnitOfSeeds};
use hilum::text::{Bases, Measured, TextError, Written};
use hilum::unit::Powers;

use crate::case::{Amount, Amounts};
use crate::code::Refusal;

/// The inputs of a case.
#[derive(Clone, Copy, Debug)]
pub struct Inputs<'a> {
    amounts: &'a Amounts,
    bases: Bases,
}

impl<'a> Inputs<'a> {
    /// Inputs called `unit` and `bushel` say what these words mean in the others.
    #[must_use]
    pub fn new(amounts: &'a Amounts) -> Self {
        let plain = Self { amounts, bases: Bases::default() };
        let bases = Bases { unit: plain.seed_unit("unit").ok(), bushel: plain.bushel("bushel").ok() };
        Self { amounts, bases }
    }

    pub(crate) fn has(&self, name: &str) -> bool {
        self.amounts.get(name).is_some()
    }

    pub(crate) fn text(&self, name: &str) -> Result<&'a str, Refusal> {
        match self.amounts.get(name) {
            Some(Amount::Text(text)) => Ok(text),
            Some(Amount::Number(_)) => Err(Refusal::Case(format!("{name} must be a quantity as text"))),
            None => Err(Refusal::Case(format!("{name} is missing"))),
        }
    }

    pub(crate) fn number(&self, name: &str) -> Result<f64, Refusal> {
        match self.amounts.get(name) {
            Some(Amount::Number(number)) => Ok(*number),
            Some(Amount::Text(_)) => Err(Refusal::Case(format!("{name} must be a plain number"))),
            None => Err(Refusal::Case(format!("{name} is missing"))),
        }
    }

    pub(crate) fn measured(&self, name: &str) -> Result<Measured, Refusal> {
        Ok(Written::read(self.text(name)?)?.measured(&self.bases)?)
    }

    pub(crate) fn powers(&self, name: &str) -> Result<Powers, Refusal> {
        match self.measured(name)? {
            Measured::Quantity { powers, .. } => Ok(powers),
            Measured::Temperature(_) => Err(TextError::TemperaturePoint.into()),
        }
    }

    pub(crate) fn quantity<Q: Measure>(&self, name: &str) -> Result<Q, Refusal> {
        match self.measured(name)? {
            Measured::Quantity { value, powers } if powers == Q::POWERS => Ok(Q::from_base(value)),
            Measured::Quantity { powers, .. } => {
                Err(TextError::WrongDimension { given: powers, wanted: Q::POWERS }.into())
            }
            Measured::Temperature(_) => Err(TextError::TemperaturePoint.into()),
        }
    }

    pub(crate) fn temperature(&self, name: &str) -> Result<Temperature, Refusal> {
        match self.measured(name)? {
            Measured::Temperature(at) => Ok(at),
            Measured::Quantity { .. } => Err(TextError::NotATemperature.into()),
        }
    }

    /// Whether a dose, an amount or a content is one of liquid: volumes have three lengths.
    pub(crate) fn is_liquid(&self, name: &str) -> Result<bool, Refusal> {
        self.powers(name).map(|powers| powers.length == 3)
    }

    pub(crate) fn seed_unit(&self, name: &str) -> Result<SeedUnit, Refusal> {
        if self.powers(name)? == hilum::quantity::mass::POWERS {
            Ok(SeedUnit::Mass(UnitOfMass::new(self.quantity(name)?)?))
        } else {
            Ok(SeedUnit::Count(UnitOfSeeds::new(self.quantity(name)?)?))
        }
    }

    pub(crate) fn bushel(&self, name: &str) -> Result<Bushel, Refusal> {
        Ok(Bushel::new(self.quantity(name)?)?)
    }
}
