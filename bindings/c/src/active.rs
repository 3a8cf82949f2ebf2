//! From product to active ingredient and back.

use core::mem::MaybeUninit;

use hilum::rate::Content;

use crate::call::{Answer, give, need};
use crate::dose::active::hilum_active_per_mass;
use crate::dose::dry::hilum_dry_per_mass;
use crate::dose::liquid::hilum_rate_per_mass;
use crate::number::of_two;
use crate::quantity::amount::hilum_share;
use crate::quantity::content::{hilum_active_content, hilum_density};
use crate::status::Status;

/// A content is stated per volume of product: g/L, lb/gal.
pub const HILUM_PER_VOLUME: i32 = 1;
/// A content is stated by mass of product: a percentage.
pub const HILUM_BY_MASS: i32 = 2;

/// How a label states what is in the product.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_content {
    /// HILUM_PER_VOLUME or HILUM_BY_MASS.
    pub stated: i32,
    /// Active per volume of product; not looked at when stated by mass.
    pub per_volume: hilum_active_content,
    /// Active per mass of product; not looked at when stated per volume.
    pub by_mass: hilum_share,
}

impl hilum_content {
    fn core(self) -> Answer<Content> {
        match self.stated {
            HILUM_PER_VOLUME => Ok(Content::PerVolume(self.per_volume.core()?)),
            HILUM_BY_MASS => Ok(Content::ByMass(self.by_mass.core()?)),
            _ => Err(Status::NO_SUCH_CHOICE),
        }
    }
}

/// Active per volume of product: as stated, or share x density. density may be NULL when it is not known.
/// Errors: NULL content; HILUM_NEEDED when stated by mass without a density; HILUM_NO_SUCH_CHOICE; a number
/// that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_content_per_volume(
    content: Option<&hilum_content>,
    density: Option<&hilum_density>,
    out: Option<&mut MaybeUninit<hilum_active_content>>,
) -> i32 {
    give(out, || {
        let density = density.map(|density| density.core()).transpose()?;
        Ok(need(content)?.core()?.per_volume(density)?.into())
    })
}

/// Active per mass of product: as stated, or content / density. density may be NULL when it is not known.
/// Errors: as for hilum_content_per_volume; HILUM_NOT_A_SHARE when a litre would hold more active than it
/// weighs.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_content_by_mass(
    content: Option<&hilum_content>,
    density: Option<&hilum_density>,
    out: Option<&mut MaybeUninit<hilum_share>>,
) -> i32 {
    give(out, || {
        let density = density.map(|density| density.core()).transpose()?;
        Ok(need(content)?.core()?.by_mass(density)?.into())
    })
}

/// Active ingredient in a dose of liquid: rate x content.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_mass_active(
    rate: hilum_rate_per_mass,
    content: hilum_active_content,
    out: Option<&mut MaybeUninit<hilum_active_per_mass>>,
) -> i32 {
    of_two(out, rate, content, |rate, content| Ok(rate.active(content)))
}

/// A dose of liquid, weighed: rate x density. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_mass_weighed(
    rate: hilum_rate_per_mass,
    density: hilum_density,
    out: Option<&mut MaybeUninit<hilum_dry_per_mass>>,
) -> i32 {
    of_two(out, rate, density, |rate, density| Ok(rate.weighed(density)))
}

/// Active ingredient in a dry dose: rate x share by mass.
/// Errors: a rate that is not finite or not more than 0; a content outside 0 to 1, or of 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_dry_per_mass_active(
    rate: hilum_dry_per_mass,
    content: hilum_share,
    out: Option<&mut MaybeUninit<hilum_active_per_mass>>,
) -> i32 {
    of_two(out, rate, content, |rate, content| rate.active(content))
}

/// A dose that is weighed, measured by volume: rate / density.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_dry_per_mass_measured(
    rate: hilum_dry_per_mass,
    density: hilum_density,
    out: Option<&mut MaybeUninit<hilum_rate_per_mass>>,
) -> i32 {
    of_two(out, rate, density, |rate, density| Ok(rate.measured(density)))
}

/// The liquid product that holds a dose of active: active / content.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_active_per_mass_in_liquid(
    active: hilum_active_per_mass,
    content: hilum_active_content,
    out: Option<&mut MaybeUninit<hilum_rate_per_mass>>,
) -> i32 {
    of_two(out, active, content, |active, content| Ok(active.in_liquid(content)))
}

/// The dry product that holds a dose of active: active / share by mass.
/// Errors: a dose that is not finite or not more than 0; a content outside 0 to 1, or of 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_active_per_mass_in_dry(
    active: hilum_active_per_mass,
    content: hilum_share,
    out: Option<&mut MaybeUninit<hilum_dry_per_mass>>,
) -> i32 {
    of_two(out, active, content, |active, content| active.in_dry(content))
}
