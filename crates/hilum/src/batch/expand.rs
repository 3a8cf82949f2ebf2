//! What may be done at a stop?
//!
//! Which tanks are mixed beside those that must be, when the treater starts to mix, which whole sets go in. A measured
//! tank is "as full as can be" until its next stop tells how much was used. So it need stop only where another
//! tank does, where it is empty or expired, or as late in a shift as a mix still fits; any other stop can be moved later,
//! up to one of these, without losing time.

use super::clock::{INSTANT, Slot};
use super::fill::Keep;
use super::greedy::{Choice, choose};
use super::line::SLACK;
use super::node::Node;
use super::search::Next;
use super::step::{Content, Kind, Leg, Plant};
use super::tanks;

/// What was decided at a stop.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub(super) struct Stop {
    /// Instant of mixing.
    pub(super) at: f64,
    /// Tanks mixed.
    pub(super) tanks: u32,
    /// Whole sets of the leader.
    pub(super) fill: u32,
    /// The shift it is done in.
    pub(super) shift: u32,
}

/// Which choices are looked at.
#[derive(Clone, Copy, Debug)]
pub(super) struct Choices<'a, 'b> {
    pub(super) plant: &'b Plant<'a>,
    /// The tank that is filled with whole sets.
    pub(super) leader: Option<usize>,
    /// Tanks that may be mixed before they are empty.
    pub(super) followers: u32,
    pub(super) care: Care,
}

/// How much is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Care {
    /// What is nearly always enough: later is no better, nor is less time left.
    Quick,
    /// All that the rules allow; only states that are the same count as one.
    Thorough,
}

/// How many orders back a stop is looked for where it is not beside a changeover.
pub(super) const EARLIER_ORDERS: usize = 1000;

/// How many later shifts are looked at for a better moment to mix; where there are more, nothing is proven of a pot life.
pub(super) const LATER_SHIFTS: usize = 30;

impl Choices<'_, '_> {
    /// Tells every stop worth making here, and where it leads.
    pub(super) fn each(&self, node: &Node, to: &mut Next<'_, '_, '_>) {
        let due = node.due(self.plant) | node.early;
        if due == 0 {
            return self.run(node, Stop::default(), to);
        }
        if tanks(due).any(|tank| self.plant.is_unused(tank, node)) {
            return;
        }
        let order = self.plant.line.order_at(node.position);
        let needed =
            |tank: &usize| self.plant.line.need(order, *tank).is_some() && !self.plant.is_unused(*tank, node);
        let free: u32 = if node.early == 0 {
            tanks(self.followers & !due).filter(needed).map(|tank| 1 << tank).sum()
        } else {
            0
        };
        each_subset(free, |beside| self.mix(node, due | beside, to));
    }

    /// Mixes these tanks, now or later.
    fn mix(&self, node: &Node, joined: u32, to: &mut Next<'_, '_, '_>) {
        let plant = self.plant;
        let (mut shift, mut before, mut best) = (0, joined, -1.0);
        for _ in 0..LATER_SHIFTS {
            let Some((slot, joined)) = plant.slot_for(node, joined, shift) else { return };
            if tanks(joined).any(|tank| plant.is_unused(tank, node)) {
                return;
            }
            if joined != before {
                // Another mix has spoiled while the treater waited: all is to be seen anew.
                (before, best) = (joined, -1.0);
            }
            let usable = self.usable(joined, &slot);
            // A moment that is no better by itself may still suit the stops of other tanks.
            if usable > best || (usable > 0.0 && self.care == Care::Thorough) {
                best = usable;
                if !self.fill(node, joined, &slot, to) && !self.may_spoil(node, joined) {
                    return;
                }
            }
            shift = slot.shift + 1;
        }
    }

    /// Might what other tanks hold spoil while the treater waits?
    fn may_spoil(&self, node: &Node, joined: u32) -> bool {
        let contents = node.contents(self.plant).iter().enumerate();
        let mut others = contents.filter(|(tank, _)| joined & (1 << tank) == 0);
        others.any(|(_, content)| content.kind != Kind::None && content.expires.is_finite())
    }

