//! How much seed is it?

use core::mem::MaybeUninit;

use hilum::seed::{Bushel, SeedSize, SeedUnit, Sown, UnitOfMass, UnitOfSeeds, pure_live_seed};

use crate::argument::{Area, SeedMass, Seeds, SowingRate, ThousandSeedMass};
use crate::call::{Answer, give_both};
use crate::number::{number, of_made_one, of_made_two, of_one, of_three, of_two, positive};
use crate::quantity::amount::{hilum_area, hilum_mass, hilum_seeds, hilum_share};
use crate::quantity::sown::{hilum_mass_per_area, hilum_mass_per_seed, hilum_seed_size, hilum_sown};
use crate::status::Status;

/// The crop's standard bushel: a mass by law or custom (60 lb for soybean), not a test weight.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_bushel {
    /// Kilograms.
    pub kg: f64,
}

number!(hilum_bushel: kg, Bushel);

/// A unit is a number of seeds: the unit of a label's dose.
pub const HILUM_UNIT_OF_SEEDS: i32 = 1;
/// A unit is a mass of seed: a bag sold by weight.
pub const HILUM_UNIT_OF_MASS: i32 = 2;

/// What a seller calls one unit of this seed.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_seed_unit {
    /// HILUM_UNIT_OF_SEEDS or HILUM_UNIT_OF_MASS.
    pub is: i32,
    /// How many seeds; not looked at for a unit of mass.
    pub seeds: hilum_seeds,
    /// How much seed; not looked at for a unit of seeds.
    pub mass: hilum_mass,
}

impl hilum_seed_unit {
    pub(crate) fn core(self) -> Answer<SeedUnit> {
        match self.is {
            HILUM_UNIT_OF_SEEDS => Ok(SeedUnit::Count(UnitOfSeeds::new(self.seeds.into())?)),
            HILUM_UNIT_OF_MASS => Ok(SeedUnit::Mass(UnitOfMass::new(self.mass.into())?)),
            _ => Err(Status::NO_SUCH_CHOICE),
        }
    }
}

/// The size of seed of which a thousand weigh this much: 1000 / mass.
/// Errors: a mass that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_size_of_thousand(
    mass: hilum_mass,
    out: Option<&mut MaybeUninit<hilum_seed_size>>,
) -> i32 {
    of_one(out, positive::<ThousandSeedMass, _>(mass), |mass| SeedSize::of_thousand(mass))
}

/// The size of seed of which one weighs this much: 1 / mass per seed.
/// Errors: a mass that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_size_of_seed(
    mass: hilum_mass_per_seed,
    out: Option<&mut MaybeUninit<hilum_seed_size>>,
) -> i32 {
    of_one(out, positive::<SeedMass, _>(mass), |mass| SeedSize::of_seed(mass))
}

/// What a thousand seeds weigh: 1000 / size. Errors: a size that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_size_thousand(
    size: hilum_seed_size,
    out: Option<&mut MaybeUninit<hilum_mass>>,
) -> i32 {
    of_one(out, size, |size| Ok(size.thousand()))
}

/// What one seed weighs, on average: 1 / size. Errors: a size that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_size_seed_mass(
    size: hilum_seed_size,
    out: Option<&mut MaybeUninit<hilum_mass_per_seed>>,
) -> i32 {
    of_one(out, size, |size| Ok(size.seed_mass()))
}

/// How many seeds there are in a mass: mass x size. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_size_count_in(
    size: hilum_seed_size,
    seed: hilum_mass,
    out: Option<&mut MaybeUninit<hilum_seeds>>,
) -> i32 {
    of_two(out, size, positive::<SeedMass, _>(seed), |size, seed| size.count_in(seed))
}

/// What a number of seeds weighs: seeds / size. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_size_mass_of(
    size: hilum_seed_size,
    seeds: hilum_seeds,
    out: Option<&mut MaybeUninit<hilum_mass>>,
) -> i32 {
    of_two(out, size, positive::<Seeds, _>(seeds), |size, seeds| size.mass_of(seeds))
}

