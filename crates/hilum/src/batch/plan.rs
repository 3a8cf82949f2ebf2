//! One plan, from the job to what can be written out.

use super::bound::{self, Bound};
use super::clock::Clock;
use super::expand::{Care, Choices};
use super::fill::{self, Fills, Keep, Tops};
use super::greedy::{self, Reach};
use super::line::{self, Line, SLACK};
use super::node::Node;
use super::search::{Aim, Effort, Search};
use super::step::Plant;
use super::store::Store;
use super::{
    Content, EXACT_MIXES, Error, Fill, Job, Label, MAX_TANKS, Memory, Mix, Portion, Pour, Proof, Refill,
    Summary, Tank, check, expand, level, order, tanks, whole, write,
};
use crate::math::floor;
use crate::quantity::{Mass, Time, mass::kilogram, time::second};

/// Mixes that are looked at before the plan is called bounded.
const LOOKS: Effort = Effort::up_to(400_000);

/// With more orders a look takes longer, and finds less.
const FEW_ORDERS: usize = 100;

/// The same, beside other tanks: there what is found late is a little earlier end, if anything.
const LOOKS_BESIDE: Effort = Effort { most: 400_000, in_vain: 120_000 };

/// And for more orders.
const LOOKS_AT_ORDERS: Effort = Effort { most: 400_000, in_vain: 20_000 };

/// And where more mixes than [`EXACT_MIXES`] are due: what the first look over the plans has not found is seldom found.
const LOOKS_AT_MANY: Effort = Effort::up_to(20_000);

/// To prove that no plan is better where there are few.
const LOOKS_AT_SHORT: Effort = Effort::up_to(1_000);

/// To prove that no plan is better, beside other tanks.
const LOOKS_TO_PROVE: Effort = Effort::up_to(400_000);

/// The same search where it proves nothing.
const LOOKS_AGAIN: Effort = Effort::up_to(200_000);

/// And for more even fills beside other tanks, when nothing better is to be found in all else.
const LOOKS_FOR_FILLS: Effort = Effort::up_to(20_000);

/// Mixes that are looked at for a first plan.
const FIRST_LOOKS: f64 = 3_000.0;

/// And at most; with more orders.
const BEAM_LOOKS: Effort = Effort::up_to(40_000);
const BEAM_LOOKS_AT_ORDERS: Effort = Effort::up_to(20_000);

/// Tanks that may be mixed beside another before they are empty: every one doubles the choices.
const MOST_FOLLOWERS: usize = 3;

/// Plans that are followed side by side, at most.
const WIDEST: u32 = 24;

/// A plan, ready to be written out.
#[derive(Debug)]
pub struct Plan<'a> {
    pub(super) plant: Plant<'a>,
    pub(super) pours: &'a [Pour],
    pub(super) reach: Reach,
    proof: Proof,
    looks: u32,
    short_of_stock: u32,
}

/// Plans the batches of a job.
///
/// # Errors
/// [`Error`]: a number that cannot be, too many of something, a tank that no whole set fits.
pub fn plan<'a>(job: Job<'a>, memory: Memory<'a>) -> Result<Plan<'a>, Error> {
    check::job(&job)?;
    let Memory { numbers, fills, pours, labels, contents } = memory;
    let short = Error::Memory { given: numbers.len(), needed: super::numbers(&job) };
    let Some((laid, bounds)) = Laid::new(job, numbers) else { return Err(short) };
    let mut desk = Desk { bounds, fills, pours, labels, contents };
    let mut keep = Keep::NoStock;
    let mut outcome = laid.attempt(&mut desk, keep)?;
    let mut short_of_stock = 0;
    if outcome.beyond_stock != 0 {
        // More than the shelf holds: plan again with what it does hold.
        keep = Keep::Stock;
        let within = laid.attempt(&mut desk, keep)?;
        if within.reach.node.position < outcome.reach.node.position * (1.0 - SLACK) {
            short_of_stock = outcome.beyond_stock;
        }
        outcome = Outcome { looks: within.looks.saturating_add(outcome.looks), ..within };
    }
    let plant = laid.plant(&all_fills(&job, desk.fills, keep)?, keep);
    let pours = desk.pours.get(..outcome.reach.pours).unwrap_or(&[]);
    Ok(Plan {
        plant,
        pours,
        reach: outcome.reach,
        proof: outcome.proof,
        looks: outcome.looks,
        short_of_stock,
    })
}

/// The job, before it is known which sets may be used.
#[derive(Clone, Copy)]
struct Laid<'a> {
    job: Job<'a>,
    line: Line<'a>,
    clock: Clock<'a>,
}

/// Working memory that every attempt uses anew.
struct Desk<'a> {
    bounds: &'a mut [f64],
    fills: &'a mut [Fill],
    pours: &'a mut [Pour],
    labels: &'a mut [Label],
    contents: &'a mut [Content],
}

