//! How long is it good? Batches of every tank on one timeline, over all orders.
//!
//! Wanted, in this order: (1) all seed treated within the shifts, else as much as possible; (2) least living product
//! poured; (3) fewest mixes, of all tanks; (4) earliest finish; (5) least sum of squared fills; then the sets' ranks, fewest
//! sets, larger fills first.
//!
//! **How the rules are read**
//! - Orders run in their order; what is not treated is the end of the line, never an order in the middle.
//! - A mix starts on a whole second, in shift time, wholly within one shift, after a changeover and never beside it. Tanks
//!   that need a mix at one moment are mixed together, and with them what spoils while the treater waits for it; the treater
//!   waits for the slowest. A tank is mixed only where the next seed needs it.
//! - The treater runs whenever it can. On purpose it waits only for a later shift to begin, when a pot life then lasts for
//!   more work. Nothing is mixed that would spoil unused.
//! - A tank of whole sets goes on until they are used up, expired, or the recipe ends. Its lines are full afterwards,
//!   unless liquid was left when it expired, or the recipe changes. So a larger fill than can be used is possible, where the
//!   sets of the next mix then come out even.
//! - A measured mix is as much as is used of it until the tank's next one; none is left, and lines stay full. It may end
//!   before it must where another tank is mixed too, or as late in a shift as a mix still fits; nowhere else, so no day is
//!   ended early and no other mix is left to spoil for the sake of later fills.
//! - A topped-up tank makes each refill ready beside running: poured in when the one before is used up, mixed in the last
//!   whole seconds of shift time before that. Its fills are alike. It has no pot life and no sets.
//! - All sizes of one product may go into one mix. Never more sets are opened than are on the shelf; where seed is left
//!   untreated for want of them, the summary says of which tank.
//! - Without shifts a pot life is not looked at, and nothing is said of instants.
//!
//! **What is proven.** [`Proof::Proven`]: within these rules no plan is better in (1) to (4). It can be proven of one tank
//! of whole sets or with a pot life that ends within the shifts (30 of them at most), beside up to three measured tanks that
//! stop the treater, and of measured tanks alone: where the search ends within its bound of work. One tank is proven
//! up to 60 mixes and more, with a second one some 16. (5) is exact for whole sets alone; measured fills are evened out
//! by moving one stop at a time. Everything else is a valid plan, and [`Proof::Bounded`].
//!
//! Instants nearer than a microsecond are one; volumes within 1e-9 of a tank's capacity are nothing.

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
mod order;
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
use fill::{Fills, Tops};

/// More mixes than this are planned well, but seldom proven.
const EXACT_MIXES: f64 = 150.0;

/// And more than these, where tanks stand side by side.
const EXACT_BESIDE: f64 = 30.0;

/// Fills of one tank: where there are more, they are a choice of all.
const MOST_FILLS: usize = 2048;

/// How much working memory a job needs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Room {
    /// Numbers, exactly.
    pub numbers: usize,
    /// Fills, at least; more than 8 192 per tank with sets are of little use.
    pub fills: usize,
    /// One per batch; start with this, at most [`MAX_MIXES`], and give more on [`Error::TooMany`] [`Counted::Mixes`].
    pub pours: usize,
    /// Plans under comparison: any number will do, the search for the best plan goes as far as they last. These are for
    /// a tenth of a second; give more, if the plan comes out [`Proof::Bounded`] and time matters less.
    pub labels: usize,
    /// Tank contents: labels × tanks.
    pub contents: usize,
}

impl Room {
    /// For a job.
    #[must_use]
    pub fn of(job: &Job<'_>) -> Self {
        // Each is given as much as the one that needs most.
        let (mut tables, mut most) = (0, 0);
        for (index, tank) in job.tanks.iter().enumerate() {
            let sizes = fill::sizes(tank);
            if !sizes.is_empty() {
                tables += 1;
                most = Fills::room(sizes, Tops::of(job, index, tank), MOST_FILLS).max(most);
            }
        }
        let labels = labels(job);
        let contents = labels * job.tanks.len();
        Self {
            numbers: numbers(job),
            fills: tables * most,
            pours: 1024 + 2 * job.orders.len(),
            labels,
            contents,
        }
    }
}

fn numbers(job: &Job<'_>) -> usize {
    let (orders, tanks) = (job.orders.len(), job.tanks.len());
    line::numbers(orders, tanks) + bound::numbers(orders, tanks) + job.shifts.len() + 1
}

/// By how many mixes the job will take: beyond [`EXACT_MIXES`] no search ends, and a first plan needs few; beside other
/// tanks few plans are alike, and the search ends only where they all find room.
fn labels(job: &Job<'_>) -> usize {
    let tanks = job.tanks.len().max(1);
    let mut mixes = 0.0;
    for (needs, order) in job.needs.chunks(tanks).zip(job.orders) {
        for (need, tank) in needs.iter().zip(job.tanks) {
            mixes += need.map_or(0.0, |need| need.per_mass.value * order.mass.value / tank.capacity.value);
        }
    }
    let labels = if mixes > EXACT_MIXES {
        4096.0
    } else if tanks > 1 && (4.0..=EXACT_BESIDE).contains(&mixes) {
        24_576.0
    } else {
        (400.0 * mixes).clamp(512.0, 24_576.0)
    };
    whole(labels).unwrap_or(512).min(131_072 / tanks)
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
fn tanks(set: u32) -> Tanks {
    Tanks(set)
}

struct Tanks(u32);

impl Iterator for Tanks {
    type Item = usize;
    fn next(&mut self) -> Option<usize> {
        let first = usize::try_from(self.0.trailing_zeros()).ok().filter(|_| self.0 != 0)?;
        self.0 &= self.0.wrapping_sub(1);
        Some(first)
    }
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
