//! Seed of rows.

use hilum::seed::Sown;

use super::pairs;
use crate::quantity::amount::{hilum_area, hilum_mass, hilum_seeds};
use crate::quantity::sown::{hilum_mass_per_area, hilum_seed_size, hilum_sown};

/// How many seeds there are in a mass: mass x size.
/// Of a row: as for hilum_seed_size_count_in.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_seed_size_count_in_rows(
    sizes: *const hilum_seed_size,
    seed: *const hilum_mass,
    out: *mut hilum_seeds,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(sizes, seed, out, codes, n, |sizes: hilum_seed_size, seed: hilum_mass| {
            Ok(sizes.core()?.count_in(seed.into())?.into())
        })
    }
}

/// What a number of seeds weighs: seeds / size.
/// Of a row: as for hilum_seed_size_mass_of.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_seed_size_mass_of_rows(
    sizes: *const hilum_seed_size,
    seeds: *const hilum_seeds,
    out: *mut hilum_mass,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(sizes, seeds, out, codes, n, |sizes: hilum_seed_size, seeds: hilum_seeds| {
            Ok(sizes.core()?.mass_of(seeds.into())?.into())
        })
    }
}

/// Seeds sown per area where seed is sown by mass: rate x size.
/// Of a row: as for hilum_sown_by_mass.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_sown_by_mass_rows(
    rates: *const hilum_mass_per_area,
    sizes: *const hilum_seed_size,
    out: *mut hilum_sown,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(rates, sizes, out, codes, n, |rates: hilum_mass_per_area, sizes: hilum_seed_size| {
            Ok(Sown::by_mass(rates.into(), sizes.core()?)?.into())
        })
    }
}

/// The area that a number of seeds sows: seeds / sown.
/// Of a row: as for hilum_sown_area.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_sown_area_rows(
    sown: *const hilum_sown,
    seeds: *const hilum_seeds,
    out: *mut hilum_area,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(sown, seeds, out, codes, n, |sown: hilum_sown, seeds: hilum_seeds| {
            Ok(sown.core()?.area(seeds.into())?.into())
        })
    }
}
