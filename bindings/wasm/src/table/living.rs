//! Are they still alive?

use hilum::quantity::{Temperature, TemperatureDifference, Time};
use hilum::rate::{CellCount, PerMass, PerSeed};
use hilum::seed::{SeedSize, Share};
use hilum::viability::{
    DecimalReduction, Model, Period, Reference, Survival, TwoPhase, WeibullScale, WeibullShape,
};

use crate::refusal::{Blame, Refused};
use crate::take::Product;

super::calculators! {
    slots =>
    living {
        /// Living cells that land on one seed: titre × dose per seed × recovery.
        cells_per_seed[S](titre: <S as Product>::Titre, per_seed: PerSeed<S>, recovery: Share)
            -> cells: PerSeed<CellCount> = S::cells(titre, per_seed, recovery);
        /// Living cells that land on one seed: titre × rate / size × recovery.
        cells_per_seed[S](titre: <S as Product>::Titre, rate: PerMass<S>, size: SeedSize, recovery: Share)
            -> cells: PerSeed<CellCount> = S::cells(titre, rate.per_seed(size), recovery);
        /// The dose that puts so many living cells on one seed: cells / (titre × recovery).
        dose_for[S](titre: <S as Product>::Titre, cells: PerSeed<CellCount>, recovery: Share)
            -> per_seed: PerSeed<S> = S::dose_for(titre, cells, recovery).of(slots, 2)?;
    }
    survival {
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