    /// Work time that is left of the pot lives when all are ready.
    fn usable(&self, joined: u32, slot: &Slot) -> f64 {
        let lives = tanks(joined).filter_map(|tank| self.plant.pot_life(tank));
        lives
            .map(|life| self.plant.clock.expiry(slot.at, life) - slot.ready)
            .fold(f64::INFINITY, f64::min)
            .max(0.0)
    }

    /// Tries the leader's fills; true if a pot life may have cut one short.
    fn fill(&self, node: &Node, joined: u32, slot: &Slot, to: &mut Next<'_, '_, '_>) -> bool {
        let plant = self.plant;
        let mut base = *node;
        let order = plant.line.order_at(node.position);
        let leader = self.leader.filter(|it| joined & (1 << it) != 0 && plant.is_sets(*it, order));
        for tank in tanks(joined).filter(|tank| Some(*tank) != leader) {
            let fill = choose(plant, node, tank, slot);
            if fill == Choice::OutOfStock {
                return false;
            }
            base.mix(plant, tank, slot, fill.fill().and_then(|index| plant.fills(tank).get(index)));
        }
        let stop = Stop {
            at: slot.at,
            tanks: joined,
            fill: 0,
            shift: u32::try_from(slot.shift).unwrap_or(u32::MAX),
        };
        let Some(leader) = leader else {
            if to.is_worth(&base, &to.beside(&base)) {
                self.go(&base, joined, stop, to);
            }
            return self.may_expire(&base, joined);
        };
        self.sets(&base, leader, stop, slot, to)
    }

    /// Tries whole sets in the leader, beside what has been mixed; true if a pot life may have cut a mix short.
    fn sets(&self, mixed: &Node, leader: usize, stop: Stop, slot: &Slot, to: &mut Next<'_, '_, '_>) -> bool {
        let (plant, fills) = (self.plant, self.plant.fills(leader));
        let mut node = *mixed;
        let started = node.start(plant, leader, slot);
        let Some(range) = plant.range(&node, leader, slot, &started) else { return true };
        let (living, before) = (plant.living(leader, node.position), node.cost);
        let beside = to.beside(&node);
        // A larger fill than now may be of use at a later moment.
        let mut cut = range.cut_by_time;
        for index in (range.least..=range.most).rev() {
            let Some(fill) = fills.get(index).filter(|fill| plant.is_in_stock(leader, mixed, fill)) else {
                continue;
            };
            node.cost = before;
            node.pour(leader, &started, fill, living);
            cut = cut || self.may_expire(&node, stop.tanks);
            if to.is_worth(&node, &beside) {
                let fill = u32::try_from(index).unwrap_or(u32::MAX);
                self.go(&node, stop.tanks, Stop { fill, ..stop }, to);
            }
        }
        cut
    }

    /// Might one of the mixes just made expire before it is used up?
    fn may_expire(&self, node: &Node, joined: u32) -> bool {
        let plant = self.plant;
        tanks(joined).any(|tank| {
            let content = node.content(tank);
            if content.expires.is_infinite() {
                return false;
            }
            let empty = plant.line.beyond(tank, content.end.min(content.recipe), plant.slack(tank));
            let run = plant.line.arrival(empty) - plant.line.run_at(node.position);
            node.work + run + self.interruptions(tank, node.position, empty) > content.expires
        })
    }

    /// Mixing time that other tanks may take between two positions, at most.
    fn interruptions(&self, own: usize, from: f64, to: f64) -> f64 {
        let plant = self.plant;
        let wait = |tank: usize| {
            let slurry = plant.line.slurry(tank, to) - plant.line.slurry(tank, from);
            let smallest =
                plant.fills(tank).all.first().map_or(1.0, |fill| fill.living / plant.capacity(tank));
            plant.mixing(tank) * (3.0 + 2.0 * slurry / (plant.capacity(tank) * smallest))
        };
        (0..plant.tanks.len()).filter(|tank| *tank != own && !plant.tops_up(*tank)).map(wait).sum()
    }

    /// Runs on, if what was mixed can be used at all.
    fn go(&self, node: &Node, joined: u32, stop: Stop, to: &mut Next<'_, '_, '_>) {
        if tanks(joined).all(|tank| node.content(tank).expires > node.work) {
            self.run(node, stop, to);
        }
    }

