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
mod search;
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
pub use step::{Content, Pour};
pub use store::Label;

use crate::math::ceil;
use crate::quantity::{Mass, Time, mass::kilogram, time::second};
use fill::Fills;
use greedy::Reach;
use step::Plant;

/// Stops that are looked at before the plan is called bounded.
const LOOKS: u32 = 400_000;

/// Stops that are looked at for a first plan.
const FIRST_LOOKS: f64 = 3_000.0;

/// Tanks that may be mixed beside another before they are empty: every one doubles the choices.
const MOST_FOLLOWERS: u32 = 3;

/// Plans that are followed side by side, at most.
const WIDEST: u32 = 24;

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

/// A plan, ready to be written out.
#[derive(Debug)]
pub struct Plan<'a> {
    plant: Plant<'a>,
    pours: &'a [Pour],
    reach: Reach,
    proof: Proof,
}

/// Plans the batches of a job.
///
/// # Errors
/// [`Error`]: a number that cannot be, too many of something, a tank that no whole set fits.
pub fn plan<'a>(job: Job<'a>, memory: Memory<'a>) -> Result<Plan<'a>, Error> {
    check::job(&job)?;
    let room = Room::of(&job);
    let (given, needed) = (memory.numbers.len(), room.numbers);
    let (numbers, before) = memory
        .numbers
        .split_at_mut_checked(line::numbers(job.orders.len(), job.tanks.len()))
        .filter(|(_, rest)| rest.len() > job.shifts.len())
        .ok_or(Error::Memory { given, needed })?;
    let line = line::Line::new(job, numbers).ok_or(Error::Memory { given, needed })?;
    let (before, bounds) =
        before.split_at_mut_checked(job.shifts.len() + 1).ok_or(Error::Memory { given, needed })?;
    let clock = clock::Clock::new(job.shifts, before);
    let fills = all_fills(&job, memory.fills)?;
    let plant = Plant { tanks: job.tanks, line, clock, fills };
    let mut reach = greedy::plan(&plant, memory.pours)?;
    let (leader, all) = roles(&job);
    let followers = first_of(all, MOST_FOLLOWERS);
    let bound = bound::Bound::new(&plant, leader, bounds).ok_or(Error::Memory { given, needed })?;
    let store = store::Store::new(memory.labels, memory.contents, job.tanks.len(), line.end());
    let width = width(bound.least(&node::Node::START).mixes, store.room());
    let choices = expand::Choices { plant: &plant, leader, followers };
    let mut search = search::Search::new(choices, bound, store, &reach.node);
    if width > 0 {
        search.beam(width);
        take(&search, memory.pours, &mut reach);
    }
    let mut proof = search.run(LOOKS);
    take(&search, memory.pours, &mut reach);
    if limited(&plant) > 1 || followers != all {
        proof = Proof::Bounded;
    }
    let (pours, rest) = memory.pours.split_at_mut_checked(reach.pours).unwrap_or((&mut [], &mut []));
    if let Some(scratch) = rest.get_mut(..reach.pours) {
        reach.node = level::level(&plant, pours, scratch, reach.node);
    }
    Ok(Plan { plant, pours, reach, proof })
}

/// Tanks of whole sets, and those whose pot life ends before the last shift does.
fn limited(plant: &Plant<'_>) -> usize {
    let expires =
        |tank| plant.pot_life(tank).is_some_and(|life| plant.clock.expiry(0.0, life) < plant.clock.total());
    (0..plant.tanks.len())
        .filter(|tank| plant.tank(*tank).is_some_and(|it| !fill::sizes(it).is_empty()) || expires(*tank))
        .count()
}

/// Plans that are followed side by side, where so many mixes are due at least.
fn width(mixes: f64, room: u32) -> u32 {
    let width = crate::math::floor((f64::from(room) / (2.0 * mixes + 16.0)).min(FIRST_LOOKS / (mixes + 1.0)));
    whole(width).and_then(|width| u32::try_from(width).ok()).unwrap_or(0).min(WIDEST)
}

/// So many tanks of a set.
fn first_of(set: u32, most: u32) -> u32 {
    tanks(set).take(usize::try_from(most).unwrap_or(0)).map(|tank| 1 << tank).sum()
}

/// Takes over what was found.
fn take(search: &search::Search<'_, '_>, pours: &mut [Pour], reach: &mut Reach) {
    if let Some((pours, node)) = search.trace(pours) {
        *reach = Reach { pours, node };
    }
}

/// The tank whose sets are chosen, and those that may be mixed beside it.
fn roles(job: &Job<'_>) -> (Option<usize>, u32) {
    let leader = job.tanks.iter().position(|tank| !fill::sizes(tank).is_empty());
    let stops = |tank: &Tank<'_>| {
        fill::sizes(tank).is_empty() && (tank.refill == Refill::WhenEmpty || tank.pot_life.is_some())
    };
    let followers = job.tanks.iter().enumerate().filter(|(_, tank)| stops(tank) && !job.shifts.is_empty());
    let all = followers.map(|(tank, _)| 1 << tank).sum();
    (leader, all)
}

fn all_fills<'a>(job: &Job<'a>, mut memory: &'a mut [Fill]) -> Result<[Fills<'a>; MAX_TANKS], Error> {
    let mut all = [Fills::NONE; MAX_TANKS];
    let mut left = job.tanks.iter().filter(|tank| !fill::sizes(tank).is_empty()).count();
    for (index, (tank, cell)) in job.tanks.iter().zip(&mut all).enumerate() {
        let sizes = fill::sizes(tank);
        if sizes.is_empty() {
            continue;
        }
        let column = job.needs.iter().skip(index).step_by(job.tanks.len());
        let share = column.flatten().map(|need| need.living).fold(0.0, f64::max);
        let part = memory.len() / left.max(1);
        let (mine, rest) =
            core::mem::take(&mut memory).split_at_mut_checked(part).unwrap_or((&mut [], &mut []));
        (*cell, _) = Fills::new(sizes, share * tank.capacity.value, mine)?;
        memory = rest;
        left -= 1;
    }
    Ok(all)
}

impl Plan<'_> {
    /// How far it comes.
    #[must_use]
    pub fn summary(&self) -> Summary {
        let clock = &self.plant.clock;
        let instant = |work| Time::new::<second>(clock.caller(clock.instant_of(work)));
        Summary {
            treated: Mass::new::<kilogram>(self.reach.node.position),
            all_treated: self.reach.node.position >= self.plant.line.end(),
            finish: (clock.has_shifts() && self.reach.node.position > 0.0)
                .then(|| instant(self.reach.node.cost.finish)),
            proof: self.proof,
            short_of_stock: write::short_of_stock(&self.plant, self.pours),
        }
    }

    /// Room that [`Plan::write`] needs for mixes and (at most) for portions.
    #[must_use]
    pub fn room(&self) -> (usize, usize) {
        let mixes = write::count(&self.plant, self.pours, self.reach.node.position);
        let mixes = whole(mixes).unwrap_or(usize::MAX);
        (mixes, mixes.saturating_add(self.plant.line.orders() * self.plant.tanks.len()))
    }

    /// Writes the mixes, and which seed each treats; returns how many of both.
    ///
    /// # Errors
    /// [`Error::TooMany`] if there is less room than [`Plan::room`] tells.
    pub fn write(&self, mixes: &mut [Mix], portions: &mut [Portion]) -> Result<(usize, usize), Error> {
        write::Writer::new(&self.plant, self.pours, self.reach.node.position, mixes, portions).write()
    }
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
