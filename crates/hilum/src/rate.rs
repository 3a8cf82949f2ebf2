//! What does the label mean?
//!
//! One dose is stated per 100 lb, per 100 kg, per bushel, per seed unit, per seed or per area. Here each
//! basis is a type, [`PerMass`], [`PerSeed`] or [`PerArea`], of a substance: [`Liquid`] product, [`Dry`]
//! product, [`Active`] ingredient or living [`CellCount`]. They convert by the seed's size and the sowing
//! rate; a dose per bushel is per mass, a dose per unit of seeds is per seed.
//!
//! ```
//! use hilum::quantity::{Mass, Seeds, Volume, mass::{hundredweight, pound}, seeds::seed, volume::fluid_ounce};
//! use hilum::rate::{PerMass, RatePerMass, RatePerSeed};
//! use hilum::seed::{SeedSize, UnitOfSeeds};
//! # fn main() -> Result<(), hilum::Error> {
//! // Worked by hand: 2.5 fl oz/cwt on seed of 2,800 seeds/lb is 2.5 × 140,000 / 280,000 = 1.25 fl oz per unit.
//! let label: RatePerMass = PerMass::new(Volume::new::<fluid_ounce>(2.5) / Mass::new::<hundredweight>(1.0))?;
//! let size = SeedSize::new(Seeds::new::<seed>(2_800.0) / Mass::new::<pound>(1.0))?;
//! let unit = UnitOfSeeds::new(Seeds::new::<seed>(140_000.0))?;
//! assert!((label.per_seed(size).per_unit(unit).get::<fluid_ounce>() - 1.25).abs() < 1e-12);
//! # Ok(()) }
//! ```
//!
//! A dose per seed is not a dose per mass:
//!
//! ```compile_fail,E0308
//! # use hilum::rate::{RatePerMass, RatePerSeed};
//! # use hilum::quantity::{Mass, Volume};
//! fn tank(per_seed: RatePerSeed, seed: Mass) -> Result<Volume, hilum::Error> {
//!     RatePerMass::needed(per_seed, seed)
//! }
//! ```

mod active;
mod agreement;

pub use active::{ActiveContent, Content, Density};
pub use agreement::{Agreement, WORTH_A_NOTE, WORTH_A_WARNING};

use core::fmt::Debug;
use core::marker::PhantomData;

use crate::error::{Argument, Error, OneNumber, Range, given, positive};
use crate::quantity::{
    Cells, CellsPerArea, CellsPerMass, CellsPerSeed, Mass, MassPerArea, MassPerSeed, Ratio, Seeds, Volume,
    VolumePerArea, VolumePerMass, VolumePerSeed, base,
};
use crate::seed::{Bushel, SeedSize, Sown, UnitOfSeeds};

/// What is dosed.
pub trait Substance: Copy + Debug + PartialEq + PartialOrd + sealed::Substance {
    /// How an amount of it is measured.
    type Amount;
    /// A dose per mass of seed.
    type PerMass;
    /// A dose per seed.
    type PerSeed;
    /// A dose per area.
    type PerArea;
}

mod sealed {
    /// Quantities to base units and back.
    pub trait Substance: Sized {
        fn amount(base: f64) -> <Self as super::Substance>::Amount
        where
            Self: super::Substance;
        fn per_mass(base: f64) -> <Self as super::Substance>::PerMass
        where
            Self: super::Substance;
        fn per_seed(base: f64) -> <Self as super::Substance>::PerSeed
        where
            Self: super::Substance;
        fn per_area(base: f64) -> <Self as super::Substance>::PerArea
        where
            Self: super::Substance;
        fn of_amount(amount: <Self as super::Substance>::Amount) -> f64
        where
            Self: super::Substance;
        fn of_per_mass(rate: <Self as super::Substance>::PerMass) -> f64
        where
            Self: super::Substance;
        fn of_per_seed(rate: <Self as super::Substance>::PerSeed) -> f64
        where
            Self: super::Substance;
        fn of_per_area(rate: <Self as super::Substance>::PerArea) -> f64
        where
            Self: super::Substance;
    }
}