    fn run(&self, node: &Node, stop: Stop, to: &mut Next<'_, '_, '_>) {
        let plant = self.plant;
        let leg = plant.leg(node.position, node.work, node.contents(plant));
        let next = after(node, &leg, 0);
        if leg.to < plant.line.end() {
            self.early(node, &next, stop, to);
        } else {
            let mut last = next;
            last.close_all(plant);
            return to.visit(stop, &last);
        }
        to.visit(stop, &next);
    }

    /// Where a mix does not fit at the end of the shift any more, an earlier one may; one that takes what is left of a shift
    /// lets another, that has a pot life, start after the night; and one before a night may save time after it.
    fn early(&self, node: &Node, natural: &Node, stop: Stop, to: &mut Next<'_, '_, '_>) {
        let plant = self.plant;
        if !plant.clock.has_shifts() {
            return;
        }
        let due = natural.due(plant);
        let night = plant.clock.shift_start(natural.work);
        each_subset(self.followers, |chosen| {
            if chosen == 0 {
                return;
            }
            let mixing = plant.longest_mixing(chosen);
            let before = natural.cost.finish;
            let mut tell = |before: f64, room: f64| {
                if let Some(leg) = self.last_stop(node, natural, chosen, before, room) {
                    to.visit(stop, &after(node, &leg, chosen));
                }
            };
            if self.loses_time(natural, due | chosen) || self.lasts_longer(natural, due, chosen) {
                tell(before, mixing);
                let next = plant.longest_mixing(due & !chosen);
                if next > 0.0 && plant.may_expire(due & !chosen) {
                    tell(before, mixing + next);
                }
            }
            if night > node.work {
                tell(night.min(before), mixing);
            }
        });
    }

    /// The latest stop before another from which so much mixing fits into the shift.
    fn last_stop(
        &self,
        node: &Node,
        natural: &Node,
        chosen: u32,
        mut before: f64,
        mixing: f64,
    ) -> Option<Leg> {
        let plant = self.plant;
        for _ in 0..EARLIER_ORDERS {
            let slot = plant.clock.slot_before(node.work, before, mixing)?;
            let to = plant.position_at(node.position, node.work, slot.ready - mixing);
            let leg = plant.leg_to(node.position, node.work, to);
            if to <= node.position {
                return None;
            }
            let order = plant.line.order_at(to);
            let usable =
                |tank| node.content(tank).kind == Kind::Measured && plant.line.need(order, tank).is_some();
            // Not beside a changeover.
            if to < natural.position && leg.work <= slot.ready - mixing + INSTANT && tanks(chosen).all(usable)
            {
                return Some(leg);
            }
            before = plant.leg_to(node.position, node.work, plant.line.start_of(order)).arrival;
        }
        None
    }

    /// Does a mix of these not fit where the treater stops?
    fn loses_time(&self, natural: &Node, joined: u32) -> bool {
        let mixing = self.plant.longest_mixing(joined);
        self.plant
            .clock
            .slot(natural.work, mixing)
            .is_none_or(|slot| slot.ready - mixing - natural.work > 1.0)
    }

    /// Would the pot life of what is due last longer, if others were mixed just before?
    fn lasts_longer(&self, natural: &Node, due: u32, chosen: u32) -> bool {
        let plant = self.plant;
        if !plant.may_expire(due & !chosen) {
            return false;
        }
        let (own, others) = (plant.longest_mixing(due & !chosen), plant.longest_mixing(chosen));
        // Nor does its pot life run while it waits for a slower one.
        let shift = |work| plant.clock.slot(work, own).map(|slot| slot.shift);
        own < others || shift(natural.work) != shift(natural.work + others)
    }
}

