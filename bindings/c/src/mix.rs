//! What goes in the tank?

use core::mem::MaybeUninit;

use hilum::mix::{self, HoldUp, MinFill, Slurry, Water};
use hilum::quantity::Measure;
use hilum::rate::RatePerMass;

use crate::argument::{MixVolume, SeedMass};
use crate::call::{self, Answer, give, need};
use crate::dose::liquid::hilum_rate_per_mass;
use crate::number::{number, of_made_one, of_made_two, of_two, positive};
use crate::quantity::amount::{hilum_mass, hilum_share, hilum_volume};
use crate::quantity::content::hilum_density;
use crate::status::Status;

/// No water is added.
pub const HILUM_NO_WATER: i32 = 0;
/// The mix is made up with water to a volume per mass of seed.
pub const HILUM_WATER_UP_TO: i32 = 1;
/// So much water is added per mass of seed.
pub const HILUM_WATER_PLUS: i32 = 2;

/// What is done about water.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_water {
    /// The volume to make up to, or the water to add; not looked at when none is added.
    pub volume: hilum_rate_per_mass,
    /// HILUM_NO_WATER, HILUM_WATER_UP_TO or HILUM_WATER_PLUS.
    pub how: i32,
}

impl hilum_water {
    fn core(self) -> Answer<Water> {
        match self.how {
            HILUM_NO_WATER => Ok(Water::None),
            HILUM_WATER_UP_TO => Ok(Water::UpTo(self.volume.core()?)),
            HILUM_WATER_PLUS => Ok(Water::Plus(self.volume.core()?)),
            _ => Err(Status::NO_SUCH_CHOICE),
        }
    }
}

/// What an order takes from a tank, per mass of seed: products and water.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_slurry {
    /// The products, without water.
    pub products: hilum_rate_per_mass,
    /// Products and water: what the pump delivers.
    pub total: hilum_rate_per_mass,
}

impl hilum_slurry {
    fn core(self) -> Answer<Slurry> {
        Ok(Slurry::of([self.products.core()?], Water::UpTo(self.total.core()?))?)
    }
}

/// The rates of a list, all looked at.
///
/// # Safety
/// As for [`call::list`].
unsafe fn rates<'a>(
    items: *const hilum_rate_per_mass,
    n: usize,
) -> Answer<impl Iterator<Item = RatePerMass> + Clone + 'a> {
    // SAFETY: by the caller.
    let items: &'a [hilum_rate_per_mass] = unsafe { call::list(items, n) }?;
    for item in items {
        item.core()?;
    }
    Ok(items.iter().filter_map(|item| item.core().ok()))
}

/// n products at their rates, and water: their sum, made up to a volume, or plus water, or as it is. Volumes
/// are taken to add, which is common practice.
///
/// Errors: NULL; HILUM_NEEDED when n is 0; HILUM_TOO_LITTLE when the volume to make up to is below the
/// products' own; HILUM_NO_SUCH_CHOICE; a rate that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_slurry_of(
    products: *const hilum_rate_per_mass,
    n: usize,
    water: Option<&hilum_water>,
    out: Option<&mut MaybeUninit<hilum_slurry>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let products = unsafe { rates(products, n) }?;
        let slurry = Slurry::of(products.clone(), need(water)?.core()?)?;
        let products = mix::total_liquid(products)?;
        Ok(hilum_slurry { products: products.into(), total: slurry.rate().into() })
    })
}

/// Water per mass of seed; may be 0: total - products. Errors: NULL; a rate that is not finite or not more than
/// 0; HILUM_TOO_LITTLE when the total is less than the products.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_slurry_water(
    slurry: Option<&hilum_slurry>,
    out: Option<&mut MaybeUninit<hilum_rate_per_mass>>,
) -> i32 {
    give(out, || Ok(hilum_rate_per_mass { m3_per_kg: need(slurry)?.core()?.water().to_base() }))
}

/// The share of a product in the mix, by volume: rate / total.
/// Errors: as for hilum_slurry_water; HILUM_NOT_A_SHARE when the rate is more than the whole mix.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_slurry_share(
    slurry: Option<&hilum_slurry>,
    product: hilum_rate_per_mass,
    out: Option<&mut MaybeUninit<hilum_share>>,
) -> i32 {
    of_made_one(out, slurry, product, |slurry, product| Ok(slurry.core()?.share(product)?))
}

/// The share of water in the mix, by volume: (total - products) / total. Errors: as for hilum_slurry_water.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_slurry_water_share(
    slurry: Option<&hilum_slurry>,
    out: Option<&mut MaybeUninit<hilum_share>>,
) -> i32 {
    give(out, || Ok(need(slurry)?.core()?.water_share().into()))
}

/// The seed that a volume of mix treats: volume / total.
/// Errors: as for hilum_slurry_water; a volume that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_slurry_treats(
    slurry: Option<&hilum_slurry>,
    mix: hilum_volume,
    out: Option<&mut MaybeUninit<hilum_mass>>,
) -> i32 {
    of_made_one(out, slurry, positive::<MixVolume, _>(mix), |slurry, mix| Ok(slurry.core()?.treats(mix)?))
}

/// The mix that a mass of seed takes up: mass x total.
/// Errors: as for hilum_slurry_water; a mass that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_slurry_fill(
    slurry: Option<&hilum_slurry>,
    seed: hilum_mass,
    out: Option<&mut MaybeUninit<hilum_volume>>,
) -> i32 {
    of_made_one(out, slurry, positive::<SeedMass, _>(seed), |slurry, seed| Ok(slurry.core()?.fill(seed)?))
}

