//! Is it allowed?

use core::mem::MaybeUninit;

use hilum::limit::{SeasonLimit, total_on_seed};

use crate::call::{self, Answer, give, need};
use crate::dose::active::{hilum_active_per_area, hilum_active_per_seed};
use crate::quantity::sown::{hilum_mass_per_area, hilum_sown};

/// What a label allows of an active per area and season, and what the season has used of it.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_season_limit {
    /// What the label allows per season.
    pub limit: hilum_mass_per_area,
    /// What earlier treatments or sprays of this season used of it; 0 when none.
    pub used: hilum_mass_per_area,
}

impl hilum_season_limit {
    fn core(self) -> Answer<SeasonLimit> {
        Ok(SeasonLimit::new(self.limit.into(), self.used.into())?)
    }
}

/// An active on the seed, over all products and what was on it before: the sum of n doses.
/// Errors: NULL; HILUM_NEEDED when n is 0; a dose that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_active_total_on_seed(
    doses: *const hilum_active_per_seed,
    n: usize,
    out: Option<&mut MaybeUninit<hilum_active_per_seed>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let doses = unsafe { call::list(doses, n) }?;
        for dose in doses {
            dose.core()?;
        }
        Ok(total_on_seed(doses.iter().filter_map(|dose| dose.core().ok()))?.into())
    })
}

/// What the season comes to with this seed: active per seed x seeds sown per area + used.
/// Errors: NULL; a number that is not finite, not more than 0 (used: negative).
#[unsafe(no_mangle)]
pub extern "C" fn hilum_season_limit_total(
    season: Option<&hilum_season_limit>,
    on_seed: hilum_active_per_seed,
    sown: hilum_sown,
    out: Option<&mut MaybeUninit<hilum_active_per_area>>,
) -> i32 {
    give(out, || Ok(need(season)?.core()?.total(on_seed.core()?, sown.core()?).into()))
}

/// The share of the limit that this is: total / limit. 1 is all of it; more is not allowed.
/// Errors: as for hilum_season_limit_total.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_season_limit_share(
    season: Option<&hilum_season_limit>,
    on_seed: hilum_active_per_seed,
    sown: hilum_sown,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    give(out, || Ok(need(season)?.core()?.share(on_seed.core()?, sown.core()?)))
}

/// Whether this is more than the limit, by more than 1e-9 of it. Errors: as for hilum_season_limit_total.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_season_limit_exceeded(
    season: Option<&hilum_season_limit>,
    on_seed: hilum_active_per_seed,
    sown: hilum_sown,
    out: Option<&mut MaybeUninit<bool>>,
) -> i32 {
    give(out, || Ok(need(season)?.core()?.exceeded(on_seed.core()?, sown.core()?)))
}

/// The sowing rate at which the limit is met: (limit - used) / active per seed; 0 when nothing is left.
/// Errors: as for hilum_season_limit_total.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_season_limit_max_sowing(
    season: Option<&hilum_season_limit>,
    on_seed: hilum_active_per_seed,
    out: Option<&mut MaybeUninit<hilum_sown>>,
) -> i32 {
    give(out, || {
        let seeds = need(season)?.core()?.max_sowing(on_seed.core()?);
        Ok(hilum_sown { seeds_per_m2: hilum::quantity::Measure::to_base(seeds) })
    })
}
