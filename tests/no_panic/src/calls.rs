//! Every public function of the core, kept in the image.
//!
//! A pointer to a function keeps all of it, for whatever arguments; a call would let the compiler drop
//! what the values of that call do not reach. One function here for each module of the core, one line
//! for each function of it, written `Type::function` or `module::function`: `cargo xtask no-panic`
//! compares these lines with the public functions and names what is missing. The doses are of one
//! type whatever the substance, so one substance is enough where the code is the same.
//!
//! Left out, because core's own reading and writing of a number holds bounds checks: `Display` of the
//! errors, `text::read`, `text::read_temperature`, `Compound::read`, `Written::read`.

use core::hint::black_box;

use hilum::quantity::Temperature;
use hilum::rate::{CellCount, Content, Density, Dry, Liquid, PerArea, PerMass, PerSeed};
use hilum::seed::{Bushel, SeedSize, SeedUnit, Share, Sown, UnitOfMass, UnitOfSeeds};
use hilum::text::{Compound, Written};
use hilum::unit::{Powers, Unit};
use hilum::viability::{
    DecimalReduction, Fit, Life, Period, Reference, Sample, Survival, Titre, TitrePerMass, TitrePerVolume,
    TwoPhase, WeibullScale, WeibullShape, storage,
};
use hilum::{math, rate, seed, text, unit, viability};

pub(crate) fn all() {
    quantities();
    units();
    texts();
    seeds();
    rates();
    livings();
    mathematics();
    #[cfg(feature = "panics")]
    one(a_panic);
}

fn one<A, R>(function: fn(A) -> R) {
    black_box(function);
}

fn two<A, B, R>(function: fn(A, B) -> R) {
    black_box(function);
}

fn three<A, B, C, R>(function: fn(A, B, C) -> R) {
    black_box(function);
}

fn four<A, B, C, D, R>(function: fn(A, B, C, D) -> R) {
    black_box(function);
}

fn quantities() {
    one(Temperature::checked);
    one(Temperature::from_celsius);
    one(Temperature::from_fahrenheit);
    one(Temperature::celsius);
    one(Temperature::fahrenheit);
    two(<Temperature as core::ops::Sub>::sub);
    two(<Temperature as core::ops::Add<_>>::add);
}

fn units() {
    one(|()| unit::all().map(|unit| unit.factor).sum::<f64>());
    one(unit::by_number);
    one(Powers::name);
    two(Powers::over);
}

fn texts() {
    three(Compound::count_in);
    two(Written::measured);
    two(|word, units: core::slice::Iter<'static, Unit>| text::closest(word, units.map(|unit| unit.symbol)));
}

fn seeds() {
    one(SeedSize::new);
    one(SeedSize::get);
    one(SeedSize::of_thousand);
    one(SeedSize::thousand);
    one(SeedSize::seed_mass);
    two(SeedSize::count_in);
    two(SeedSize::mass_of);
    two(SeedSize::within);
    one(Share::new);
    one(Share::number);
    one(UnitOfSeeds::new);
    one(UnitOfMass::new);
    two(SeedUnit::mass);
    three(SeedUnit::units_in);
    one(Bushel::new);
    two(Bushel::bushels_in);
    two(seed::pure_live_seed);
    one(Sown::new);
    three(Sown::for_stand);
    two(Sown::by_mass);
    two(Sown::mass_per_area);
    two(Sown::area);
    two(Sown::seeds_for);
}

fn rates() {
    one(PerMass::<Liquid>::new);
    one(PerMass::<Liquid>::get);
    two(PerMass::<Liquid>::per_seed);
    two(PerMass::<Liquid>::implied_size);
    two(PerMass::<Liquid>::difference);
    two(PerMass::<Liquid>::from_bushel);
    two(PerMass::<Liquid>::per_bushel);
    two(PerMass::<Liquid>::needed);
    two(PerMass::<CellCount>::needed);
    two(PerMass::<Liquid>::treats);
    two(PerMass::<Liquid>::active);
    two(PerMass::<Liquid>::weighed);
    two(PerMass::<Dry>::active);
    two(PerMass::<Dry>::measured);
    two(PerMass::<rate::Active>::in_liquid);
    two(PerMass::<rate::Active>::in_dry);
    one(PerSeed::<Liquid>::new);
    one(PerSeed::<Liquid>::get);
    two(PerSeed::<Liquid>::per_mass);
    two(PerSeed::<Liquid>::per_area);
    two(PerSeed::<Liquid>::from_unit);
    two(PerSeed::<Liquid>::per_unit);
    two(PerSeed::<Liquid>::needed);
    one(PerArea::<Liquid>::new);
    one(PerArea::<Liquid>::get);
    two(PerArea::<Liquid>::per_seed);
    one(Density::new);
    two(Content::per_volume);
    two(Content::by_mass);
}

fn livings() {
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
}

fn mathematics() {
    one(math::to_i32);
    one(math::exp10);
    one(math::log10);
    two(math::pow);
    one(math::sqrt);
    one(math::floor);
    one(math::ceil);
}

#[cfg(feature = "panics")]
fn a_panic(at: usize) -> u8 {
    #[expect(clippy::indexing_slicing, reason = "the panic that must be seen")]
    [1, 2, 3][at]
}
