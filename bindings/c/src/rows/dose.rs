//! Doses of rows.

use super::pairs;
use crate::dose::active::{hilum_active_per_mass, hilum_active_per_seed};
use crate::dose::dry::{hilum_dry_per_area, hilum_dry_per_mass, hilum_dry_per_seed};
use crate::dose::liquid::{hilum_rate_per_area, hilum_rate_per_mass, hilum_rate_per_seed};
use crate::quantity::amount::{hilum_mass, hilum_seeds, hilum_share, hilum_volume};
use crate::quantity::content::hilum_active_content;
use crate::quantity::sown::{hilum_seed_size, hilum_sown};

/// The same dose on one seed: rate / size.
/// Of a row: as for hilum_rate_per_mass_to_per_seed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_mass_to_per_seed_rows(
    rates: *const hilum_rate_per_mass,
    sizes: *const hilum_seed_size,
    out: *mut hilum_rate_per_seed,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(rates, sizes, out, codes, n, |rates: hilum_rate_per_mass, sizes: hilum_seed_size| {
            Ok(rates.core()?.per_seed(sizes.core()?).into())
        })
    }
}

/// The same dose per mass of seed: dose x size.
/// Of a row: as for hilum_rate_per_seed_to_per_mass.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_seed_to_per_mass_rows(
    doses: *const hilum_rate_per_seed,
    sizes: *const hilum_seed_size,
    out: *mut hilum_rate_per_mass,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(doses, sizes, out, codes, n, |doses: hilum_rate_per_seed, sizes: hilum_seed_size| {
            Ok(doses.core()?.per_mass(sizes.core()?).into())
        })
    }
}

/// The same dose per area sown: dose x seeds sown per area.
/// Of a row: as for hilum_rate_per_seed_to_per_area.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_seed_to_per_area_rows(
    doses: *const hilum_rate_per_seed,
    sown: *const hilum_sown,
    out: *mut hilum_rate_per_area,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(doses, sown, out, codes, n, |doses: hilum_rate_per_seed, sown: hilum_sown| {
            Ok(doses.core()?.per_area(sown.core()?).into())
        })
    }
}

/// The same dose on one seed: dose / seeds sown per area.
/// Of a row: as for hilum_rate_per_area_to_per_seed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_area_to_per_seed_rows(
    doses: *const hilum_rate_per_area,
    sown: *const hilum_sown,
    out: *mut hilum_rate_per_seed,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(doses, sown, out, codes, n, |doses: hilum_rate_per_area, sown: hilum_sown| {
            Ok(doses.core()?.per_seed(sown.core()?).into())
        })
    }
}

/// What a mass of seed needs at a dose: rate x mass.
/// Of a row: as for hilum_rate_per_mass_needed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_mass_needed_rows(
    rates: *const hilum_rate_per_mass,
    seed: *const hilum_mass,
    out: *mut hilum_volume,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(rates, seed, out, codes, n, |rates: hilum_rate_per_mass, seed: hilum_mass| {
            Ok(rates.core()?.needed(seed.into())?.into())
        })
    }
}

/// What a number of seeds needs at a dose: dose x seeds.
/// Of a row: as for hilum_rate_per_seed_needed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_seed_needed_rows(
    doses: *const hilum_rate_per_seed,
    seeds: *const hilum_seeds,
    out: *mut hilum_volume,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(doses, seeds, out, codes, n, |doses: hilum_rate_per_seed, seeds: hilum_seeds| {
            Ok(doses.core()?.needed(seeds.into())?.into())
        })
    }
}

/// The same dry dose on one seed: rate / size.
/// Of a row: as for hilum_dry_per_mass_to_per_seed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_dry_per_mass_to_per_seed_rows(
    rates: *const hilum_dry_per_mass,
    sizes: *const hilum_seed_size,
    out: *mut hilum_dry_per_seed,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(rates, sizes, out, codes, n, |rates: hilum_dry_per_mass, sizes: hilum_seed_size| {
            Ok(rates.core()?.per_seed(sizes.core()?).into())
        })
    }
}

