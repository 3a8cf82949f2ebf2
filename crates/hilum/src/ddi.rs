//! What does the bus say?
//!
//! On an ISOBUS, a task controller and an implement exchange process data as 32-bit integers. The number of
//! a data dictionary entry (DDI) says what is meant and how large one step is. Here are the entries of
//! ISO 11783-11 that a treater needs; [`Entry::encode`] and [`Entry::decode`] go between a quantity and the
//! integer: value / resolution, rounded to the nearest whole number, halves up.
//!
//! There is no entry for active ingredient per seed.
//!
//! ```
//! use hilum::ddi;
//! use hilum::quantity::{Mass, Volume, mass::{hundredweight, kilogram}, volume::{fluid_ounce, milliliter}};
//! # fn main() -> Result<(), hilum::Error> {
//! // Worked by hand: 1 fl oz/cwt is 29 573.5 mm³ over 45.359237 kg, 652 mm³/kg to the nearest.
//! let rate = Volume::new::<fluid_ounce>(1.0) / Mass::new::<hundredweight>(1.0);
//! let setpoint = ddi::VOLUME_PER_MASS.setpoint;
//! assert_eq!((setpoint.number(), setpoint.encode(rate)?), (31, 652));
//! // 1000 mm³/kg are 100 mL per 100 kg.
//! let rate = setpoint.decode(1_000)? * Mass::new::<kilogram>(100.0);
//! assert!((rate.get::<milliliter>() - 100.0).abs() < 1e-12);
//! # Ok(()) }
//! ```
//!
//! # References
//! ISO 11783-11, mobile data element dictionary, export of 28 October 2025 (numbers, units, resolutions).

use core::marker::PhantomData;

use crate::error::{Argument, Error};
use crate::math;
use crate::quantity::{
    Area, Mass, MassFlow, MassPerArea, MassPerSeed, MassPerVolume, Ratio, Seeds, SeedsPerArea, Temperature,
    Volume, VolumeFlow, VolumePerArea, VolumePerMass, VolumePerSeed, base,
};

/// A quantity that the bus carries.
pub trait Carried: sealed::Carried {}

mod sealed {
    pub trait Carried: Sized {
        /// In base units (°C for a temperature).
        fn to_base(self) -> f64;
        fn from_base(base: f64) -> Self;
    }
}

macro_rules! carried {
    ($($quantity:ident),+ $(,)?) => { $(
        impl Carried for $quantity {}
        impl sealed::Carried for $quantity {
            fn to_base(self) -> f64 {
                self.value
            }
            fn from_base(base: f64) -> Self {
                base!($quantity, base)
            }
        }
    )+ };
}

// VolumePerArea is a length.
carried!(
    Area,
    Mass,
    MassFlow,
    MassPerArea,
    MassPerSeed,
    MassPerVolume,
    Ratio,
    Seeds,
    SeedsPerArea,
    Volume,
    VolumeFlow,
    VolumePerArea,
    VolumePerMass,
    VolumePerSeed,
);

impl Carried for Temperature {}
impl sealed::Carried for Temperature {
    fn to_base(self) -> f64 {
        self.celsius()
    }
    fn from_base(base: f64) -> Self {
        Self::from_celsius(base)
    }
}

/// One entry of the data dictionary.
#[derive(Debug, PartialEq)]
pub struct Entry<Q> {
    number: u16,
    /// Steps in one base unit.
    steps: f64,
    /// Steps at 0 base units.
    zero: f64,
    /// The most steps.
    most: i32,
    quantity: PhantomData<Q>,
}

impl<Q> Clone for Entry<Q> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<Q> Copy for Entry<Q> {}

impl<Q> Entry<Q> {
    const fn new(number: u16, steps: f64) -> Self {
        Self { number, steps, zero: 0.0, most: i32::MAX, quantity: PhantomData }
    }

    /// The DDI.
    #[must_use]
    pub const fn number(self) -> u16 {
        self.number
    }
}

impl<Q: Carried> Entry<Q> {
    /// The integer for a quantity: value / resolution, rounded.
    ///
    /// # Errors
    /// When the quantity is not finite or negative; [`Error::NotForTheBus`] when it comes to more steps than
    /// the entry has (2^31 − 1; a million for temperatures), or to less than half a step without being 0,
    /// which would be sent as none.
    pub fn encode(self, quantity: Q) -> Result<i32, Error> {
        let value = quantity.to_base();
        let steps = value * self.steps + self.zero;
        if !steps.is_finite() {
            return Err(Error::NotFinite { argument: Argument::BusValue, value });
        }
        if steps < 0.0 {
            return Err(Error::Negative { argument: Argument::BusValue, value });
        }
        let least = i32::from(steps > 0.0);
        math::to_i32(math::round(steps))
            .filter(|whole| (least..=self.most).contains(whole))
            .ok_or(Error::NotForTheBus { ddi: self.number, value: steps, most: self.most })
    }

    /// The quantity that an integer stands for: integer × resolution.
    ///
    /// # Errors
    /// When it is negative, which none of these quantities can be (a bin may send it when its scale is off);
    /// [`Error::NotForTheBus`] when it is more than the entry's most.
    pub fn decode(self, steps: i32) -> Result<Q, Error> {
        let value = f64::from(steps);
        if steps < 0 {
            Err(Error::Negative { argument: Argument::BusValue, value })
        } else if steps > self.most {
            Err(Error::NotForTheBus { ddi: self.number, value, most: self.most })
        } else {
            Ok(Q::from_base((value - self.zero) / self.steps))
        }
    }
}