#[derive(Clone, Copy)]
struct Outcome {
    reach: Reach,
    proof: Proof,
    looks: u32,
    /// Tanks of which more sets are opened than are on the shelf.
    beyond_stock: u32,
}

impl<'a> Laid<'a> {
    /// And the numbers that are left.
    fn new(job: Job<'a>, numbers: &'a mut [f64]) -> Option<(Self, &'a mut [f64])> {
        let lines = line::numbers(job.orders.len(), job.tanks.len());
        let (lines, rest) = numbers.split_at_mut_checked(lines)?;
        let (before, rest) = rest.split_at_mut_checked(job.shifts.len() + 1)?;
        Some((Self { job, line: Line::new(job, lines)?, clock: Clock::new(job.shifts, before) }, rest))
    }

    fn plant<'b>(&self, fills: &[Fills<'b>; MAX_TANKS], keep: Keep) -> Plant<'b>
    where
        'a: 'b,
    {
        Plant { tanks: self.job.tanks, line: self.line, clock: self.clock, fills: *fills, keep }
    }

    /// The tank whose sets are chosen: one with a pot life, if there is any.
    fn leader(&self) -> Option<usize> {
        let sets = |tank: &Tank<'_>| !fill::sizes(tank).is_empty();
        let tanks = self.job.tanks;
        let first = tanks.iter().position(|tank| sets(tank) && tank.pot_life.is_some());
        first.or_else(|| tanks.iter().position(sets))
    }

    fn attempt(&self, desk: &mut Desk<'_>, keep: Keep) -> Result<Outcome, Error> {
        let plant = self.plant(&all_fills(&self.job, &mut *desk.fills, keep)?, keep);
        if keep == Keep::NoStock {
            check::sets(&self.job, &plant.fills)?;
        }
        let reach = greedy::plan(&plant, desk.pours)?;
        let Some(bound) = Bound::new(&plant, self.leader(), desk.bounds) else {
            let needed = bound::numbers(self.job.orders.len(), self.job.tanks.len());
            return Err(Error::Memory { given: 0, needed });
        };
        // Labels are told apart by position: on the scale of what can be treated, not of what is asked.
        let store =
            Store::new(&mut *desk.labels, &mut *desk.contents, self.job.tanks.len(), reach.node.position);
        let mixes = bound.least(&Node::START).mixes;
        let all = followers(&self.job);
        let followers = tanks(all).take(MOST_FOLLOWERS).map(|tank| 1 << tank).sum();
        let choices = Choices { plant: &plant, leader: self.leader(), followers, care: Care::Quick };
        let search = Search::new(choices, bound, store, &reach.node);
        let mut hunt = Hunt { search, pours: desk.pours, reach };
        let beside = if all.count_ones() + u32::from(self.leader().is_some()) > 1 {
            Beside::Others
        } else {
            Beside::None
        };
        let complete = plant.fills.iter().all(|fills| fills.complete);
        let whole = followers == all && limited(&plant) <= 1 && complete && is_in_reach(&self.job, &plant);
        let again = if whole { LOOKS_TO_PROVE } else { LOOKS_AGAIN };
        let searched = self.searched(&mut hunt, mixes, beside, again);
        let (mut reach, looks) = (hunt.reach, hunt.search.all_looks());
        let proof = if whole { searched } else { Proof::Bounded };
        let (pours, scratch) = desk.pours.split_at_mut_checked(reach.pours).unwrap_or((&mut [], &mut []));
        if let Some(scratch) = scratch.get_mut(..reach.pours) {
            if let Some(tank) = self.leader() {
                reach.node = order::larger_first(&plant, tank, pours, scratch, &reach.node);
            }
            reach.node = level::level(&plant, pours, scratch, &reach.node);
        }
        let beyond_stock = write::beyond_stock(&plant, pours);
        Ok(Outcome { reach, proof, looks, beyond_stock })
    }

    fn searched(&self, hunt: &mut Hunt<'_, '_, '_>, mixes: f64, beside: Beside, again: Effort) -> Proof {
        if beside == Beside::Others && hunt.run(Aim::Fills, Care::Thorough, LOOKS_AT_SHORT) == Proof::Proven {
            return Proof::Proven;
        }
        let has_many_orders = self.job.orders.len() > FEW_ORDERS;
        hunt.follow(mixes, if has_many_orders { BEAM_LOOKS_AT_ORDERS } else { BEAM_LOOKS });
        let effort = if mixes > EXACT_MIXES {
            LOOKS_AT_MANY
        } else if has_many_orders {
            LOOKS_AT_ORDERS
        } else if beside == Beside::Others {
            LOOKS_BESIDE
        } else {
            return hunt.run(Aim::Fills, Care::Quick, LOOKS);
        };
        // All but the fills first, where these would take long.
        let mut proof = hunt.run(Aim::Time, Care::Quick, effort);
        if proof == Proof::Proven && beside == Beside::Others {
            // Where a better plan is nearly always found there is none: look everywhere.
            proof = hunt.run(Aim::Time, Care::Thorough, again);
        }
        if proof == Proof::Proven {
            hunt.run(Aim::Fills, Care::Quick, LOOKS_FOR_FILLS);
        }
        proof
    }
}

