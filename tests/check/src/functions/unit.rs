use hilum::text::Atom;
use hilum::text::{Bases, Compound, Measured, TextError, Written};

use super::{Answer, one};
use crate::code::Refusal;
use crate::inputs::Inputs;
use crate::value::Value;

/// To the unit and back to base units, so that both directions are held.
pub(super) fn convert(inputs: &Inputs) -> Answer {
    let to = Compound::read(inputs.text("to")?)?;
    let number = match (inputs.measured("value")?, to.above) {
        (Measured::Temperature(at), Atom::Celsius) => at.celsius(),
        (Measured::Temperature(at), Atom::Fahrenheit) => at.fahrenheit(),
        (Measured::Temperature(_), _) => return Err(TextError::TemperaturePoint.into()),
        (Measured::Quantity { value, powers }, _) => {
            let wanted = powers_of(to)?;
            if powers != wanted {
                return Err(TextError::WrongDimension { given: powers, wanted }.into());
            }
            to.count_in(value, &Bases::default())?
        }
    };
    one(Value::measured("value", Written { number, unit: to }.measured(&Bases::default())?))
}

fn powers_of(unit: Compound) -> Result<hilum::unit::Powers, Refusal> {
    match (Written { number: 1.0, unit }).measured(&Bases::default())? {
        Measured::Quantity { powers, .. } => Ok(powers),
        Measured::Temperature(_) => Err(TextError::NotATemperature.into()),
    }
}
