//! Are they still alive?

pub mod fit;
pub mod keeping;
pub mod survival;
pub mod titre;
