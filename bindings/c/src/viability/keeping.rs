//! How long the treated seed may wait, and what keeps it.

use core::ffi::c_char;
use core::mem::MaybeUninit;

use hilum::viability::storage::{self, Warmth};
use hilum::viability::{self, Because, Crossing, Life, PlantBy, plant_by};

use super::survival::{hilum_period, hilum_survival, stored};
use crate::call::{self, Answer, give, hilum_work};
use crate::dose::cells::hilum_cells_per_seed;
use crate::number::{number, of_one};
use crate::quantity::amount::hilum_time;
use crate::quantity::temperature::hilum_temperature;
use crate::status::Status;

/// The count is below the minimum from the start.
pub const HILUM_ALREADY_BELOW: i32 = 1;
/// It is enough until a time after treating.
pub const HILUM_AT: i32 = 2;
/// It stays enough for 35000 years.
pub const HILUM_NEVER: i32 = 3;

/// When a count falls below a minimum.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_crossing {
    /// The last whole second after treating at which it is still enough; 0 unless is says HILUM_AT.
    pub at: hilum_time,
    /// HILUM_ALREADY_BELOW, HILUM_AT or HILUM_NEVER.
    pub is: i32,
}

impl From<Crossing> for hilum_crossing {
    fn from(crossing: Crossing) -> Self {
        const NONE: hilum_time = hilum_time { s: 0.0 };
        match crossing {
            Crossing::AlreadyBelow => Self { at: NONE, is: HILUM_ALREADY_BELOW },
            Crossing::At(time) => Self { at: time.into(), is: HILUM_AT },
            Crossing::Never => Self { at: NONE, is: HILUM_NEVER },
        }
    }
}

impl hilum_crossing {
    pub(crate) fn core(self) -> Answer<Crossing> {
        let at = Life::new(self.at.into())?;
        match self.is {
            HILUM_ALREADY_BELOW => Ok(Crossing::AlreadyBelow),
            HILUM_AT => Ok(Crossing::At(at.get())),
            HILUM_NEVER => Ok(Crossing::Never),
            _ => Err(Status::NO_SUCH_CHOICE),
        }
    }
}

/// The last moment at which there are enough cells on a seed, to the second below. work: n of them.
/// Errors: as for hilum_survival_count.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_survival_crossing(
    survival: Option<&hilum_survival>,
    at_treating: hilum_cells_per_seed,
    minimum: hilum_cells_per_seed,
    storage: *const hilum_period,
    work: *mut hilum_work,
    n: usize,
    out: Option<&mut MaybeUninit<hilum_crossing>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let (survival, storage) = unsafe { stored(survival, storage, work, n) }?;
        Ok(survival.crossing(at_treating.core()?, minimum.core()?, storage).into())
    })
}

/// How long after treating a maker lets the seed be planted.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_life {
    /// Seconds; 120 d is 10368000.
    pub s: f64,
}

number!(hilum_life: s, Life);

/// There are too few cells from the start.
pub const HILUM_NOT_AT_ALL: i32 = 1;
/// Plant within a time.
pub const HILUM_PLANT_WITHIN: i32 = 2;
/// Nothing stated limits it.
pub const HILUM_UNLIMITED: i32 = 3;

/// No reason.
pub const HILUM_NO_REASON: i32 = 0;
/// The living product's own life on the seed ends it.
pub const HILUM_ON_SEED_LIFE: i32 = 1;
/// The life that another product on the seed leaves it ends it.
pub const HILUM_PARTNER: i32 = 2;
/// There are too few cells after that.
pub const HILUM_MINIMUM: i32 = 3;

/// How long after treating the seed may be planted.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_plant_by {
    /// Time after treating; 0 unless is says HILUM_PLANT_WITHIN.
    pub within: hilum_time,
    /// HILUM_NOT_AT_ALL, HILUM_PLANT_WITHIN or HILUM_UNLIMITED.
    pub is: i32,
    /// What ends it: HILUM_ON_SEED_LIFE, HILUM_PARTNER or HILUM_MINIMUM; HILUM_NO_REASON unless is says
    /// HILUM_PLANT_WITHIN.
    pub because: i32,
}