/// All liquid that lands on the seed: the sum of n rates of products, waters or slurries of all tanks. Compare it
/// with the treater's limits by hilum_rate_per_mass_exceeds and hilum_rate_per_mass_falls_below.
/// Errors: NULL; HILUM_NEEDED when n is 0; a rate that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_mix_total_liquid(
    rates: *const hilum_rate_per_mass,
    n: usize,
    out: Option<&mut MaybeUninit<hilum_rate_per_mass>>,
) -> i32 {
    // SAFETY: the conventions.
    give(out, || Ok(mix::total_liquid(unsafe { self::rates(rates, n) }?)?.into()))
}

/// What to pour of one part of the mix: share x mix.
/// Errors: a share outside 0 to 1; a volume that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_mix_pour(
    share: hilum_share,
    mix: hilum_volume,
    out: Option<&mut MaybeUninit<hilum_volume>>,
) -> i32 {
    of_two(out, share, positive::<MixVolume, _>(mix), |share, mix| mix::pour(share, mix))
}

/// What a pour weighs: volume x density.
/// Errors: a volume that is not finite or negative; a density that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_mix_weigh(
    pour: hilum_volume,
    density: hilum_density,
    out: Option<&mut MaybeUninit<hilum_mass>>,
) -> i32 {
    of_two(out, pour, density, |pour, density| mix::weigh(pour, density))
}

/// A part of a mix.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_mix_part {
    /// Its share of the mix, by volume.
    pub share: hilum_share,
    /// What it weighs per volume; water is HILUM_WATER_KG_PER_M3.
    pub density: hilum_density,
}

/// What water weighs per volume, in kilograms per cubic metre.
pub const HILUM_WATER_KG_PER_M3: f64 = 998.2;

/// What a mix of n parts weighs per volume: the sum of share x density / the sum of shares. Volumes are taken to add.
/// Errors: NULL; HILUM_NEEDED when no part has a share; a share outside 0 to 1, a density not more than 0.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_mix_density(
    parts: *const hilum_mix_part,
    n: usize,
    out: Option<&mut MaybeUninit<hilum_density>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let parts = unsafe { call::list(parts, n) }?;
        for part in parts {
            part.share.core()?;
            part.density.core()?;
        }
        let parts =
            parts.iter().filter_map(|part| Some((part.share.core().ok()?, part.density.core().ok()?)));
        Ok(mix::density(parts)?.into())
    })
}

/// A product in the recipe of a mix and in an order's own slurry.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_recipe_share {
    /// Its share in the recipe; 0 when it is not in it.
    pub recipe: hilum_share,
    /// Its share in the order's own slurry; 0 when it is not in it.
    pub own: hilum_share,
}

/// Whether an order may be treated with the mix of another: for every of n products,
/// |share in the recipe / own share - 1| <= tolerance (with a slack of 1e-9). Water is not compared.
/// Errors: NULL; a share outside 0 to 1.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_mix_keeps_recipe(
    products: *const hilum_recipe_share,
    n: usize,
    tolerance: hilum_share,
    out: Option<&mut MaybeUninit<bool>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let products = unsafe { call::list(products, n) }?;
        for product in products {
            product.recipe.core()?;
            product.own.core()?;
        }
        let shares = products
            .iter()
            .filter_map(|product| Some((product.recipe.core().ok()?, product.own.core().ok()?)));
        Ok(mix::keeps_recipe(shares, tolerance.core()?))
    })
}

/// What pump and lines hold: filled when they are empty, lost when the recipe changes or the mix expires.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_hold_up {
    /// Cubic metres; 0 when the lines are counted as part of the tank.
    pub m3: f64,
}

number!(hilum_hold_up: m3, HoldUp);

/// What to mix so that a mass of seed can be treated from empty lines: mass x total + hold-up.
/// Errors: as for hilum_slurry_fill; a hold-up that is not finite or negative.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_hold_up_mixed(
    hold_up: hilum_hold_up,
    slurry: Option<&hilum_slurry>,
    seed: hilum_mass,
    out: Option<&mut MaybeUninit<hilum_volume>>,
) -> i32 {
    of_made_two(out, slurry, hold_up, positive::<SeedMass, _>(seed), |slurry, hold_up, seed| {
        Ok(hold_up.mixed(slurry.core()?, seed)?)
    })
}

/// The seed that a mix treats when it starts with empty lines: (mix - hold-up) / total; 0 when the lines take it
/// all. Errors: as for hilum_slurry_treats; a hold-up that is not finite or negative.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_hold_up_treats(
    hold_up: hilum_hold_up,
    slurry: Option<&hilum_slurry>,
    mix: hilum_volume,
    out: Option<&mut MaybeUninit<hilum_mass>>,
) -> i32 {
    of_made_two(out, slurry, hold_up, positive::<MixVolume, _>(mix), |slurry, hold_up, mix| {
        Ok(hold_up.treats(slurry.core()?, mix)?)
    })
}

/// The least that must be in a tank for its agitator and pump to work.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_min_fill {
    /// Cubic metres.
    pub m3: f64,
}

number!(hilum_min_fill: m3, MinFill);

/// Whether a mix stays below it, by more than 1e-9 of it. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_min_fill_missed_by(
    least: hilum_min_fill,
    mix: hilum_volume,
    out: Option<&mut MaybeUninit<bool>>,
) -> i32 {
    of_two(out, least, positive::<MixVolume, _>(mix), |least, mix| least.missed_by(mix))
}