/// A search, and the best plan so far.
struct Hunt<'h, 'a, 'b> {
    search: Search<'a, 'b>,
    pours: &'h mut [Pour],
    reach: Reach,
}

impl Hunt<'_, '_, '_> {
    /// Follows the most promising plans.
    fn follow(&mut self, mixes: f64, effort: Effort) {
        let width = width(mixes, self.search.room());
        if width > 0 {
            self.search.beam(width, effort);
            self.take();
        }
    }

    fn run(&mut self, aim: Aim, care: Care, effort: Effort) -> Proof {
        let proof = self.search.run(aim, care, effort);
        self.take();
        proof
    }

    /// Takes over what was found.
    fn take(&mut self) {
        if let Some((pours, node)) = self.search.trace(self.pours) {
            self.reach = Reach { pours, node };
        }
    }
}

/// Do tanks stop the treater that may be mixed beside one another?
#[derive(Clone, Copy, PartialEq, Eq)]
enum Beside {
    None,
    Others,
}

/// Are there no more shifts and orders than are looked at for a better moment to mix?
fn is_in_reach(job: &Job<'_>, plant: &Plant<'_>) -> bool {
    let waits = job.shifts.len() <= expand::LATER_SHIFTS || expiring(plant) == 0;
    waits && (followers(job) == 0 || job.orders.len() <= expand::EARLIER_ORDERS)
}

/// Whether a tank's pot life ends before the last shift does.
fn expires(plant: &Plant<'_>, tank: usize) -> bool {
    plant.pot_life(tank).is_some_and(|life| plant.clock.expiry(0.0, life) < plant.clock.total())
}

/// Tanks whose pot life ends before the last shift does.
fn expiring(plant: &Plant<'_>) -> usize {
    (0..plant.tanks.len()).filter(|tank| expires(plant, *tank)).count()
}

/// Tanks of whole sets, and those whose pot life ends before the last shift does.
fn limited(plant: &Plant<'_>) -> usize {
    let sets = |tank| plant.tank(tank).is_some_and(|it| !fill::sizes(it).is_empty());
    (0..plant.tanks.len()).filter(|tank| sets(*tank) || expires(plant, *tank)).count()
}

/// Plans that are followed side by side, where so many mixes are due at least.
fn width(mixes: f64, room: u32) -> u32 {
    let most = (f64::from(room) / (2.0 * mixes + 16.0)).min(FIRST_LOOKS / (mixes + 1.0));
    // Short plans are found at once by the search itself.
    let width = floor(most.min(0.5 * mixes));
    whole(width).and_then(|width| u32::try_from(width).ok()).unwrap_or(0).min(WIDEST)
}

/// Measured tanks for which the treater stops: they may be mixed beside another before they are empty.
fn followers(job: &Job<'_>) -> u32 {
    let stops = |tank: &Tank<'_>| {
        fill::sizes(tank).is_empty() && (tank.refill == Refill::WhenEmpty || tank.pot_life.is_some())
    };
    let followers = job.tanks.iter().enumerate().filter(|(_, tank)| stops(tank) && !job.shifts.is_empty());
    followers.map(|(tank, _)| 1 << tank).sum()
}

fn all_fills<'a>(job: &Job<'_>, memory: &'a mut [Fill], keep: Keep) -> Result<[Fills<'a>; MAX_TANKS], Error> {
    let mut all = [Fills::NONE; MAX_TANKS];
    let tables = job.tanks.iter().filter(|tank| !fill::sizes(tank).is_empty()).count();
    let mut parts = memory.chunks_exact_mut((memory.len() / tables.max(1)).max(1));
    for (index, (tank, cell)) in job.tanks.iter().zip(&mut all).enumerate() {
        let sizes = fill::sizes(tank);
        if !sizes.is_empty() {
            let tops = Tops::of(job, index, tank);
            *cell = Fills::new(sizes, tops, keep, parts.next().unwrap_or(&mut []))?;
        }
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
            all_treated: self.reach.node.position >= self.plant.line.end() * (1.0 - SLACK),
            finish: (clock.has_shifts() && self.reach.node.position > 0.0)
                .then(|| instant(self.reach.node.cost.finish)),
            proof: self.proof,
            short_of_stock: self.short_of_stock,
        }
    }

    /// How many mixes were looked at to find it: work that is the same on every machine, some 1,500 instructions each. Where many plans
    /// come to one place, comparing them counts, too.
    #[must_use]
    pub fn looks(&self) -> u32 {
        self.looks
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
