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

mod dictionary;

pub use dictionary::*;

use core::marker::PhantomData;

use crate::error::{Argument, Error};
use crate::math;
use crate::quantity::{
    Area, Mass, MassFlow, MassPerArea, MassPerSeed, MassPerVolume, Ratio, Seeds, SeedsPerArea, Temperature,
    Volume, VolumeFlow, VolumePerArea, VolumePerMass, VolumePerSeed, area, base, length, mass, mass_flow,
    mass_per_area, mass_per_seed, mass_per_volume, ratio, seeds, seeds_per_area, temperature_difference,
    volume, volume_flow, volume_per_mass, volume_per_seed,
};
use crate::unit::Powers;

/// A quantity that the bus carries.
pub trait Carried: sealed::Carried {}

mod sealed {
    pub trait Carried: Sized {
        const POWERS: crate::unit::Powers;
        /// In base units (°C for a temperature).
        fn to_base(self) -> f64;
        fn from_base(base: f64) -> Self;
    }
}

macro_rules! carried {
    ($($quantity:ident: $module:ident),+ $(,)?) => { $(
        impl Carried for $quantity {}
        impl sealed::Carried for $quantity {
            const POWERS: Powers = $module::POWERS;
            fn to_base(self) -> f64 {
                self.value
            }
            fn from_base(base: f64) -> Self {
                base!($quantity, base)
            }
        }
    )+ };
}

carried!(
    Area: area,
    Mass: mass,
    MassFlow: mass_flow,
    MassPerArea: mass_per_area,
    MassPerSeed: mass_per_seed,
    MassPerVolume: mass_per_volume,
    Ratio: ratio,
    Seeds: seeds,
    SeedsPerArea: seeds_per_area,
    Volume: volume,
    VolumeFlow: volume_flow,
    VolumePerArea: length,
    VolumePerMass: volume_per_mass,
    VolumePerSeed: volume_per_seed,
);

impl Carried for Temperature {}
impl sealed::Carried for Temperature {
    const POWERS: Powers = temperature_difference::POWERS;
    fn to_base(self) -> f64 {
        self.celsius()
    }
    fn from_base(base: f64) -> Self {
        Self::from_celsius(base)
    }
}

/// One entry of the data dictionary, for programs that learn its number as they run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// The DDI.
    pub number: u16,
    /// What it measures.
    pub powers: Powers,
    /// Steps in one base unit.
    steps: f64,
    /// Steps at 0 base units.
    zero: f64,
    /// The most steps.
    most: i32,
}

impl Row {
    /// The integer for a value in base units (°C for a temperature): value / resolution, rounded.
    ///
    /// # Errors
    /// As [`Entry::encode`].
    pub fn encode(self, value: f64) -> Result<i32, Error> {
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

    /// The value in base units (°C for a temperature) of an integer: integer × resolution.
    ///
    /// # Errors
    /// As [`Entry::decode`].
    pub fn decode(self, steps: i32) -> Result<f64, Error> {
        let value = f64::from(steps);
        if steps < 0 {
            Err(Error::Negative { argument: Argument::BusValue, value })
        } else if steps > self.most {
            Err(Error::NotForTheBus { ddi: self.number, value, most: self.most })
        } else {
            Ok((value - self.zero) / self.steps)
        }
    }
}

/// The entry with a number, if it is one of those here.
///
/// ```
/// // Worked by hand: 100 mL/min is 1666.67 mm³/s; a volume flow in base units is m³/s.
/// let row = hilum::ddi::find(36).unwrap();
/// assert_eq!(row.powers.name(), Some("volume per time"));
/// assert_eq!(row.encode(100e-6 / 60.0), Ok(1_667));
/// ```
#[must_use]
pub fn find(number: u16) -> Option<Row> {
    dictionary::TABLE.iter().find_map(|span| span.row(number))
}

/// One entry of the data dictionary.
#[derive(Debug, PartialEq)]
pub struct Entry<Q> {
    row: Row,
    quantity: PhantomData<Q>,
}

impl<Q> Clone for Entry<Q> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<Q> Copy for Entry<Q> {}

impl<Q: Carried> Entry<Q> {
    const fn new(number: u16, steps: f64) -> Self {
        let row = Row { number, powers: Q::POWERS, steps, zero: 0.0, most: i32::MAX };
        Self { row, quantity: PhantomData }
    }

    /// The DDI.
    #[must_use]
    pub const fn number(self) -> u16 {
        self.row.number
    }

    /// The integer for a quantity: value / resolution, rounded.
    ///
    /// # Errors
    /// When the quantity is not finite or negative; [`Error::NotForTheBus`] when it comes to more steps than
    /// the entry has (2^31 − 1; a million for temperatures), or to less than half a step without being 0,
    /// which would be sent as none.
    pub fn encode(self, quantity: Q) -> Result<i32, Error> {
        self.row.encode(quantity.to_base())
    }

    /// The quantity that an integer stands for: integer × resolution.
    ///
    /// # Errors
    /// When it is negative, which none of these quantities can be (a bin may send it when its scale is off);
    /// [`Error::NotForTheBus`] when it is more than the entry's most.
    pub fn decode(self, steps: i32) -> Result<Q, Error> {
        self.row.decode(steps).map(Q::from_base)
    }
}

#[cfg(test)]
mod tests;
