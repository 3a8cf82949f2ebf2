//! Are they still alive?
//!
//! How many living cells land on each seed, and what dose or titre it takes; how many are left after a
//! time in store; how long the seed may wait before it is planted; and what a laboratory's counts say
//! about the rate at which cells die.
//!
//! No survival curve has default parameters: they are the maker's or the laboratory's. Counts are
//! estimates, not a promise of potency.
//!
//! ```
//! use hilum::quantity::{Cells, Seeds, Temperature, TemperatureDifference, Time};
//! use hilum::quantity::{cells::cell, seeds::seed, temperature_difference::kelvin, time::day};
//! use hilum::rate::PerSeed;
//! use hilum::viability::{Crossing, DecimalReduction, Model, Period, Reference, Survival};
//! # fn main() -> Result<(), hilum::Error> {
//! // Worked by hand: D = 60 d at 10 °C, z = 20 K. 30 °C for 3 d ages the cells like 30 d at 10 °C. From
//! // 1e6 to 1e5 CFU/seed is one D, so 30 d at 10 °C are left.
//! let survival = Survival::new(
//!     Model::LogLinear(DecimalReduction::new(Time::new::<day>(60.0))?),
//!     Some(Reference::new(Temperature::from_celsius(10.0), TemperatureDifference::new::<kelvin>(20.0))?),
//! );
//! let storage = [
//!     Period::new(Time::new::<day>(3.0), Some(Temperature::from_celsius(30.0)))?,
//!     Period::new(Time::new::<day>(30.0), Some(Temperature::from_celsius(10.0)))?,
//! ];
//! let at_treating = PerSeed::new(Cells::new::<cell>(1e6) / Seeds::new::<seed>(1.0))?;
//! let minimum = PerSeed::new(Cells::new::<cell>(1e5) / Seeds::new::<seed>(1.0))?;
//! let Crossing::At(time) = survival.crossing(at_treating, minimum, &storage) else { panic!() };
//! assert!((time.get::<day>() - 33.0).abs() < 2.0 / 86_400.0);
//! # Ok(()) }
//! ```

mod fit;
mod keeping;
mod metals;
pub mod storage;
mod survival;
mod titre;

pub use fit::{Fit, FitErrors, Sample, fit_log_linear};
pub use keeping::{Because, Crossing, Life, PlantBy, plant_by};
pub use metals::is_metal;
pub use survival::{
    DecimalReduction, Model, Period, Reference, Survival, TwoPhase, WeibullScale, WeibullShape,
};
pub use titre::{Titre, TitrePerMass, TitrePerVolume};
