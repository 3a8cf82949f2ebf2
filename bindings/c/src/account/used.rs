//! How much was used, by the readings?

use core::mem::MaybeUninit;

use hilum::account::{Measured, Reading};
use hilum::quantity::{Mass, Volume};

use crate::call::{self, Answer, Work, give, hilum_work, need};
use crate::number::of_made_one;
use crate::opaque;
use crate::quantity::amount::{hilum_mass, hilum_share, hilum_volume};
use crate::quantity::content::hilum_density;
use crate::status::Status;

/// A volume that was read off a tank, a meter or a gauge.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_volume_reading {
    /// What was shown.
    pub shown: hilum_volume,
    /// The smallest step of the instrument; 0 when the amount is known exactly.
    pub resolution: hilum_volume,
}

/// A mass that was read off a scale.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_mass_reading {
    /// What was shown.
    pub shown: hilum_mass,
    /// The smallest step of the scale; 0 when the amount is known exactly.
    pub resolution: hilum_mass,
}

impl hilum_volume_reading {
    fn core(self) -> Answer<Reading<Volume>> {
        Ok(Reading::new(self.shown.into(), self.resolution.into())?)
    }
}

impl hilum_mass_reading {
    fn core(self) -> Answer<Reading<Mass>> {
        Ok(Reading::new(self.shown.into(), self.resolution.into())?)
    }
}

/// A volume, and how sure the readings make it. Made by the functions that give one.
#[repr(C)]
#[derive(Clone, Copy)]
pub struct hilum_used_volume {
    pub(crate) opaque: [MaybeUninit<u64>; 3],
}

/// A mass, and how sure the readings make it. Made by the functions that give one.
#[repr(C)]
#[derive(Clone, Copy)]
pub struct hilum_used_mass {
    pub(crate) opaque: [MaybeUninit<u64>; 3],
}

impl hilum_used_volume {
    pub(super) fn core(&self) -> Answer<Measured<Volume>> {
        opaque::open(&self.opaque).copied()
    }
    const fn new(measured: Measured<Volume>) -> Self {
        Self { opaque: opaque::store(measured) }
    }
}

impl hilum_used_mass {
    pub(super) fn core(&self) -> Answer<Measured<Mass>> {
        opaque::open(&self.opaque).copied()
    }
    const fn new(measured: Measured<Mass>) -> Self {
        Self { opaque: opaque::store(measured) }
    }
}

fn sum(a: usize, b: usize) -> Answer<usize> {
    a.checked_add(b).ok_or(Status::TOO_LONG)
}

/// Liquid drawn from a tank and put to use: start - end + added - lost. Lost is what was drawn but not applied:
/// priming, flushing, catches not returned. work: n_added + n_lost of them.
///
/// Errors: NULL; a number that is not finite or negative; HILUM_NEGATIVE when more was left and lost than there was.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_used_volume_from(
    start: Option<&hilum_volume_reading>,
    end: Option<&hilum_volume_reading>,
    added: *const hilum_volume_reading,
    n_added: usize,
    lost: *const hilum_volume_reading,
    n_lost: usize,
    work: *mut hilum_work,
    out: Option<&mut MaybeUninit<hilum_used_volume>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let (added, lost, mut work) = unsafe {
            (call::list(added, n_added)?, call::list(lost, n_lost)?, Work::new(work, sum(n_added, n_lost)?)?)
        };
        let added = work.made(added, hilum_volume_reading::core)?;
        let lost = work.made(lost, hilum_volume_reading::core)?;
        let used = Measured::used(need(start)?.core()?, need(end)?.core()?, added, lost)?;
        Ok(hilum_used_volume::new(used))
    })
}

/// As hilum_used_volume_from, for what is weighed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_used_mass_from(
    start: Option<&hilum_mass_reading>,
    end: Option<&hilum_mass_reading>,
    added: *const hilum_mass_reading,
    n_added: usize,
    lost: *const hilum_mass_reading,
    n_lost: usize,
    work: *mut hilum_work,
    out: Option<&mut MaybeUninit<hilum_used_mass>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let (added, lost, mut work) = unsafe {
            (call::list(added, n_added)?, call::list(lost, n_lost)?, Work::new(work, sum(n_added, n_lost)?)?)
        };
        let added = work.made(added, hilum_mass_reading::core)?;
        let lost = work.made(lost, hilum_mass_reading::core)?;
        let used = Measured::used(need(start)?.core()?, need(end)?.core()?, added, lost)?;
        Ok(hilum_used_mass::new(used))
    })
}