/// The sizes that a tolerance leaves possible: size x (1 - tolerance) and size x (1 + tolerance).
/// Errors: a size that is not finite or not more than 0; a tolerance outside 0 to 1, or of 1.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_size_within(
    size: hilum_seed_size,
    tolerance: hilum_share,
    low: Option<&mut MaybeUninit<hilum_seed_size>>,
    high: Option<&mut MaybeUninit<hilum_seed_size>>,
) -> i32 {
    give_both(low, high, || {
        let (low, high) = size.core()?.within(tolerance.core()?)?;
        Ok((low.into(), high.into()))
    })
}

/// The mass of one unit at a seed size: seeds / size, or the mass.
/// Errors: NULL; a number that is not finite or not more than 0; HILUM_NO_SUCH_CHOICE.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_unit_mass(
    unit: Option<&hilum_seed_unit>,
    size: hilum_seed_size,
    out: Option<&mut MaybeUninit<hilum_mass>>,
) -> i32 {
    of_made_one(out, unit, size, |unit, size| Ok(unit.core()?.mass(size)))
}

/// How many units a mass of seed is: mass x size / seeds, or mass / mass.
/// Errors: NULL; a number that is not finite or not more than 0; HILUM_NO_SUCH_CHOICE.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_unit_units_in(
    unit: Option<&hilum_seed_unit>,
    seed: hilum_mass,
    size: hilum_seed_size,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    of_made_two(out, unit, positive::<SeedMass, _>(seed), size, |unit, seed, size| {
        Ok(unit.core()?.units_in(seed, size)?)
    })
}

/// How many bushels a mass of seed is: mass / bushel. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_bushel_bushels_in(
    bushel: hilum_bushel,
    seed: hilum_mass,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    of_two(out, bushel, positive::<SeedMass, _>(seed), |bushel, seed| bushel.bushels_in(seed))
}

/// The share of a lot that is pure seed which germinates: purity x germination.
/// Errors: a share outside 0 to 1.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_pure_live_seed(
    purity: hilum_share,
    germination: hilum_share,
    out: Option<&mut MaybeUninit<hilum_share>>,
) -> i32 {
    of_two(out, purity, germination, |purity, germination| Ok(pure_live_seed(purity, germination)))
}

/// What to sow for a stand of plants: stand / (germination x emergence of viable seed).
/// Errors: a stand that is not finite or not more than 0; a share outside 0 to 1, or of 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_sown_for_stand(
    stand: hilum_sown,
    germination: hilum_share,
    emergence: hilum_share,
    out: Option<&mut MaybeUninit<hilum_sown>>,
) -> i32 {
    of_three(out, stand, germination, emergence, |stand, germination, emergence| {
        Sown::for_stand(stand, germination, emergence)
    })
}

/// Seeds sown per area where seed is sown by mass: rate x size.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_sown_by_mass(
    rate: hilum_mass_per_area,
    size: hilum_seed_size,
    out: Option<&mut MaybeUninit<hilum_sown>>,
) -> i32 {
    of_two(out, size, positive::<SowingRate, _>(rate), |size, rate| Sown::by_mass(rate, size))
}

/// Mass of seed per area: sown / size. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_sown_mass_per_area(
    sown: hilum_sown,
    size: hilum_seed_size,
    out: Option<&mut MaybeUninit<hilum_mass_per_area>>,
) -> i32 {
    of_two(out, sown, size, |sown, size| Ok(sown.mass_per_area(size)))
}

/// The area that a number of seeds sows: seeds / sown. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_sown_area(
    sown: hilum_sown,
    seeds: hilum_seeds,
    out: Option<&mut MaybeUninit<hilum_area>>,
) -> i32 {
    of_two(out, sown, positive::<Seeds, _>(seeds), |sown, seeds| sown.area(seeds))
}

/// The seeds that an area takes: area x sown. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_sown_seeds_for(
    sown: hilum_sown,
    area: hilum_area,
    out: Option<&mut MaybeUninit<hilum_seeds>>,
) -> i32 {
    of_two(out, sown, positive::<Area, _>(area), |sown, area| sown.seeds_for(area))
}
