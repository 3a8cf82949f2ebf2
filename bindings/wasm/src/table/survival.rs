//! Are they still alive?

use hilum::quantity::{Measure, Temperature, TemperatureDifference, Time};
use hilum::rate::{CellCount, PerSeed};
use hilum::seed::Share;
use hilum::viability::{
    Crossing, DecimalReduction, Fit, Model, Period, Reference, Sample, Survival, TwoPhase, WeibullScale,
    WeibullShape, fit_log_linear,
};

use crate::refusal::{Blame, Refusal, Refused};
use crate::slots::Slots;

super::calculators! {
    slots =>
    survival {
        /// How long storage is worth at the reference temperature: a first period, then another until the time.
        effective_time(time: Time, at: Temperature, z: TemperatureDifference, first: Time, first_temperature: Temperature, temperature: Temperature)
            -> time: Time = {
                let reference = Reference::new(at, z).looked_at()?;
                let storage = [
                    Period::new(first, Some(first_temperature)).looked_at()?,
                    Period::new(time, Some(temperature)).looked_at()?,
                ];
                // The curve does not matter to the time.
                let any = DecimalReduction::new(Time::from_base(1.0)).looked_at()?;
                Survival::new(Model::LogLinear(any), Some(reference)).effective_time(&storage, time).looked_at()?
            };
        /// The living cells on a seed after a time: cells × 10^(−time / D).
        count(cells: PerSeed<CellCount>, d: DecimalReduction, time: Time) -> cells: PerSeed<CellCount> =
            Survival::new(Model::LogLinear(d), None).count(cells, &[], time).looked_at()?;
        /// The last moment at which there are enough cells on a seed: D × log10(cells / minimum), in whole seconds.
        last_moment(cells: PerSeed<CellCount>, minimum: PerSeed<CellCount>, d: DecimalReduction) -> time: Time =
            match Survival::new(Model::LogLinear(d), None).crossing(cells, minimum, &[]) {
                Crossing::At(time) => time,
                Crossing::AlreadyBelow => return Err(slots.refuse(0, Refusal::already_below())),
                Crossing::Never => return Err(slots.refuse(1, Refusal::never())),
            };
        /// The decimal reduction time through two counts: (time 2 − time 1) / log10(count 1 / count 2).
        fit_d(time_1: Time, count_1: f64, time_2: Time, count_2: f64) -> d: DecimalReduction =
            fitted(slots, [(time_1, count_1), (time_2, count_2)])?.decimal_reduction;
        /// log10 of the count at time 0, by the line through two counts.
        fit_log10(time_1: Time, count_1: f64, time_2: Time, count_2: f64) -> log10: f64 =
            fitted(slots, [(time_1, count_1), (time_2, count_2)])?.log10_initial;
        /// log10 of the living share after a time: −time / D.
        log_linear(d: DecimalReduction, time: Time) -> log10: f64 =
            Survival::new(Model::LogLinear(d), None).log10(&[], time).looked_at()?;
        /// log10 of the living share after a time at a temperature: −time · 10^((temperature − at) / z) / D.
        log_linear(d: DecimalReduction, time: Time, at: Temperature, z: TemperatureDifference, temperature: Temperature)
            -> log10: f64 = kept(Model::LogLinear(d), time, at, z, temperature)?;
        /// log10 of the living share after a time: −(time / scale)^shape.
        weibull(scale: WeibullScale, shape: WeibullShape, time: Time) -> log10: f64 =
            Survival::new(Model::Weibull { scale, shape }, None).log10(&[], time).looked_at()?;
        /// log10 of the living share after a time at a temperature: −(time · 10^((temperature − at) / z) / scale)^shape.
        weibull(scale: WeibullScale, shape: WeibullShape, time: Time, at: Temperature, z: TemperatureDifference, temperature: Temperature)
            -> log10: f64 = kept(Model::Weibull { scale, shape }, time, at, z, temperature)?;
        /// log10 of the living share after a time, of cells of which a fraction dies fast and the others slowly.
        two_phase(fraction: Share, fast: DecimalReduction, slow: DecimalReduction, time: Time) -> log10: f64 =
            Survival::new(Model::TwoPhase(TwoPhase::new(fraction, fast, slow).of(slots, 1)?), None).log10(&[], time).looked_at()?;
        /// log10 of the living share after a time at a temperature, of cells of which a fraction dies fast and the others slowly.
        two_phase(fraction: Share, fast: DecimalReduction, slow: DecimalReduction, time: Time, at: Temperature, z: TemperatureDifference, temperature: Temperature)
            -> log10: f64 = kept(Model::TwoPhase(TwoPhase::new(fraction, fast, slow).of(slots, 1)?), time, at, z, temperature)?;
    }
}

/// What two counts say; the second is to blame when they do not fall.
fn fitted(slots: &Slots, counts: [(Time, f64); 2]) -> Result<Fit, Refused> {
    let [first, second] = counts.map(|(time, count)| Sample::new(time, count));
    fit_log_linear(&[first.looked_at()?, second.looked_at()?]).of(slots, 3)
}

/// Kept at one temperature for all of the time.
fn kept(
    model: Model,
    time: Time,
    at: Temperature,
    z: TemperatureDifference,
    temperature: Temperature,
) -> Result<f64, Refused> {
    let reference = Reference::new(at, z).looked_at()?;
    let storage = [Period::new(time, Some(temperature)).looked_at()?];
    Survival::new(model, Some(reference)).log10(&storage, time).looked_at()
}
