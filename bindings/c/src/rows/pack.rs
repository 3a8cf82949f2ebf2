//! Sets of rows.

use hilum::pack::{Coverage, SetsNeeded};
use hilum::rate::{Dry, Liquid};

use super::{pairs, singles};
use crate::dose::dry::hilum_dry_per_mass;
use crate::dose::liquid::hilum_rate_per_mass;
use crate::pack::{hilum_coverage, hilum_sets_needed};
use crate::quantity::amount::{hilum_mass, hilum_volume};

/// What the usable content of a set of liquid covers: content / rate.
/// Of a row: as for hilum_coverage_at.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_coverage_at_rows(
    usable: *const hilum_volume,
    rates: *const hilum_rate_per_mass,
    out: *mut hilum_coverage,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(usable, rates, out, codes, n, |usable: hilum_volume, rates: hilum_rate_per_mass| {
            Ok(Coverage::at::<Liquid>(usable.into(), rates.core()?)?.into())
        })
    }
}

/// What the usable content of a set of dry product covers: content / rate.
/// Of a row: as for hilum_coverage_at_dry.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_coverage_at_dry_rows(
    usable: *const hilum_mass,
    rates: *const hilum_dry_per_mass,
    out: *mut hilum_coverage,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(usable, rates, out, codes, n, |usable: hilum_mass, rates: hilum_dry_per_mass| {
            Ok(Coverage::at::<Dry>(usable.into(), rates.core()?)?.into())
        })
    }
}

/// What each order needs by itself, in sets: seed / what a set covers. Orders that share sets are summed first, by
/// hilum_sets_needed_sum.
/// Of a row: as for hilum_sets_needed_sum with one order.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_sets_needed_rows(
    seed: *const hilum_mass,
    sets: *const hilum_coverage,
    out: *mut hilum_sets_needed,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        pairs(seed, sets, out, codes, n, |seed: hilum_mass, sets: hilum_coverage| {
            Ok(hilum_sets_needed { sets: SetsNeeded::sum([(seed.into(), sets.core()?)])?.number() })
        })
    }
}

/// As whole sets: one ceiling, with a slack of 1e-9 of the number.
/// Of a row: as for hilum_sets_needed_whole.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_sets_needed_whole_rows(
    needed: *const hilum_sets_needed,
    out: *mut u64,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { singles(needed, out, codes, n, |needed: hilum_sets_needed| Ok(needed.core()?.whole()?)) }
}
