//! Are they still alive?
//!
//! How many living cells land on each seed, and what dose or titre it takes to land so many.

mod titre;

pub use titre::{Titre, TitrePerMass, TitrePerVolume};
