//! Mistakes between plain quantities must not compile either. Of these the compiler tells powers of base units,
//! now of one base and now of another, so only its refusal is held here, beside code that differs by nothing
//! but the mistake.
//!
//! A unit of seeds is a number, not a mass:
//!
//! ```
//! # use hilum::{quantity::{Seeds, seeds::seed}, seed::UnitOfSeeds};
//! assert!(UnitOfSeeds::new(Seeds::new::<seed>(140_000.0)).is_ok());
//! ```
//! ```compile_fail,E0308
//! # use hilum::{quantity::{Mass, mass::pound}, seed::UnitOfSeeds};
//! assert!(UnitOfSeeds::new(Mass::new::<pound>(50.0)).is_ok());
//! ```
//!
//! A density is a mass per volume, not a volume per mass:
//!
//! ```
//! # use hilum::{quantity::{Mass, Volume, mass::kilogram, volume::liter}, rate::Density};
//! # let (mass, volume) = (Mass::new::<kilogram>(1.04), Volume::new::<liter>(1.0));
//! assert!(Density::new(mass / volume).is_ok());
//! ```
//! ```compile_fail,E0308
//! # use hilum::{quantity::{Mass, Volume, mass::kilogram, volume::liter}, rate::Density};
//! # let (mass, volume) = (Mass::new::<kilogram>(1.04), Volume::new::<liter>(1.0));
//! assert!(Density::new(volume / mass).is_ok());
//! ```
//!
//! Seeds are no pure number: a volume per seed is not a volume:
//!
//! ```
//! # use hilum::quantity::{Seeds, Volume, VolumePerSeed, seeds::seed, volume::milliliter};
//! let dose: VolumePerSeed = Volume::new::<milliliter>(36.0) / Seeds::new::<seed>(140_000.0);
//! ```
//! ```compile_fail,E0308
//! # use hilum::quantity::{Seeds, Volume, VolumePerSeed, seeds::seed, volume::milliliter};
//! let dose: Volume = Volume::new::<milliliter>(36.0) / Seeds::new::<seed>(140_000.0);
//! ```
//!
//! Two points on the temperature scale have a difference, but no sum:
//!
//! ```
//! # use hilum::quantity::Temperature;
//! let warmer = Temperature::from_celsius(25.0) - Temperature::from_celsius(10.0);
//! ```
//! ```compile_fail,E0308
//! # use hilum::quantity::Temperature;
//! let warmer = Temperature::from_celsius(25.0) + Temperature::from_celsius(10.0);
//! ```
