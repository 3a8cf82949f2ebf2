use hilum::account::{Achieved, Measured, Quantity, Reading};
use hilum::quantity::{Mass, Measure, Volume};
use hilum::rate::Substance;

use super::{Answer, Product};
use crate::code::Refusal;
use crate::inputs::Inputs;
use crate::value::Value;

fn reading<Q: Quantity + Measure>(
    inputs: &Inputs,
    name: &str,
    resolution: &str,
) -> Result<Reading<Q>, Refusal> {
    Ok(Reading::new(inputs.quantity(name)?, inputs.quantity(resolution)?)?)
}

/// All four readings are off the same gauge.
pub(super) fn used(inputs: &Inputs) -> Answer {
    fn of<Q: Quantity + Measure>(inputs: &Inputs) -> Answer {
        let shown = |name| reading::<Q>(inputs, name, "resolution");
        let used = Measured::used(shown("start")?, shown("end")?, &[shown("added")?], &[shown("lost")?])?;
        Ok(vec![Value::quantity("used", used.get()), Value::quantity("uncertainty", used.uncertainty())])
    }
    if inputs.is_liquid("start")? { of::<Volume>(inputs) } else { of::<Mass>(inputs) }
}

pub(super) fn achieved(inputs: &Inputs) -> Answer {
    fn of<Q: Quantity<Product: Product> + Measure>(inputs: &Inputs) -> Answer
    where
        <Q::Product as Substance>::PerMass: Measure,
    {
        let used = Measured::from(reading::<Q>(inputs, "used", "resolution")?);
        let seed = Measured::from(reading::<Mass>(inputs, "seed", "seed_resolution")?);
        let achieved = Achieved::on(used, seed)?;
        Ok(vec![
            Value::quantity("rate", achieved.rate().get()),
            Value::quantity("uncertainty", achieved.uncertainty()),
        ])
    }
    if inputs.is_liquid("used")? { of::<Volume>(inputs) } else { of::<Mass>(inputs) }
}
