//! Liquid product on seed, in every basis.

use core::ffi::c_char;
use core::mem::MaybeUninit;

use hilum::rate::{Liquid, PerMass, PerSeed};
use hilum::seed::UnitOfSeeds;

use super::agreement;
use crate::argument::{ProductAmount, RatePerBushel, RatePerUnit, SeedMass, Seeds};
use crate::number::{of_two, positive};
use crate::quantity::amount::{hilum_mass, hilum_seeds, hilum_volume};
use crate::quantity::sown::{hilum_seed_size, hilum_sown};
use crate::quantity::{checked, number_quotient, of_quotient, read};
use crate::seed::hilum_bushel;

/// Liquid product per mass of seed.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_rate_per_mass {
    /// Cubic metres per kilogram of seed; 1 mL/kg is 1e-6.
    pub m3_per_kg: f64,
}
checked!(hilum_rate_per_mass.m3_per_kg: hilum::rate::PerMass<hilum::rate::Liquid>, VolumePerMass);

/// A dose per mass of seed: value x unit / (per x per_unit). 325 mL per 100 kg: (325, HILUM_ML, 100, HILUM_KG, &rate).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_mass_from(
    value: f64,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<hilum_rate_per_mass>>,
) -> i32 {
    of_quotient(out, value, unit, per, per_unit)
}

/// How many of a unit over per x per_unit it is. Errors: as for hilum_rate_per_mass_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_mass_in(
    rate: hilum_rate_per_mass,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    number_quotient(out, rate, unit, per, per_unit)
}

/// As text of length bytes: "2.5 fl oz/cwt". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_mass_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_rate_per_mass>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}

/// The same dose on one seed: rate / size. Errors: a rate or size that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_mass_to_per_seed(
    rate: hilum_rate_per_mass,
    size: hilum_seed_size,
    out: Option<&mut MaybeUninit<hilum_rate_per_seed>>,
) -> i32 {
    of_two(out, rate, size, |rate, size| Ok(rate.per_seed(size)))
}

/// The seed size at which this dose and a dose per seed are the same: rate / dose. A label that states both
/// was written for seed of that size. Errors: a dose that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_mass_implied_size(
    rate: hilum_rate_per_mass,
    same: hilum_rate_per_seed,
    out: Option<&mut MaybeUninit<hilum_seed_size>>,
) -> i32 {
    of_two(out, rate, same, |rate, same| Ok(rate.implied_size(same)))
}

/// By how much a statement of a dose differs from the one that governs: stated / governing - 1.
/// Errors: a rate that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_mass_difference(
    stated: hilum_rate_per_mass,
    governing: hilum_rate_per_mass,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    of_two(out, stated, governing, |stated, governing| Ok(stated.difference(governing)))
}

/// Whether a statement of a dose agrees with the one that governs, at the size of the seed at hand:
/// HILUM_CLOSE (up to 2 %), HILUM_APART, or HILUM_FAR_APART (more than 10 %).
/// Errors: a rate that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_mass_agreement(
    stated: hilum_rate_per_mass,
    governing: hilum_rate_per_mass,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    of_two(out, stated, governing, |stated, governing| Ok(agreement(stated.agreement(governing))))
}

/// From a label that states a volume per bushel: amount / bushel.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_mass_from_bushel(
    amount: hilum_volume,
    bushel: hilum_bushel,
    out: Option<&mut MaybeUninit<hilum_rate_per_mass>>,
) -> i32 {
    of_two(out, positive::<RatePerBushel, _>(amount), bushel, |amount, bushel| {
        PerMass::<Liquid>::from_bushel(amount, bushel)
    })
}

/// The same dose per bushel: rate x bushel. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_mass_to_bushel(
    rate: hilum_rate_per_mass,
    bushel: hilum_bushel,
    out: Option<&mut MaybeUninit<hilum_volume>>,
) -> i32 {
    of_two(out, rate, bushel, |rate, bushel| Ok(rate.per_bushel(bushel)))
}

/// What a mass of seed needs: rate x mass. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_mass_needed(
    rate: hilum_rate_per_mass,
    seed: hilum_mass,
    out: Option<&mut MaybeUninit<hilum_volume>>,
) -> i32 {
    of_two(out, rate, positive::<SeedMass, _>(seed), |rate, seed| rate.needed(seed))
}

/// The seed that a volume treats: amount / rate. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_mass_treats(
    rate: hilum_rate_per_mass,
    amount: hilum_volume,
    out: Option<&mut MaybeUninit<hilum_mass>>,
) -> i32 {
    of_two(out, rate, positive::<ProductAmount, _>(amount), |rate, amount| rate.treats(amount))
}

/// Whether this is above a maximum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_mass_exceeds(
    rate: hilum_rate_per_mass,
    most: hilum_rate_per_mass,
    out: Option<&mut MaybeUninit<bool>>,
) -> i32 {
    of_two(out, rate, most, |rate, most| Ok(rate.exceeds(most)))
}

/// Whether this is below a minimum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_mass_falls_below(
    rate: hilum_rate_per_mass,
    least: hilum_rate_per_mass,
    out: Option<&mut MaybeUninit<bool>>,
) -> i32 {
    of_two(out, rate, least, |rate, least| Ok(rate.falls_below(least)))
}