impl From<PlantBy> for hilum_plant_by {
    fn from(by: PlantBy) -> Self {
        const NONE: hilum_time = hilum_time { s: 0.0 };
        match by {
            PlantBy::NotAtAll => Self { within: NONE, is: HILUM_NOT_AT_ALL, because: HILUM_NO_REASON },
            PlantBy::Unlimited => Self { within: NONE, is: HILUM_UNLIMITED, because: HILUM_NO_REASON },
            PlantBy::Within(time, because) => Self {
                within: time.into(),
                is: HILUM_PLANT_WITHIN,
                because: match because {
                    Because::OnSeedLife => HILUM_ON_SEED_LIFE,
                    Because::Partner => HILUM_PARTNER,
                    Because::Minimum => HILUM_MINIMUM,
                },
            },
        }
    }
}

/// The earliest of the life on the seed, the lives that n partners leave, and the crossing of the minimum; of
/// equals the first in this order gives the reason. on_seed and minimum may be NULL where nothing is stated.
/// Errors: NULL partners; HILUM_NO_SUCH_CHOICE; a time that is not finite or negative.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_plant_by_of(
    on_seed: Option<&hilum_life>,
    partners: *const hilum_life,
    n: usize,
    minimum: Option<&hilum_crossing>,
    out: Option<&mut MaybeUninit<hilum_plant_by>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let partners = unsafe { call::list(partners, n) }?;
        let on_seed = on_seed.map(|life| life.core()).transpose()?;
        let minimum = minimum.map(|crossing| crossing.core()).transpose()?;
        // The core takes a list of its own type; of all partners the one that ends first decides.
        let mut first: Option<Life> = None;
        for life in partners {
            let life = life.core()?;
            first = Some(first.map_or(life, |first| if life < first { life } else { first }));
        }
        Ok(plant_by(on_seed, first.as_slice(), minimum).into())
    })
}

/// No liquid on seed this cold, in degrees Celsius: it freezes on the seed. Common practice.
pub const HILUM_FROZEN_CELSIUS: f64 = 0.0;
/// Treated seed keeps best at or below this, in degrees Celsius. Common practice.
pub const HILUM_STORE_COOL_CELSIUS: f64 = 10.0;
/// Too warm for treated seed, unless its maker says otherwise, in degrees Celsius. Common practice.
pub const HILUM_STORE_WARM_CELSIUS: f64 = 25.0;
/// How long a mix with a living product is usually good, in seconds: 24 h. Common practice.
pub const HILUM_USUAL_POT_LIFE_S: f64 = 86_400.0;
/// How long cells are typically stated to last on treated seed, in seconds: 120 d. Common practice.
pub const HILUM_TYPICAL_ON_SEED_LIFE_S: f64 = 10_368_000.0;
/// How many cells are typically asked for at planting, in CFU per seed. Common practice.
pub const HILUM_TYPICAL_MINIMUM_CFU_PER_SEED: f64 = 100_000.0;

/// Whether seed is too cold to take a liquid: at or below HILUM_FROZEN_CELSIUS. Dry treated seed may freeze.
/// Errors: a temperature that is not finite; HILUM_BELOW_ABSOLUTE_ZERO.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_storage_frozen(seed: hilum_temperature, out: Option<&mut MaybeUninit<bool>>) -> i32 {
    of_one(out, seed, |seed| Ok(storage::frozen(seed.checked()?)))
}

/// At or below HILUM_STORE_COOL_CELSIUS.
pub const HILUM_COOL: i32 = 1;
/// Warmer than that, though not too warm.
pub const HILUM_FAIR: i32 = 2;
/// Above what the maker declares, or above HILUM_STORE_WARM_CELSIUS when nothing is declared.
pub const HILUM_TOO_WARM: i32 = 3;

/// How a storage temperature suits treated seed: HILUM_COOL, HILUM_FAIR or HILUM_TOO_WARM. store_below is what the
/// maker says; NULL when nothing is declared. Errors: as for hilum_storage_frozen.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_storage_warmth(
    storage: hilum_temperature,
    store_below: Option<&hilum_temperature>,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    give(out, || {
        let store_below = store_below.map(|at| at.core()).transpose()?;
        Ok(match storage::warmth(storage.core()?, store_below) {
            Warmth::Cool => HILUM_COOL,
            Warmth::Fair => HILUM_FAIR,
            Warmth::TooWarm => HILUM_TOO_WARM,
        })
    })
}

/// Whether a constituent, as text of length bytes, names a metal that can kill living cells near it: any of its words
/// does ("zinc sulphate"), or it is the metal's symbol. Common practice. Errors: NULL; HILUM_NOT_UTF8.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_is_metal(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<bool>>,
) -> i32 {
    // SAFETY: the conventions.
    give(out, || Ok(viability::is_metal(unsafe { call::text(text, length) }?)))
}