/// The same dry dose per mass of seed: dose x size.
/// Of a row: as for hilum_dry_per_seed_to_per_mass.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_dry_per_seed_to_per_mass_rows(
    doses: *const hilum_dry_per_seed,
    sizes: *const hilum_seed_size,
    out: *mut hilum_dry_per_mass,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(doses, sizes, out, codes, n, |doses: hilum_dry_per_seed, sizes: hilum_seed_size| {
            Ok(doses.core()?.per_mass(sizes.core()?).into())
        })
    }
}

/// The same dry dose per area sown: dose x seeds sown per area.
/// Of a row: as for hilum_dry_per_seed_to_per_area.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_dry_per_seed_to_per_area_rows(
    doses: *const hilum_dry_per_seed,
    sown: *const hilum_sown,
    out: *mut hilum_dry_per_area,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(doses, sown, out, codes, n, |doses: hilum_dry_per_seed, sown: hilum_sown| {
            Ok(doses.core()?.per_area(sown.core()?).into())
        })
    }
}

/// The same dry dose on one seed: dose / seeds sown per area.
/// Of a row: as for hilum_dry_per_area_to_per_seed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_dry_per_area_to_per_seed_rows(
    doses: *const hilum_dry_per_area,
    sown: *const hilum_sown,
    out: *mut hilum_dry_per_seed,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(doses, sown, out, codes, n, |doses: hilum_dry_per_area, sown: hilum_sown| {
            Ok(doses.core()?.per_seed(sown.core()?).into())
        })
    }
}

/// What a mass of seed needs at a dry dose: rate x mass.
/// Of a row: as for hilum_dry_per_mass_needed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_dry_per_mass_needed_rows(
    rates: *const hilum_dry_per_mass,
    seed: *const hilum_mass,
    out: *mut hilum_mass,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(rates, seed, out, codes, n, |rates: hilum_dry_per_mass, seed: hilum_mass| {
            Ok(rates.core()?.needed(seed.into())?.into())
        })
    }
}

/// What a number of seeds needs at a dry dose: dose x seeds.
/// Of a row: as for hilum_dry_per_seed_needed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_dry_per_seed_needed_rows(
    doses: *const hilum_dry_per_seed,
    seeds: *const hilum_seeds,
    out: *mut hilum_mass,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(doses, seeds, out, codes, n, |doses: hilum_dry_per_seed, seeds: hilum_seeds| {
            Ok(doses.core()?.needed(seeds.into())?.into())
        })
    }
}

/// Active ingredient in a dose of liquid: rate x content.
/// Of a row: as for hilum_rate_per_mass_active.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_mass_active_rows(
    rates: *const hilum_rate_per_mass,
    contents: *const hilum_active_content,
    out: *mut hilum_active_per_mass,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(rates, contents, out, codes, n, |rates: hilum_rate_per_mass, contents: hilum_active_content| {
            Ok(rates.core()?.active(contents.core()?).into())
        })
    }
}

/// Active ingredient in a dry dose: rate x share by mass.
/// Of a row: as for hilum_dry_per_mass_active.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_dry_per_mass_active_rows(
    rates: *const hilum_dry_per_mass,
    shares: *const hilum_share,
    out: *mut hilum_active_per_mass,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(rates, shares, out, codes, n, |rates: hilum_dry_per_mass, shares: hilum_share| {
            Ok(rates.core()?.active(shares.core()?)?.into())
        })
    }
}

/// The same active on one seed: rate / size.
/// Of a row: as for hilum_active_per_mass_to_per_seed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_active_per_mass_to_per_seed_rows(
    rates: *const hilum_active_per_mass,
    sizes: *const hilum_seed_size,
    out: *mut hilum_active_per_seed,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(rates, sizes, out, codes, n, |rates: hilum_active_per_mass, sizes: hilum_seed_size| {
            Ok(rates.core()?.per_seed(sizes.core()?).into())
        })
    }
}
