//! The living part.

use hilum::viability::{
    self, DecimalReduction, Fit, Life, Period, Reference, Sample, Survival, Titre, TitrePerMass,
    TitrePerVolume, TwoPhase, WeibullScale, WeibullShape, storage,
};

use super::{four, one, three, two};

pub(super) fn all() {
    one(TitrePerVolume::new);
    three(TitrePerVolume::in_set);
    three(TitrePerVolume::cells);
    three(TitrePerVolume::dose_for);
    three(TitrePerVolume::needed);
    one(TitrePerMass::new);
    three(TitrePerMass::in_set);
    three(TitrePerMass::stirred_into);
    three(TitrePerMass::cells);
    three(TitrePerMass::dose_for);
    three(TitrePerMass::needed);
    two(Titre::per_volume);
    two(Titre::per_mass);
    one(DecimalReduction::new);
    one(WeibullScale::new);
    one(WeibullShape::new);
    three(TwoPhase::new);
    two(Reference::new);
    two(Period::new);
    two(Survival::new);
    three(Survival::effective_time);
    one(Survival::needs_temperature);
    three(Survival::log10);
    four(Survival::count);
    four(Survival::crossing);
    one(Life::new);
    three(viability::plant_by);
    two(Sample::new);
    two(Sample::per_seed);
    one(Fit::initial);
    one(viability::fit_log_linear);
    one(storage::frozen);
    two(storage::warmth);
    one(viability::is_metal);
}