/// One reading as it is: a meter that was set to 0. Errors: NULL; a number that is not finite or negative.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_used_volume_of_reading(
    reading: Option<&hilum_volume_reading>,
    out: Option<&mut MaybeUninit<hilum_used_volume>>,
) -> i32 {
    give(out, || Ok(hilum_used_volume::new(need(reading)?.core()?.into())))
}

/// One reading as it is: a truck's scale. Errors: NULL; a number that is not finite or negative.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_used_mass_of_reading(
    reading: Option<&hilum_mass_reading>,
    out: Option<&mut MaybeUninit<hilum_used_mass>>,
) -> i32 {
    give(out, || Ok(hilum_used_mass::new(need(reading)?.core()?.into())))
}

/// The amount. Errors: NULL; HILUM_NOT_MADE.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_used_volume_amount(
    used: Option<&hilum_used_volume>,
    out: Option<&mut MaybeUninit<hilum_volume>>,
) -> i32 {
    give(out, || Ok(need(used)?.core()?.get().into()))
}

/// Its expanded uncertainty: 2 x the root of the sum of resolution^2 / 12. Errors: NULL; HILUM_NOT_MADE.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_used_volume_uncertainty(
    used: Option<&hilum_used_volume>,
    out: Option<&mut MaybeUninit<hilum_volume>>,
) -> i32 {
    give(out, || Ok(need(used)?.core()?.uncertainty().into()))
}

/// The amount. Errors: NULL; HILUM_NOT_MADE.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_used_mass_amount(
    used: Option<&hilum_used_mass>,
    out: Option<&mut MaybeUninit<hilum_mass>>,
) -> i32 {
    give(out, || Ok(need(used)?.core()?.get().into()))
}

/// Its expanded uncertainty: 2 x the root of the sum of resolution^2 / 12. Errors: NULL; HILUM_NOT_MADE.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_used_mass_uncertainty(
    used: Option<&hilum_used_mass>,
    out: Option<&mut MaybeUninit<hilum_mass>>,
) -> i32 {
    give(out, || Ok(need(used)?.core()?.uncertainty().into()))
}

/// One product's share of what was used of a mix: share x used. Errors: NULL; HILUM_NOT_MADE; a share outside 0 to 1.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_used_volume_share(
    used: Option<&hilum_used_volume>,
    share: hilum_share,
    out: Option<&mut MaybeUninit<hilum_used_volume>>,
) -> i32 {
    of_made_one(out, used, share, |used, share| Ok(hilum_used_volume::new(used.core()?.share(share))))
}

/// As hilum_used_volume_share, for what is weighed.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_used_mass_share(
    used: Option<&hilum_used_mass>,
    share: hilum_share,
    out: Option<&mut MaybeUninit<hilum_used_mass>>,
) -> i32 {
    of_made_one(out, used, share, |used, share| Ok(hilum_used_mass::new(used.core()?.share(share))))
}

/// The same liquid, weighed: volume x density.
/// Errors: NULL; HILUM_NOT_MADE; a density that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_used_volume_weighed(
    used: Option<&hilum_used_volume>,
    density: hilum_density,
    out: Option<&mut MaybeUninit<hilum_used_mass>>,
) -> i32 {
    of_made_one(out, used, density, |used, density| Ok(hilum_used_mass::new(used.core()?.weighed(density))))
}

/// The same liquid, by volume: mass / density.
/// Errors: NULL; HILUM_NOT_MADE; a density that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_used_mass_measured(
    used: Option<&hilum_used_mass>,
    density: hilum_density,
    out: Option<&mut MaybeUninit<hilum_used_volume>>,
) -> i32 {
    of_made_one(out, used, density, |used, density| {
        Ok(hilum_used_volume::new(used.core()?.measured(density)))
    })
}

/// Seed before treating, from its weight afterwards: the mass of n liquids comes off.
/// Errors: NULL; HILUM_NOT_MADE; HILUM_NOT_POSITIVE when the liquids weigh as much as the seed or more.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_used_mass_before_treating(
    seed: Option<&hilum_used_mass>,
    liquids: *const hilum_used_mass,
    n: usize,
    out: Option<&mut MaybeUninit<hilum_used_mass>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let liquids = unsafe { call::list(liquids, n) }?;
        // One by one: what comes off first leaves a seed from which the next comes off, bit for bit.
        let seed = need(seed)?.core()?.before_treating(&[])?;
        let before = liquids
            .iter()
            .try_fold(seed, |seed, liquid| -> Answer<_> { Ok(seed.before_treating(&[liquid.core()?])?) })?;
        Ok(hilum_used_mass::new(before))
    })
}
