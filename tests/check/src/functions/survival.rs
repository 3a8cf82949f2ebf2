use hilum::quantity::{Measure, Ratio, Time};
use hilum::viability::{
    DecimalReduction, Model, Period, Reference, Survival, TwoPhase, WeibullScale, WeibullShape,
};

use super::{Answer, one, seed};
use crate::code::Refusal;
use crate::inputs::Inputs;
use crate::value::Value;

fn log10(model: Model, inputs: &Inputs) -> Answer {
    let time: Time = inputs.quantity("time")?;
    let log10 = if inputs.has("at") {
        let reference = Reference::new(inputs.temperature("at")?, inputs.quantity("z")?)?;
        let storage = [Period::new(time, Some(inputs.temperature("temperature")?))?];
        Survival::new(model, Some(reference)).log10(&storage, time)?
    } else {
        Survival::new(model, None).log10(&[], time)?
    };
    one(Value::number("log10", log10))
}

fn decimal_reduction(inputs: &Inputs, name: &str) -> Result<DecimalReduction, Refusal> {
    Ok(DecimalReduction::new(inputs.quantity(name)?)?)
}

pub(super) fn log_linear(inputs: &Inputs) -> Answer {
    log10(Model::LogLinear(decimal_reduction(inputs, "d")?), inputs)
}

pub(super) fn weibull(inputs: &Inputs) -> Answer {
    let scale = WeibullScale::new(inputs.quantity("scale")?)?;
    let shape = WeibullShape::new(Ratio::from_base(inputs.number("shape")?))?;
    log10(Model::Weibull { scale, shape }, inputs)
}

pub(super) fn two_phase(inputs: &Inputs) -> Answer {
    let fraction = seed::share_of(inputs, "fraction")?;
    let (fast, slow) = (decimal_reduction(inputs, "fast")?, decimal_reduction(inputs, "slow")?);
    log10(Model::TwoPhase(TwoPhase::new(fraction, fast, slow)?), inputs)
}
