//! How large is a seed, and how many are sown?

use core::ffi::c_char;
use core::mem::MaybeUninit;

use crate::quantity::{checked, number_quotient, of_quotient, plain, read};

/// How small the seed is: seeds per mass.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_seed_size {
    /// Seeds per kilogram.
    pub seeds_per_kg: f64,
}
checked!(hilum_seed_size.seeds_per_kg: hilum::seed::SeedSize, SeedsPerMass);

/// A seed size: value x unit / (per x per_unit). 2800 seeds/lb: (2800, HILUM_SEEDS, 1, HILUM_LB, &size).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_size_from(
    value: f64,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<hilum_seed_size>>,
) -> i32 {
    of_quotient(out, value, unit, per, per_unit)
}

/// How many of a unit over per x per_unit it is. Errors: as for hilum_seed_size_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_size_in(
    size: hilum_seed_size,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    number_quotient(out, size, unit, per, per_unit)
}

/// As text of length bytes: "2800 seeds/lb". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_seed_size_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_seed_size>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}

/// Seeds sown per area.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_sown {
    /// Seeds per square metre.
    pub seeds_per_m2: f64,
}
checked!(hilum_sown.seeds_per_m2: hilum::seed::Sown, SeedsPerArea);

/// A sowing rate: value x unit / (per x per_unit). 140000 seeds/ac: (140000, HILUM_SEEDS, 1, HILUM_AC, &sown).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_sown_from(
    value: f64,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<hilum_sown>>,
) -> i32 {
    of_quotient(out, value, unit, per, per_unit)
}

/// How many of a unit over per x per_unit it is. Errors: as for hilum_sown_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_sown_in(
    sown: hilum_sown,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    number_quotient(out, sown, unit, per, per_unit)
}

/// As text of length bytes: "140000 seeds/ac". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_sown_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_sown>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}

/// What one seed weighs.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_mass_per_seed {
    /// Kilograms per seed.
    pub kg_per_seed: f64,
}
plain!(hilum_mass_per_seed.kg_per_seed: MassPerSeed);

/// A mass per seed: value x unit / (per x per_unit). 160 mg: (160, HILUM_MG, 1, HILUM_SEEDS, &mass).
///
/// Errors: a number that is not finite, per not more than 0; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_mass_per_seed_from(
    value: f64,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<hilum_mass_per_seed>>,
) -> i32 {
    of_quotient(out, value, unit, per, per_unit)
}

/// How many of a unit over per x per_unit it is. Errors: as for hilum_mass_per_seed_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_mass_per_seed_in(
    mass: hilum_mass_per_seed,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    number_quotient(out, mass, unit, per, per_unit)
}

/// As text of length bytes. Errors: the texts' (200 and up).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_mass_per_seed_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_mass_per_seed>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}

/// A sowing rate by mass, or what a season may take of an active.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_mass_per_area {
    /// Kilograms per square metre; 1 kg/ha is 0.0001.
    pub kg_per_m2: f64,
}
plain!(hilum_mass_per_area.kg_per_m2: MassPerArea);

/// A mass per area: value x unit / (per x per_unit). 60 lb/ac: (60, HILUM_LB, 1, HILUM_AC, &rate).
///
/// Errors: a number that is not finite, per not more than 0; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_mass_per_area_from(
    value: f64,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<hilum_mass_per_area>>,
) -> i32 {
    of_quotient(out, value, unit, per, per_unit)
}

/// How many of a unit over per x per_unit it is. Errors: as for hilum_mass_per_area_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_mass_per_area_in(
    rate: hilum_mass_per_area,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    number_quotient(out, rate, unit, per, per_unit)
}

/// As text of length bytes. Errors: the texts' (200 and up).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_mass_per_area_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_mass_per_area>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}
