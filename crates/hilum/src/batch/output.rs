//! What the planner answers.

use super::MAX_SIZES;
use crate::quantity::{Mass, Time, Volume};

/// A batch of one tank.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Mix {
    /// Index of the tank.
    pub tank: usize,
    /// Counts from 1 within the tank.
    pub number: u32,
    /// Only with shifts.
    pub times: Option<Times>,
    /// All that is poured: applied + hold_up + discarded.
    pub mixed: Volume,
    /// Whole sets of each size; 0 where the tank is measured.
    pub sets: [u32; MAX_SIZES],
    /// What goes on seed.
    pub applied: Volume,
    /// What fills empty lines.
    pub hold_up: Volume,
    /// What is left and thrown away.
    pub discarded: Volume,
}

/// The instants of a batch, since the same instant as the shifts'.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Times {
    /// Mixing starts, on a whole second.
    pub mix_at: Time,
    /// It can be used.
    pub ready_at: Time,
    /// mix_at + pot life, rounded down to a whole second.
    pub use_by: Option<Time>,
    /// Its last seed is treated.
    pub done_at: Time,
}

/// Seed of one order that is treated from one mix.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Portion {
    /// Index of the mix.
    pub mix: usize,
    /// Index of the order.
    pub order: usize,
    /// Seed.
    pub mass: Mass,
}

/// Is a plan the best one?
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Proof {
    /// None within the rules is better.
    Proven,
    /// Valid; a bound stopped the search, or the job is of a kind that is not searched in full.
    Bounded,
}

/// How far a plan comes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Summary {
    /// Seed treated, from the first order on.
    pub treated: Mass,
    /// Is that all of it?
    pub all_treated: bool,
    /// When the last seed is treated; only with shifts.
    pub finish: Option<Time>,
    /// Best or not.
    pub proof: Proof,
    /// Tanks whose shelf does not suffice: for want of their sets less seed is treated than could be; bit 0 is tank 0.
    pub short_of_stock: u32,
}
