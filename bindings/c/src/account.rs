//! What did I really apply?

pub mod achieved;
pub mod used;
