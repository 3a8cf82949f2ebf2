//! How long is it good? Batches of every tank on one timeline, over all orders.

mod bound;
mod check;
mod clock;
mod error;
mod expand;
mod fill;
mod greedy;
mod input;
mod level;
mod line;
mod node;
mod output;
mod plan;
mod search;
mod sort;
mod start;
mod step;
mod store;
mod write;

pub use clock::{most_treatable, work_between};
pub use error::{Counted, Error, Field};
pub use fill::Fill;
pub use input::{
    Filling, Job, MAX_MIXES, MAX_ORDERS, MAX_SHIFTS, MAX_SIZES, MAX_TANKS, Need, Order, Refill, SetSize,
    Shift, Tank,
};
pub use output::{Mix, Portion, Proof, Summary, Times};
pub use plan::{Plan, plan};
pub use step::{Content, Pour};
pub use store::Label;

use crate::math::ceil;

/// How much working memory a job needs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Room {
    /// Numbers, exactly.
    pub numbers: usize,
    /// Fills, at least; more than 8 192 per tank with sets are of little use.
    pub fills: usize,
    /// One per batch; start with this, at most [`MAX_MIXES`], and give more on [`Error::TooMany`] [`Counted::Mixes`].
    pub pours: usize,
    /// Plans under comparison: any number will do, the search for the best plan goes as far as they last.
    /// Start with this, and give more if the plan comes out [`Proof::Bounded`] and time matters less.
    pub labels: usize,
    /// Tank contents: labels × tanks.
    pub contents: usize,
}

impl Room {
    /// For a job.
    #[must_use]
    pub fn of(job: &Job<'_>) -> Self {
        let sets = job.tanks.iter().filter(|tank| !fill::sizes(tank).is_empty()).count();
        let numbers = line::numbers(job.orders.len(), job.tanks.len())
            + bound::numbers(job.orders.len(), job.tanks.len())
            + job.shifts.len()
            + 1;
        let labels = 4096;
        let contents = labels * job.tanks.len();
        Self { numbers, fills: sets * 2048, pours: 1024 + 2 * job.orders.len(), labels, contents }
    }
}

/// Working memory, given by the caller.
#[derive(Debug)]
pub struct Memory<'a> {
    /// See [`Room::numbers`].
    pub numbers: &'a mut [f64],
    /// See [`Room::fills`].
    pub fills: &'a mut [Fill],
    /// See [`Room::pours`].
    pub pours: &'a mut [Pour],
    /// See [`Room::labels`].
    pub labels: &'a mut [Label],
    /// See [`Room::contents`].
    pub contents: &'a mut [Content],
}

/// The tanks of a set.
fn tanks(set: u32) -> impl Iterator<Item = usize> + Clone {
    (0..MAX_TANKS).filter(move |tank| set & (1 << tank) != 0)
}

/// A whole number as one, where it is below 2^32.
fn whole(value: f64) -> Option<usize> {
    let value = ceil(value);
    if !(0.0..4_294_967_296.0).contains(&value) {
        return None;
    }
    // 2^52 added leaves the whole number in the low bits.
    usize::try_from((value + 4_503_599_627_370_496.0).to_bits() & 0xFFFF_FFFF).ok()
}