/// Liquid product per seed.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_rate_per_seed {
    /// Cubic metres per seed; 1 uL is 1e-9.
    pub m3_per_seed: f64,
}
checked!(hilum_rate_per_seed.m3_per_seed: hilum::rate::PerSeed<hilum::rate::Liquid>, VolumePerSeed);

/// A dose per seed: value x unit / (per x per_unit). 0.6 uL/seed: (0.6, HILUM_UL, 1, HILUM_SEEDS, &dose).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_seed_from(
    value: f64,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<hilum_rate_per_seed>>,
) -> i32 {
    of_quotient(out, value, unit, per, per_unit)
}

/// How many of a unit over per x per_unit it is. Errors: as for hilum_rate_per_seed_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_seed_in(
    dose: hilum_rate_per_seed,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    number_quotient(out, dose, unit, per, per_unit)
}

/// As text of length bytes: "0.6 uL/seed". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_seed_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_rate_per_seed>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}

/// The same dose per mass of seed: dose x size. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_seed_to_per_mass(
    dose: hilum_rate_per_seed,
    size: hilum_seed_size,
    out: Option<&mut MaybeUninit<hilum_rate_per_mass>>,
) -> i32 {
    of_two(out, dose, size, |dose, size| Ok(dose.per_mass(size)))
}

/// The same dose per area sown: dose x sown. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_seed_to_per_area(
    dose: hilum_rate_per_seed,
    sown: hilum_sown,
    out: Option<&mut MaybeUninit<hilum_rate_per_area>>,
) -> i32 {
    of_two(out, dose, sown, |dose, sown| Ok(dose.per_area(sown)))
}

/// From a label that states a volume per unit of seeds: amount / unit.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_seed_from_unit(
    amount: hilum_volume,
    unit: hilum_seeds,
    out: Option<&mut MaybeUninit<hilum_rate_per_seed>>,
) -> i32 {
    of_two(out, positive::<RatePerUnit, _>(amount), unit, |amount, unit| {
        PerSeed::<Liquid>::from_unit(amount, UnitOfSeeds::new(unit)?)
    })
}

/// The same dose per unit of seeds: dose x unit. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_seed_to_unit(
    dose: hilum_rate_per_seed,
    unit: hilum_seeds,
    out: Option<&mut MaybeUninit<hilum_volume>>,
) -> i32 {
    of_two(out, dose, unit, |dose, unit| Ok(dose.per_unit(UnitOfSeeds::new(unit)?)))
}

/// What a number of seeds needs: dose x seeds. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_seed_needed(
    dose: hilum_rate_per_seed,
    seeds: hilum_seeds,
    out: Option<&mut MaybeUninit<hilum_volume>>,
) -> i32 {
    of_two(out, dose, positive::<Seeds, _>(seeds), |dose, seeds| dose.needed(seeds))
}

/// Whether this is above a maximum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_seed_exceeds(
    dose: hilum_rate_per_seed,
    most: hilum_rate_per_seed,
    out: Option<&mut MaybeUninit<bool>>,
) -> i32 {
    of_two(out, dose, most, |dose, most| Ok(dose.exceeds(most)))
}

/// Whether this is below a minimum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_seed_falls_below(
    dose: hilum_rate_per_seed,
    least: hilum_rate_per_seed,
    out: Option<&mut MaybeUninit<bool>>,
) -> i32 {
    of_two(out, dose, least, |dose, least| Ok(dose.falls_below(least)))
}

/// Liquid product per area sown.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_rate_per_area {
    /// Cubic metres per square metre; 1 L/ha is 1e-7.
    pub m3_per_m2: f64,
}
checked!(hilum_rate_per_area.m3_per_m2: hilum::rate::PerArea<hilum::rate::Liquid>, VolumePerArea);

/// A dose per area: value x unit / (per x per_unit). 250 mL/ha: (250, HILUM_ML, 1, HILUM_HA, &dose).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_area_from(
    value: f64,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<hilum_rate_per_area>>,
) -> i32 {
    of_quotient(out, value, unit, per, per_unit)
}

/// How many of a unit over per x per_unit it is. Errors: as for hilum_rate_per_area_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_area_in(
    dose: hilum_rate_per_area,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    number_quotient(out, dose, unit, per, per_unit)
}

/// As text of length bytes: "400 mL/ha". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_area_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_rate_per_area>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}

/// The same dose on one seed: dose / sown. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_area_to_per_seed(
    dose: hilum_rate_per_area,
    sown: hilum_sown,
    out: Option<&mut MaybeUninit<hilum_rate_per_seed>>,
) -> i32 {
    of_two(out, dose, sown, |dose, sown| Ok(dose.per_seed(sown)))
}

/// Whether this is above a maximum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_area_exceeds(
    dose: hilum_rate_per_area,
    most: hilum_rate_per_area,
    out: Option<&mut MaybeUninit<bool>>,
) -> i32 {
    of_two(out, dose, most, |dose, most| Ok(dose.exceeds(most)))
}

/// Whether this is below a minimum, by more than 1e-9 of it.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_area_falls_below(
    dose: hilum_rate_per_area,
    least: hilum_rate_per_area,
    out: Option<&mut MaybeUninit<bool>>,
) -> i32 {
    of_two(out, dose, least, |dose, least| Ok(dose.falls_below(least)))
}
