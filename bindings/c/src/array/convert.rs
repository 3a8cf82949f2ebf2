//! Conversions of whole lists.

use core::mem::MaybeUninit;

use super::{Lists, each_in, each_of};
use crate::dose::liquid::{hilum_rate_per_mass, hilum_rate_per_seed};
use crate::quantity::amount::{hilum_area, hilum_mass, hilum_volume};
use crate::quantity::compound;
use crate::quantity::sown::{hilum_seed_size, hilum_sown};

/// n numbers of a unit, as hilum_mass_from does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_mass_from_n(
    values: *const f64,
    unit: i32,
    out: *mut hilum_mass,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { each_of(Lists { items: values, out, n }, compound(unit, None), bad) }
}

/// How many of a unit each of n is, as hilum_mass_in does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_mass_in_n(
    masses: *const hilum_mass,
    unit: i32,
    out: *mut f64,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { each_in(Lists { items: masses, out, n }, compound(unit, None), bad) }
}

/// n numbers of a unit, as hilum_volume_from does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_volume_from_n(
    values: *const f64,
    unit: i32,
    out: *mut hilum_volume,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { each_of(Lists { items: values, out, n }, compound(unit, None), bad) }
}

/// How many of a unit each of n is, as hilum_volume_in does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_volume_in_n(
    volumes: *const hilum_volume,
    unit: i32,
    out: *mut f64,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { each_in(Lists { items: volumes, out, n }, compound(unit, None), bad) }
}

/// n numbers of a unit, as hilum_area_from does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_area_from_n(
    values: *const f64,
    unit: i32,
    out: *mut hilum_area,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { each_of(Lists { items: values, out, n }, compound(unit, None), bad) }
}

/// How many of a unit each of n is, as hilum_area_in does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_area_in_n(
    areas: *const hilum_area,
    unit: i32,
    out: *mut f64,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { each_in(Lists { items: areas, out, n }, compound(unit, None), bad) }
}

/// n numbers of a unit over per x per_unit, as hilum_seed_size_from does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_seed_size_from_n(
    values: *const f64,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: *mut hilum_seed_size,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { each_of(Lists { items: values, out, n }, compound(unit, Some((per, per_unit))), bad) }
}

/// How many of a unit over per x per_unit each of n is, as hilum_seed_size_in does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_seed_size_in_n(
    sizes: *const hilum_seed_size,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: *mut f64,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { each_in(Lists { items: sizes, out, n }, compound(unit, Some((per, per_unit))), bad) }
}

/// n numbers of a unit over per x per_unit, as hilum_sown_from does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_sown_from_n(
    values: *const f64,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: *mut hilum_sown,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { each_of(Lists { items: values, out, n }, compound(unit, Some((per, per_unit))), bad) }
}

/// How many of a unit over per x per_unit each of n is, as hilum_sown_in does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_sown_in_n(
    sowings: *const hilum_sown,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: *mut f64,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { each_in(Lists { items: sowings, out, n }, compound(unit, Some((per, per_unit))), bad) }
}

/// n numbers of a unit over per x per_unit, as hilum_rate_per_mass_from does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_mass_from_n(
    values: *const f64,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: *mut hilum_rate_per_mass,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { each_of(Lists { items: values, out, n }, compound(unit, Some((per, per_unit))), bad) }
}

/// How many of a unit over per x per_unit each of n is, as hilum_rate_per_mass_in does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_mass_in_n(
    rates: *const hilum_rate_per_mass,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: *mut f64,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { each_in(Lists { items: rates, out, n }, compound(unit, Some((per, per_unit))), bad) }
}

/// n numbers of a unit over per x per_unit, as hilum_rate_per_seed_from does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_seed_from_n(
    values: *const f64,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: *mut hilum_rate_per_seed,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { each_of(Lists { items: values, out, n }, compound(unit, Some((per, per_unit))), bad) }
}

/// How many of a unit over per x per_unit each of n is, as hilum_rate_per_seed_in does for one.
/// Errors: as there, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_seed_in_n(
    doses: *const hilum_rate_per_seed,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: *mut f64,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { each_in(Lists { items: doses, out, n }, compound(unit, Some((per, per_unit))), bad) }
}