/// The entries of one quantity that an implement can be set to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Controlled<Q> {
    /// What is wanted.
    pub setpoint: Entry<Q>,
    /// What is.
    pub actual: Entry<Q>,
    /// What is taken when nothing is wanted.
    pub default: Entry<Q>,
    /// The least that can be set.
    pub minimum: Entry<Q>,
    /// The most that can be set.
    pub maximum: Entry<Q>,
}

impl<Q> Controlled<Q> {
    /// Five numbers in a row: setpoint, actual, default, minimum, maximum.
    const fn from(first: u16, steps: f64) -> Self {
        Self {
            setpoint: Entry::new(first, steps),
            actual: Entry::new(first + 1, steps),
            default: Entry::new(first + 2, steps),
            minimum: Entry::new(first + 3, steps),
            maximum: Entry::new(first + 4, steps),
        }
    }
}

/// The entries of what a bin or tank holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Held<Q> {
    /// What it is to hold.
    pub setpoint: Entry<Q>,
    /// What it holds.
    pub actual: Entry<Q>,
    /// The most that it can hold.
    pub maximum: Entry<Q>,
}

impl<Q> Held<Q> {
    /// Three numbers in a row.
    const fn from(first: u16, steps: f64) -> Self {
        Self {
            setpoint: Entry::new(first, steps),
            actual: Entry::new(first + 1, steps),
            maximum: Entry::new(first + 2, steps),
        }
    }
}

/// Volume per area, 1 to 5: 0.01 mm³/m².
pub const VOLUME_PER_AREA: Controlled<VolumePerArea> = Controlled::from(1, 1e11);
/// Mass per area, 6 to 10: 1 mg/m².
pub const MASS_PER_AREA: Controlled<MassPerArea> = Controlled::from(6, 1e6);
/// Seeds per area, 11 to 15: 0.001 per m².
pub const SEEDS_PER_AREA: Controlled<SeedsPerArea> = Controlled::from(11, 1e3);
/// Mass per mass, 26 to 30: 1 mg/kg. A dry dose, or active ingredient, per mass of seed.
pub const MASS_PER_MASS: Controlled<Ratio> = Controlled::from(26, 1e6);
/// Volume per mass, 31 to 35: 1 mm³/kg. The slurry's rate.
pub const VOLUME_PER_MASS: Controlled<VolumePerMass> = Controlled::from(31, 1e9);
/// Volume per time, 36 to 40: 1 mm³/s. The pump's flow.
pub const VOLUME_FLOW: Controlled<VolumeFlow> = Controlled::from(36, 1e9);
/// Mass per time, 41 to 45: 1 mg/s. The flow of seed.
pub const MASS_FLOW: Controlled<MassFlow> = Controlled::from(41, 1e6);
/// Temperature, 578 to 582: 1 mK. Minimum and maximum come before the default here.
pub const TEMPERATURE: Controlled<Temperature> = Controlled {
    setpoint: millikelvin(578),
    actual: millikelvin(579),
    minimum: millikelvin(580),
    maximum: millikelvin(581),
    default: millikelvin(582),
};
/// Ambient temperature, 192: 1 mK.
pub const AMBIENT_TEMPERATURE: Entry<Temperature> = millikelvin(192);
/// Volume in a tank, 71 to 73: 1 mL.
pub const VOLUME_HELD: Held<Volume> = Held::from(71, 1e6);
/// Mass in a bin, 74 to 76: 1 g.
pub const MASS_HELD: Held<Mass> = Held::from(74, 1e3);
/// Seeds in a bin, 77 to 79: one by one.
pub const SEEDS_HELD: Held<Seeds> = Held::from(77, 1.0);
/// Total volume applied, 80: 1 L.
pub const TOTAL_VOLUME: Entry<Volume> = Entry::new(80, 1e3);
/// Total mass applied, 81: 1 kg.
pub const TOTAL_MASS: Entry<Mass> = Entry::new(81, 1.0);
/// Total seeds applied, 82: one by one.
pub const TOTAL_SEEDS: Entry<Seeds> = Entry::new(82, 1.0);
/// Total area, 116: 1 m².
pub const TOTAL_AREA: Entry<Area> = Entry::new(116, 1.0);
/// Density, 121: 1 mg/L.
pub const DENSITY: Entry<MassPerVolume> = Entry::new(121, 1e3);
/// Seed size as the mass of a thousand seeds, 122: 1 mg per 1000.
pub const THOUSAND_SEED_MASS: Entry<MassPerSeed> = Entry::new(122, 1e9);
/// Volume of a thousand seeds, 123: 1 mL per 1000.
pub const THOUSAND_SEED_VOLUME: Entry<VolumePerSeed> = Entry::new(123, 1e9);
/// A share that is wanted, 140: 1 ppm.
pub const SETPOINT_SHARE: Entry<Ratio> = Entry::new(140, 1e6);
/// A share that is, 308: 1 ppm.
pub const ACTUAL_SHARE: Entry<Ratio> = Entry::new(308, 1e6);

/// A temperature in thousandths of a kelvin, up to 1000 K; 0 °C is 273 150.
const fn millikelvin(number: u16) -> Entry<Temperature> {
    Entry { number, steps: 1e3, zero: 273_150.0, most: 1_000_000, quantity: PhantomData }
}
