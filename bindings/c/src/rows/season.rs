//! Season limits of rows.

use hilum::limit::SeasonLimit;
use hilum::quantity::Measure as _;
use hilum::rate::ActivePerSeed;
use hilum::seed::Sown;

use super::{Room, looked_at, triples};
use crate::call::{Answer, list};
use crate::dose::active::{hilum_active_per_area, hilum_active_per_seed};
use crate::quantity::sown::{hilum_mass_per_area, hilum_sown};

/// # Safety
/// As for [`list`] and [`Room::new`].
unsafe fn seasons<T>(
    (limits, used): (*const hilum_mass_per_area, *const hilum_mass_per_area),
    on_seed: *const hilum_active_per_seed,
    sown: *const hilum_sown,
    (out, codes, n): (*mut T, *mut i32, usize),
    calculate: impl Fn(SeasonLimit, ActivePerSeed, Sown) -> T,
) -> i32 {
    looked_at((|| {
        // SAFETY: by the caller.
        let (limits, used, on_seed, sown) =
            unsafe { (list(limits, n)?, list(used, n)?, list(on_seed, n)?, list(sown, n)?) };
        // SAFETY: as above.
        let room = unsafe { Room::new(out, codes, n)? };
        let rows = limits.iter().zip(used).zip(on_seed.iter().zip(sown));
        room.fill(rows.map(|((limit, used), (on_seed, sown))| -> Answer<T> {
            let season = SeasonLimit::new((*limit).into(), (*used).into())?;
            Ok(calculate(season, on_seed.core()?, sown.core()?))
        }));
        Ok(())
    })())
}

/// What the season comes to with this seed: active per seed x seeds sown per area + used.
/// Of a row: as for hilum_season_limit_total.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_season_limit_total_rows(
    limits: *const hilum_mass_per_area,
    used: *const hilum_mass_per_area,
    on_seed: *const hilum_active_per_seed,
    sown: *const hilum_sown,
    out: *mut hilum_active_per_area,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        seasons((limits, used), on_seed, sown, (out, codes, n), |season, on_seed, sown| {
            season.total(on_seed, sown).into()
        })
    }
}

/// The share of the limit that this is: total / limit. 1 is all of it; more is not allowed.
/// Of a row: as for hilum_season_limit_total.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_season_limit_share_rows(
    limits: *const hilum_mass_per_area,
    used: *const hilum_mass_per_area,
    on_seed: *const hilum_active_per_seed,
    sown: *const hilum_sown,
    out: *mut f64,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        seasons((limits, used), on_seed, sown, (out, codes, n), |season, on_seed, sown| {
            season.share(on_seed, sown)
        })
    }
}

/// Whether this is more than the limit, by more than 1e-9 of it; false in a row that is refused.
/// Of a row: as for hilum_season_limit_total.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_season_limit_exceeded_rows(
    limits: *const hilum_mass_per_area,
    used: *const hilum_mass_per_area,
    on_seed: *const hilum_active_per_seed,
    sown: *const hilum_sown,
    out: *mut bool,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        seasons((limits, used), on_seed, sown, (out, codes, n), |season, on_seed, sown| {
            season.exceeded(on_seed, sown)
        })
    }
}

/// The sowing rate at which the limit is met: (limit - used) / active per seed; 0 when nothing is left.
/// Of a row: as for hilum_season_limit_max_sowing.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_season_limit_max_sowing_rows(
    limits: *const hilum_mass_per_area,
    used: *const hilum_mass_per_area,
    on_seed: *const hilum_active_per_seed,
    out: *mut hilum_sown,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        triples(
            (limits, used, on_seed),
            out,
            codes,
            n,
            |limits: hilum_mass_per_area, used: hilum_mass_per_area, on_seed: hilum_active_per_seed| {
                let season = SeasonLimit::new(limits.into(), used.into())?;
                Ok(hilum_sown { seeds_per_m2: season.max_sowing(on_seed.core()?).to_base() })
            },
        )
    }
}