/// The whole sets that make sense in a tank.
#[derive(Clone, Copy, Debug)]
pub(super) struct Range {
    /// The smallest that leaves some seed to treat once the lines are full.
    pub(super) least: usize,
    /// The smallest that is all that can be used, or the largest that fits.
    pub(super) enough: usize,
    /// One more than enough, where that empties the lines at the expiry and sets of the next mix may then come out even.
    pub(super) most: usize,
    /// The largest that fits.
    pub(super) top: usize,
    /// Living product that can be used.
    pub(super) wanted: f64,
    /// By the pot life or the end of the shifts, not by the end of the recipe?
    pub(super) cut_by_time: bool,
}

impl Plant<'_> {
    /// Was it mixed here, and nothing treated with it since?
    pub(super) fn is_unused(&self, tank: usize, node: &Node) -> bool {
        let content = node.content(tank);
        content.kind != Kind::None
            && content.recipe >= self.line.recipe_end(tank, self.line.order_at(node.position))
            && self.line.slurry(tank, node.position) <= content.from + self.slack(tank)
    }

    /// Does one of these have a pot life?
    fn may_expire(&self, joined: u32) -> bool {
        tanks(joined).any(|tank| self.pot_life(tank).is_some())
    }

    /// The first place, from a shift on, for these tanks to be mixed, with those that expire while the treater waits.
    pub(super) fn slot_for(&self, node: &Node, joined: u32, shift: usize) -> Option<(Slot, u32)> {
        let mut joined = joined;
        loop {
            let mixing = self.longest_mixing(joined);
            let mut slot = self.clock.slot(node.work, mixing)?;
            if slot.shift < shift {
                slot = self.clock.slot_from(shift, mixing)?;
            }
            let due = node.due_at(self, slot.ready - mixing);
            if due & !joined == 0 {
                return Some((slot, joined));
            }
            joined |= due;
        }
    }

    /// None for a tank that is measured; an empty one where there are too few sets on the shelf. `most` is what the tank would
    /// hold if as much was mixed as can be used.
    pub(super) fn range(&self, node: &Node, tank: usize, slot: &Slot, most: &Content) -> Option<Range> {
        let order = self.line.order_at(node.position);
        if !self.is_sets(tank, order) {
            return None;
        }
        let (fills, share) = (self.fills(tank), self.living(tank, node.position));
        let until = self.position_at(node.position, slot.ready, most.expires.min(self.clock.total()));
        let (usable, recipe) = (self.line.slurry(tank, until), self.line.recipe_end(tank, order));
        let wanted = (usable.min(recipe) - most.from + most.hold_up) * share * (1.0 - SLACK);
        let Some((least, top)) = fills.between(most.hold_up * share, self.capacity(tank) * share) else {
            return Some(Range { least: 1, enough: 0, most: 0, top: 0, wanted, cut_by_time: false });
        };
        let enough = fills.at_least(wanted).map_or(top, |enough| enough.min(top)).max(least);
        let cut_by_time = usable < recipe;
        let even = fills.get(enough).is_some_and(|fill| fill.living <= wanted * (1.0 + 3.0 * SLACK));
        let lines = self.tank(tank).is_some_and(|it| it.hold_up.value > 0.0);
        let most = match self.keep {
            // The ones that are enough may not be on the shelf.
            Keep::Stock => top,
            Keep::NoStock if cut_by_time && even && lines => (enough + 1).min(top),
            Keep::NoStock => enough,
        };
        Some(Range { least, enough, most, top, wanted, cut_by_time })
    }
}

/// Can all of these be used when they are ready?
pub(super) fn fits(plant: &Plant<'_>, joined: u32, slot: &Slot) -> bool {
    let lives = tanks(joined).filter_map(|tank| plant.pot_life(tank));
    lives.map(|life| plant.clock.expiry(slot.at, life)).all(|expires| expires > slot.ready)
}

/// The node at the end of a leg.
pub(super) fn after(node: &Node, leg: &Leg, early: u32) -> Node {
    let mut next = *node;
    if leg.to > node.position {
        next.cost.finish = leg.arrival;
    }
    (next.position, next.work, next.early) = (leg.to, leg.work, early);
    next
}

/// All subsets, the empty one too.
fn each_subset(set: u32, mut tell: impl FnMut(u32)) {
    let mut subset = set;
    loop {
        tell(subset);
        if subset == 0 {
            return;
        }
        subset = (subset - 1) & set;
    }
}