macro_rules! substance {
    ($(#[$doc:meta])* $name:ident: $amount:ident, $per_mass:ident, $per_seed:ident, $per_area:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
        pub enum $name {}
        impl Substance for $name {
            type Amount = $amount;
            type PerMass = $per_mass;
            type PerSeed = $per_seed;
            type PerArea = $per_area;
        }
        impl sealed::Substance for $name {
            fn amount(base: f64) -> $amount { base!($amount, base) }
            fn per_mass(base: f64) -> $per_mass { base!($per_mass, base) }
            fn per_seed(base: f64) -> $per_seed { base!($per_seed, base) }
            fn per_area(base: f64) -> $per_area { base!($per_area, base) }
            fn of_amount(amount: $amount) -> f64 { amount.value }
            fn of_per_mass(rate: $per_mass) -> f64 { rate.value }
            fn of_per_seed(rate: $per_seed) -> f64 { rate.value }
            fn of_per_area(rate: $per_area) -> f64 { rate.value }
        }
    };
}

substance! {
    /// A product measured by volume.
    Liquid: Volume, VolumePerMass, VolumePerSeed, VolumePerArea
}
substance! {
    /// A product measured by mass: peat, powder, or a liquid that is weighed.
    Dry: Mass, Ratio, MassPerSeed, MassPerArea
}
substance! {
    /// An active ingredient, by mass.
    Active: Mass, Ratio, MassPerSeed, MassPerArea
}
substance! {
    /// Living cells, as colony-forming units.
    CellCount: Cells, CellsPerMass, CellsPerSeed, CellsPerArea
}

/// A dose per mass of seed.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
#[repr(transparent)]
pub struct PerMass<S>(pub(crate) f64, PhantomData<S>);
/// A dose per seed.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
#[repr(transparent)]
pub struct PerSeed<S>(pub(crate) f64, PhantomData<S>);
/// A dose per area sown.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
#[repr(transparent)]
pub struct PerArea<S>(pub(crate) f64, PhantomData<S>);

macro_rules! one_number {
    ($($dose:ident $argument:ident),+) => { $(
        impl<S: Copy> OneNumber for $dose<S> {
            const ARGUMENT: Argument = Argument::$argument;
            const RANGE: Range = Range::Positive;
        }
    )+ };
}
one_number!(PerMass RatePerMass, PerSeed RatePerSeed, PerArea RatePerArea);

/// Liquid product per mass of seed: fl oz/cwt, mL/100 kg.
pub type RatePerMass = PerMass<Liquid>;
/// Liquid product per seed: µL/seed.
pub type RatePerSeed = PerSeed<Liquid>;
/// Liquid product per area: mL/ha.
pub type RatePerArea = PerArea<Liquid>;
/// Active ingredient per mass of seed: mg/kg.
pub type ActivePerMass = PerMass<Active>;
/// Active ingredient per seed: mg/seed.
pub type ActivePerSeed = PerSeed<Active>;
/// Active ingredient per area: g/ha.
pub type ActivePerArea = PerArea<Active>;

impl<S: Copy> PerMass<S> {
    pub(crate) const fn of(base: f64) -> Self {
        Self(base, PhantomData)
    }

    /// The same dose on one seed: rate / size.
    #[must_use]
    pub fn per_seed(self, size: SeedSize) -> PerSeed<S> {
        PerSeed::of(self.0 / size.0)
    }

    /// The seed size at which this dose and a dose per seed are the same: rate / dose per seed. A label
    /// that states both was written for seed of that size.
    #[must_use]
    pub fn implied_size(self, same: PerSeed<S>) -> SeedSize {
        SeedSize(self.0 / same.0)
    }

    /// By how much this statement of a dose differs from the one that governs: stated / governing − 1.
    #[must_use]
    pub fn difference(self, governing: Self) -> f64 {
        self.0 / governing.0 - 1.0
    }
}

impl<S: Substance> PerMass<S> {
    /// From a label: an amount over a mass of seed.
    ///
    /// # Errors
    /// When the rate is not finite, not more than 0, or beyond 1e-30…1e30 base units.
    pub fn new(rate: S::PerMass) -> Result<Self, Error> {
        positive(Argument::RatePerMass, S::of_per_mass(rate)).map(Self::of)
    }

    /// The plain quantity.
    #[must_use]
    pub fn get(self) -> S::PerMass {
        S::per_mass(self.0)
    }

    /// From a label that states an amount per bushel: amount / bushel.
    ///
    /// # Errors
    /// When the amount is not finite or not more than 0.
    pub fn from_bushel(amount: S::Amount, bushel: Bushel) -> Result<Self, Error> {
        given(Argument::RatePerBushel, S::of_amount(amount)).map(|amount| Self::of(amount / bushel.0))
    }

    /// The same dose per bushel: rate × bushel.
    #[must_use]
    pub fn per_bushel(self, bushel: Bushel) -> S::Amount {
        S::amount(self.0 * bushel.0)
    }

    /// Product for a mass of seed: rate × mass.
    ///
    /// # Errors
    /// When the mass is not finite or not more than 0.
    pub fn needed(self, seed: Mass) -> Result<S::Amount, Error> {
        given(Argument::SeedMass, seed.value).map(|kg| S::amount(self.0 * kg))
    }

    /// The seed that an amount of product treats: amount / rate.
    ///
    /// # Errors
    /// When the amount is not finite or not more than 0.
    pub fn treats(self, product: S::Amount) -> Result<Mass, Error> {
        given(Argument::ProductAmount, S::of_amount(product)).map(|amount| base!(Mass, amount / self.0))
    }
}

impl<S: Copy> PerSeed<S> {
    pub(crate) const fn of(base: f64) -> Self {
        Self(base, PhantomData)
    }

    /// The same dose per mass of seed: dose × size.
    #[must_use]
    pub fn per_mass(self, size: SeedSize) -> PerMass<S> {
        PerMass::of(self.0 * size.0)
    }

    /// The same dose per area sown: dose × seeds sown per area.
    #[must_use]
    pub fn per_area(self, sown: Sown) -> PerArea<S> {
        PerArea::of(self.0 * sown.0)
    }
}

impl<S: Substance> PerSeed<S> {
    /// From an amount over a number of seeds.
    ///
    /// # Errors
    /// When the dose is not finite, not more than 0, or beyond 1e-30…1e30 base units.
    pub fn new(dose: S::PerSeed) -> Result<Self, Error> {
        positive(Argument::RatePerSeed, S::of_per_seed(dose)).map(Self::of)
    }

    /// The plain quantity.
    #[must_use]
    pub fn get(self) -> S::PerSeed {
        S::per_seed(self.0)
    }

    /// From a label that states an amount per unit of seeds: amount / unit.
    ///
    /// # Errors
    /// When the amount is not finite or not more than 0.
    pub fn from_unit(amount: S::Amount, unit: UnitOfSeeds) -> Result<Self, Error> {
        given(Argument::RatePerUnit, S::of_amount(amount)).map(|amount| Self::of(amount / unit.0))
    }

    /// The same dose per unit of seeds: dose × unit.
    #[must_use]
    pub fn per_unit(self, unit: UnitOfSeeds) -> S::Amount {
        S::amount(self.0 * unit.0)
    }

    /// Product for a number of seeds: dose × seeds.
    ///
    /// # Errors
    /// When the number is not finite or not more than 0.
    pub fn needed(self, seeds: Seeds) -> Result<S::Amount, Error> {
        given(Argument::Seeds, seeds.value).map(|n| S::amount(self.0 * n))
    }
}

impl<S: Copy> PerArea<S> {
    pub(crate) const fn of(base: f64) -> Self {
        Self(base, PhantomData)
    }

    /// The same dose on one seed: dose / seeds sown per area.
    #[must_use]
    pub fn per_seed(self, sown: Sown) -> PerSeed<S> {
        PerSeed::of(self.0 / sown.0)
    }
}

impl<S: Substance> PerArea<S> {
    /// From an amount over an area.
    ///
    /// # Errors
    /// When the dose is not finite, not more than 0, or beyond 1e-30…1e30 base units.
    pub fn new(dose: S::PerArea) -> Result<Self, Error> {
        positive(Argument::RatePerArea, S::of_per_area(dose)).map(Self::of)
    }

    /// The plain quantity.
    #[must_use]
    pub fn get(self) -> S::PerArea {
        S::per_area(self.0)
    }
}
