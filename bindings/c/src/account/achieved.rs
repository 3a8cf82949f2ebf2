//! What rate was achieved, and was it right?

use core::mem::MaybeUninit;

use hilum::account::{Achieved, Verdict};
use hilum::quantity::Measure;
use hilum::rate::{Dry, Liquid};

use super::used::{hilum_used_mass, hilum_used_volume};
use crate::call::{Answer, give, need};
use crate::dose::dry::hilum_dry_per_mass;
use crate::dose::liquid::hilum_rate_per_mass;
use crate::number::{of_made_one, of_made_two};
use crate::opaque;
use crate::quantity::amount::hilum_share;

/// What is reported is expanded by this factor: about 95 % coverage.
pub const HILUM_COVERAGE_FACTOR: f64 = 2.0;

/// Less than the tolerance allows, whatever the readings' resolution hides.
pub const HILUM_LOW: i32 = 1;
/// Within the tolerance, whatever the readings' resolution hides.
pub const HILUM_ON_TARGET: i32 = 2;
/// More than the tolerance allows, whatever the readings' resolution hides.
pub const HILUM_HIGH: i32 = 3;
/// The border of the tolerance lies within what the resolution hides.
pub const HILUM_CANNOT_TELL: i32 = 4;

pub(crate) const fn verdict(verdict: Verdict) -> i32 {
    match verdict {
        Verdict::Low => HILUM_LOW,
        Verdict::OnTarget => HILUM_ON_TARGET,
        Verdict::High => HILUM_HIGH,
        Verdict::CannotTell => HILUM_CANNOT_TELL,
    }
}

/// A rate of liquid that was achieved, and how sure the readings make it. Made by hilum_achieved_on.
#[repr(C)]
#[derive(Clone, Copy)]
pub struct hilum_achieved {
    pub(crate) opaque: [MaybeUninit<u64>; 3],
}

/// A rate of dry product that was achieved. Made by hilum_achieved_dry_on.
#[repr(C)]
#[derive(Clone, Copy)]
pub struct hilum_achieved_dry {
    pub(crate) opaque: [MaybeUninit<u64>; 3],
}

impl hilum_achieved {
    fn core(&self) -> Answer<Achieved<Liquid>> {
        opaque::open(&self.opaque).copied()
    }
}

impl hilum_achieved_dry {
    fn core(&self) -> Answer<Achieved<Dry>> {
        opaque::open(&self.opaque).copied()
    }
}

/// The rate on seed as it was before treating: used / seed, with u(rate) = sqrt(u(used)^2 + (rate x u(seed))^2) / seed.
/// Errors: NULL; HILUM_NOT_MADE; HILUM_NOT_POSITIVE when there is no seed.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_achieved_on(
    used: Option<&hilum_used_volume>,
    seed: Option<&hilum_used_mass>,
    out: Option<&mut MaybeUninit<hilum_achieved>>,
) -> i32 {
    give(out, || {
        let achieved = Achieved::on(need(used)?.core()?, need(seed)?.core()?)?;
        Ok(hilum_achieved { opaque: opaque::store(achieved) })
    })
}

/// As hilum_achieved_on, for what is weighed.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_achieved_dry_on(
    used: Option<&hilum_used_mass>,
    seed: Option<&hilum_used_mass>,
    out: Option<&mut MaybeUninit<hilum_achieved_dry>>,
) -> i32 {
    give(out, || {
        let achieved = Achieved::on(need(used)?.core()?, need(seed)?.core()?)?;
        Ok(hilum_achieved_dry { opaque: opaque::store(achieved) })
    })
}

/// The rate; 0 when nothing was used. Errors: NULL; HILUM_NOT_MADE.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_achieved_rate(
    achieved: Option<&hilum_achieved>,
    out: Option<&mut MaybeUninit<hilum_rate_per_mass>>,
) -> i32 {
    give(out, || Ok(need(achieved)?.core()?.rate().into()))
}

/// Its expanded uncertainty: HILUM_COVERAGE_FACTOR x u(rate). Errors: NULL; HILUM_NOT_MADE.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_achieved_uncertainty(
    achieved: Option<&hilum_achieved>,
    out: Option<&mut MaybeUninit<hilum_rate_per_mass>>,
) -> i32 {
    give(out, || Ok(hilum_rate_per_mass { m3_per_kg: need(achieved)?.core()?.uncertainty().to_base() }))
}

/// By how much it differs from a target: achieved / target - 1.
/// Errors: NULL; HILUM_NOT_MADE; a target that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_achieved_deviation(
    achieved: Option<&hilum_achieved>,
    target: hilum_rate_per_mass,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    of_made_one(out, achieved, target, |achieved, target| Ok(achieved.core()?.deviation(target)))
}

/// Whether it lies within a tolerance of a target: HILUM_LOW, HILUM_ON_TARGET, HILUM_HIGH or HILUM_CANNOT_TELL.
/// Errors: as for hilum_achieved_deviation; a share outside 0 to 1.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_achieved_verdict(
    achieved: Option<&hilum_achieved>,
    target: hilum_rate_per_mass,
    tolerance: hilum_share,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    of_made_two(out, achieved, target, tolerance, |achieved, target, tolerance| {
        Ok(verdict(achieved.core()?.verdict(target, tolerance)))
    })
}

/// The rate; 0 when nothing was used. Errors: NULL; HILUM_NOT_MADE.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_achieved_dry_rate(
    achieved: Option<&hilum_achieved_dry>,
    out: Option<&mut MaybeUninit<hilum_dry_per_mass>>,
) -> i32 {
    give(out, || Ok(need(achieved)?.core()?.rate().into()))
}

/// Its expanded uncertainty: HILUM_COVERAGE_FACTOR x u(rate). Errors: NULL; HILUM_NOT_MADE.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_achieved_dry_uncertainty(
    achieved: Option<&hilum_achieved_dry>,
    out: Option<&mut MaybeUninit<hilum_dry_per_mass>>,
) -> i32 {
    give(out, || Ok(hilum_dry_per_mass { kg_per_kg: need(achieved)?.core()?.uncertainty().to_base() }))
}

/// By how much it differs from a target: achieved / target - 1.
/// Errors: NULL; HILUM_NOT_MADE; a target that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_achieved_dry_deviation(
    achieved: Option<&hilum_achieved_dry>,
    target: hilum_dry_per_mass,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    of_made_one(out, achieved, target, |achieved, target| Ok(achieved.core()?.deviation(target)))
}

/// Whether it lies within a tolerance of a target: HILUM_LOW, HILUM_ON_TARGET, HILUM_HIGH or HILUM_CANNOT_TELL.
/// Errors: as for hilum_achieved_dry_deviation; a share outside 0 to 1.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_achieved_dry_verdict(
    achieved: Option<&hilum_achieved_dry>,
    target: hilum_dry_per_mass,
    tolerance: hilum_share,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    of_made_two(out, achieved, target, tolerance, |achieved, target, tolerance| {
        Ok(verdict(achieved.core()?.verdict(target, tolerance)))
    })
}
