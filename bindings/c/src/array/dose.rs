//! Doses and seed of whole lists.

use core::mem::MaybeUninit;

use hilum::many;

use super::{Lists, each, each_pair};
use crate::dose::cells::hilum_cells_per_seed;
use crate::dose::dry::hilum_dry_per_mass;
use crate::dose::liquid::{hilum_rate_per_mass, hilum_rate_per_seed};
use crate::quantity::amount::{hilum_mass, hilum_seeds, hilum_share, hilum_volume};
use crate::quantity::content::hilum_titre_per_volume;
use crate::quantity::sown::hilum_seed_size;

/// What each of n masses of seed needs at one rate: rate x mass.
/// Errors: as for hilum_rate_per_mass_needed, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_mass_needed_n(
    rate: hilum_rate_per_mass,
    seed: *const hilum_mass,
    out: *mut hilum_volume,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    let rate = match rate.core() {
        Ok(rate) => rate,
        Err(status) => return status.number(),
    };
    // SAFETY: the conventions.
    unsafe { each(Lists { items: seed, out, n }, bad, |seed| many::needed(rate, seed)) }
}

/// What each of n masses of seed needs at one dry rate: rate x mass.
/// Errors: as for hilum_dry_per_mass_needed, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_dry_per_mass_needed_n(
    rate: hilum_dry_per_mass,
    seed: *const hilum_mass,
    out: *mut hilum_mass,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    let rate = match rate.core() {
        Ok(rate) => rate,
        Err(status) => return status.number(),
    };
    // SAFETY: the conventions.
    unsafe { each(Lists { items: seed, out, n }, bad, |seed| many::needed(rate, seed)) }
}

/// One rate on one seed of each of n sizes: rate / size.
/// Errors: as for hilum_rate_per_mass_to_per_seed, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_mass_to_per_seed_n(
    rate: hilum_rate_per_mass,
    sizes: *const hilum_seed_size,
    out: *mut hilum_rate_per_seed,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    let rate = match rate.core() {
        Ok(rate) => rate,
        Err(status) => return status.number(),
    };
    // SAFETY: the conventions.
    unsafe { each(Lists { items: sizes, out, n }, bad, |sizes| many::per_seed(rate, sizes)) }
}

/// One dose per seed as a rate per mass of each of n sizes: dose x size.
/// Errors: as for hilum_rate_per_seed_to_per_mass, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_seed_to_per_mass_n(
    dose: hilum_rate_per_seed,
    sizes: *const hilum_seed_size,
    out: *mut hilum_rate_per_mass,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    let dose = match dose.core() {
        Ok(dose) => dose,
        Err(status) => return status.number(),
    };
    // SAFETY: the conventions.
    unsafe { each(Lists { items: sizes, out, n }, bad, |sizes| many::per_mass(dose, sizes)) }
}

/// What each of n numbers of seeds needs at one dose: dose x seeds.
/// Errors: as for hilum_rate_per_seed_needed, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_rate_per_seed_needed_n(
    dose: hilum_rate_per_seed,
    seeds: *const hilum_seeds,
    out: *mut hilum_volume,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    let dose = match dose.core() {
        Ok(dose) => dose,
        Err(status) => return status.number(),
    };
    // SAFETY: the conventions.
    unsafe { each(Lists { items: seeds, out, n }, bad, |seeds| many::needed_by_seeds(dose, seeds)) }
}

/// How many seeds there are in each of n masses, each of its own size: mass x size.
/// Errors: as for hilum_seed_size_count_in, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_seed_size_count_in_n(
    sizes: *const hilum_seed_size,
    seed: *const hilum_mass,
    out: *mut hilum_seeds,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { each_pair(Lists { items: sizes, out, n }, seed, bad, many::count_in) }
}

/// What each of n numbers of seeds weighs, each of its own size: seeds / size.
/// Errors: as for hilum_seed_size_mass_of, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_seed_size_mass_of_n(
    sizes: *const hilum_seed_size,
    seeds: *const hilum_seeds,
    out: *mut hilum_mass,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { each_pair(Lists { items: sizes, out, n }, seeds, bad, many::mass_of) }
}

/// Cells on each seed at each of n doses: titre x dose x recovery.
/// Errors: as for hilum_titre_per_volume_cells, with the first bad element in bad; none is written then.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_titre_per_volume_cells_n(
    titre: hilum_titre_per_volume,
    recovery: hilum_share,
    doses: *const hilum_rate_per_seed,
    out: *mut hilum_cells_per_seed,
    n: usize,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    let (titre, recovery) = match (titre.core(), recovery.core()) {
        (Ok(titre), Ok(recovery)) => (titre, recovery),
        (Err(status), _) | (_, Err(status)) => return status.number(),
    };
    // SAFETY: the conventions.
    unsafe { each(Lists { items: doses, out, n }, bad, |doses| many::cells(titre, recovery, doses)) }
}
