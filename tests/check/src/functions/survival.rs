use hilum::quantity::{Measure, Ratio, Time};
use hilum::rate::{CellCount, PerSeed};
use hilum::viability::{
    Crossing, DecimalReduction, Model, Period, Reference, Sample, Survival, TwoPhase, WeibullScale,
    WeibullShape, fit_log_linear,
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

/// A first period at one temperature, then another that goes on.
pub(super) fn effective_time(inputs: &Inputs) -> Answer {
    let reference = Reference::new(inputs.temperature("at")?, inputs.quantity("z")?)?;
    let time: Time = inputs.quantity("time")?;
    let storage = [
        Period::new(inputs.quantity("first")?, Some(inputs.temperature("first_temperature")?))?,
        Period::new(time, Some(inputs.temperature("temperature")?))?,
    ];
    // The curve does not matter to the time.
    let any = Model::LogLinear(DecimalReduction::new(Time::from_base(1.0))?);
    one(Value::quantity("time", Survival::new(any, Some(reference)).effective_time(&storage, time)?))
}

fn plain(inputs: &Inputs) -> Result<Survival, Refusal> {
    Ok(Survival::new(Model::LogLinear(decimal_reduction(inputs, "d")?), None))
}

fn cells(inputs: &Inputs, name: &str) -> Result<PerSeed<CellCount>, Refusal> {
    Ok(PerSeed::new(inputs.quantity(name)?)?)
}

pub(super) fn count(inputs: &Inputs) -> Answer {
    let left = plain(inputs)?.count(cells(inputs, "cells")?, &[], inputs.quantity("time")?)?;
    one(Value::quantity("cells", left.get()))
}

pub(super) fn last_moment(inputs: &Inputs) -> Answer {
    match plain(inputs)?.crossing(cells(inputs, "cells")?, cells(inputs, "minimum")?, &[]) {
        Crossing::At(time) => one(Value::quantity("time", time)),
        none => Err(Refusal::Case(format!("{none:?} is no time"))),
    }
}

pub(super) fn fit(inputs: &Inputs) -> Answer {
    let sample = |time: &str, count: &str| -> Result<Sample, Refusal> {
        Ok(Sample::new(inputs.quantity(time)?, inputs.number(count)?)?)
    };
    let fit = fit_log_linear(&[sample("time_1", "count_1")?, sample("time_2", "count_2")?])?;
    Ok(vec![Value::quantity("d", fit.decimal_reduction.get()), Value::number("log10", fit.log10_initial)])
}
