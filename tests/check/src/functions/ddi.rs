use hilum::ddi::{Row, find};
use hilum::math;
use hilum::quantity::{Temperature, temperature_difference};
use hilum::text::{Measured, TextError};

use super::{Answer, one};
use crate::code::Refusal;
use crate::inputs::Inputs;
use crate::value::Value;

fn entry(inputs: &Inputs) -> Result<Row, Refusal> {
    let ddi = whole(inputs, "ddi")?;
    let row = u16::try_from(ddi).ok().and_then(find);
    row.ok_or_else(|| Refusal::Case(format!("the core has no data dictionary entry {ddi}")))
}

fn whole(inputs: &Inputs, name: &str) -> Result<i32, Refusal> {
    let number = inputs.number(name)?;
    math::to_i32(number).ok_or_else(|| Refusal::Case(format!("{number} is no {name}")))
}

/// The dictionary has points of temperature, but no differences.
fn is_temperature(entry: Row) -> bool {
    entry.powers == temperature_difference::POWERS
}

pub(super) fn encode(inputs: &Inputs) -> Answer {
    let entry = entry(inputs)?;
    let value = match inputs.measured("value")? {
        Measured::Temperature(at) if is_temperature(entry) => at.celsius(),
        Measured::Temperature(_) => return Err(TextError::TemperaturePoint.into()),
        Measured::Quantity { .. } if is_temperature(entry) => return Err(TextError::NotATemperature.into()),
        Measured::Quantity { value, powers } if powers == entry.powers => value,
        Measured::Quantity { powers, .. } => {
            return Err(TextError::WrongDimension { given: powers, wanted: entry.powers }.into());
        }
    };
    one(Value::number("number", f64::from(entry.encode(value)?)))
}

pub(super) fn decode(inputs: &Inputs) -> Answer {
    let entry = entry(inputs)?;
    let value = entry.decode(whole(inputs, "number")?)?;
    one(Value::measured(
        "value",
        if is_temperature(entry) {
            Measured::Temperature(Temperature::from_celsius(value))
        } else {
            Measured::Quantity { value, powers: entry.powers }
        },
    ))
}
