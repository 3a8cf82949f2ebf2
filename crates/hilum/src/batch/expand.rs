//! What may be done at a stop?
//!
//! Which tanks are mixed beside those that must be, when the treater starts to mix, which whole sets go in. A measured
//! tank is "as full as can be" until its next stop tells how much was used. So it need stop only where another
//! tank does, where it is empty or expired, or as late in a shift as a mix still fits; any other stop can be moved later,
//! up to one of these, without losing time.

use super::clock::Slot;
use super::greedy::choose;
use super::line::SLACK;
use super::node::Node;
use super::step::{Kind, Leg, Plant};
use super::{Error, tanks};

/// What was decided at a stop.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub(super) struct Stop {
    /// Instant of mixing.
    pub(super) at: f64,
    /// Tanks mixed.
    pub(super) tanks: u32,
    /// Whole sets of the leader.
    pub(super) fill: u32,
}

/// Which choices are looked at.
#[derive(Clone, Copy, Debug)]
pub(super) struct Choices<'a, 'b> {
    pub(super) plant: &'b Plant<'a>,
    /// The tank that is filled with whole sets.
    pub(super) leader: Option<usize>,
    /// Tanks that may be mixed before they are empty.
    pub(super) followers: u32,
}

/// How many later shifts are looked at for a better moment to mix.
const LATER_SHIFTS: usize = 30;

impl Choices<'_, '_> {
    /// Tells every stop worth making here, and where it leads.
    pub(super) fn each(&self, node: &Node, tell: &mut impl FnMut(Stop, &Node)) {
        let due = node.due(self.plant) | node.early;
        if due == 0 {
            return self.run(node, Stop::default(), tell);
        }
        let order = self.plant.line.order_at(node.position);
        let needed = |tank: &usize| self.plant.line.need(order, *tank).is_some();
        let free: u32 = if node.early == 0 {
            tanks(self.followers & !due).filter(needed).map(|tank| 1 << tank).sum()
        } else {
            0
        };
        each_subset(free, |beside| self.mix(node, due | beside, tell));
    }

    /// Mixes these tanks, now or later.
    fn mix(&self, node: &Node, joined: u32, tell: &mut impl FnMut(Stop, &Node)) {
        let plant = self.plant;
        let mixing = plant.longest_mixing(joined);
        let Some(mut slot) = plant.clock.slot(node.work, mixing) else { return };
        let mut best = -1.0;
        for _ in 0..LATER_SHIFTS {
            let usable = self.usable(joined, &slot);
            if usable > best {
                best = usable;
                if !self.fill(node, joined, &slot, tell) {
                    return;
                }
            }
            match plant.clock.slot_from(slot.shift + 1, mixing) {
                Some(later) => slot = later,
                None => return,
            }
        }
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
    fn fill(&self, node: &Node, joined: u32, slot: &Slot, tell: &mut impl FnMut(Stop, &Node)) -> bool {
        let plant = self.plant;
        let mut base = *node;
        let order = plant.line.order_at(node.position);
        let leader = self.leader.filter(|it| joined & (1 << it) != 0 && plant.is_sets(*it, order));
        for tank in tanks(joined).filter(|tank| Some(*tank) != leader) {
            let Ok(fill) = choose(plant, node, tank, slot) else { return false };
            base.mix(plant, tank, slot, fill.and_then(|index| plant.fills(tank).get(index)));
        }
        let stop = Stop { at: slot.at, tanks: joined, fill: 0 };
        let Some(leader) = leader else {
            let cut = self.may_expire(&base, joined);
            self.go(&base, joined, stop, tell);
            return cut;
        };
        let fills = plant.fills(leader);
        let Ok(Some(range)) = plant.range(&base, leader, slot) else { return true };
        // A larger fill than now may be of use at a later moment.
        let mut cut = range.cut_by_time;
        for index in (range.least..=range.most).rev() {
            let mut filled = base;
            filled.mix(plant, leader, slot, fills.get(index));
            cut |= self.may_expire(&filled, joined);
            let fill = u32::try_from(index).unwrap_or(u32::MAX);
            self.go(&filled, joined, Stop { fill, ..stop }, tell);
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
            node.work + run + self.interruptions(node.position, empty) > content.expires
        })
    }

    /// Mixing time that other tanks may take between two positions, at most.
    fn interruptions(&self, from: f64, to: f64) -> f64 {
        let wait = |tank: usize| {
            let slurry = self.plant.line.slurry(tank, to) - self.plant.line.slurry(tank, from);
            self.plant.mixing(tank) * (3.0 + 2.0 * slurry / self.plant.capacity(tank))
        };
        tanks(self.followers).map(wait).sum()
    }

    /// Runs on, if what was mixed can be used at all.
    fn go(&self, node: &Node, joined: u32, stop: Stop, tell: &mut impl FnMut(Stop, &Node)) {
        if tanks(joined).all(|tank| node.content(tank).expires > node.work) {
            self.run(node, stop, tell);
        }
    }

    fn run(&self, node: &Node, stop: Stop, tell: &mut impl FnMut(Stop, &Node)) {
        let plant = self.plant;
        let leg = plant.leg(node.position, node.work, node.contents(plant));
        let next = after(node, &leg, 0);
        if leg.to < plant.line.end() {
            self.early(node, &next, stop, tell);
        } else {
            let mut last = next;
            last.close_all(plant);
            return tell(stop, &last);
        }
        tell(stop, &next);
    }

    /// Where a mix does not fit at the end of the shift any more, an earlier one may.
    fn early(&self, node: &Node, natural: &Node, stop: Stop, tell: &mut impl FnMut(Stop, &Node)) {
        let plant = self.plant;
        if !plant.clock.has_shifts() {
            return;
        }
        let due = natural.due(plant);
        each_subset(self.followers, |chosen| {
            let fits = plant.clock.slot(natural.work, plant.longest_mixing(due | chosen));
            let lost = fits
                .map_or(f64::INFINITY, |slot| slot.ready - plant.longest_mixing(due | chosen) - natural.work);
            if chosen == 0 || lost <= 1.0 {
                return;
            }
            let mixing = plant.longest_mixing(chosen);
            let Some(slot) = plant.clock.slot_before(node.work, natural.cost.finish, mixing) else { return };
            let to = plant.position_at(node.position, node.work, slot.ready - mixing);
            let leg = plant.leg_to(node.position, node.work, to);
            let order = plant.line.order_at(to);
            let usable =
                |tank| node.content(tank).kind == Kind::Measured && plant.line.need(order, tank).is_some();
            // Not beside a changeover.
            let beside = leg.work > slot.ready - mixing + 1e-6;
            if to > node.position && to < natural.position && !beside && tanks(chosen).all(usable) {
                tell(stop, &after(node, &leg, chosen));
            }
        });
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
    /// Living product that can be used.
    pub(super) wanted: f64,
    /// By the pot life or the end of the shifts, not by the end of the recipe?
    pub(super) cut_by_time: bool,
}

impl Plant<'_> {
    /// None for a tank that is measured.
    pub(super) fn range(&self, node: &Node, tank: usize, slot: &Slot) -> Result<Option<Range>, Error> {
        let order = self.line.order_at(node.position);
        if !self.is_sets(tank, order) {
            return Ok(None);
        }
        let (fills, share) = (self.fills(tank), self.living(tank, node.position));
        let most = self.mixed(tank, node.position, slot.at, None, &node.content(tank));
        let until = self.position_at(node.position, slot.ready, most.expires.min(self.clock.total()));
        let (usable, recipe) = (self.line.slurry(tank, until), self.line.recipe_end(tank, order));
        let wanted = (usable.min(recipe) - most.from + most.hold_up) * share * (1.0 - SLACK);
        let too_small = Error::TankTooSmall { tank };
        let top = fills.at_most(self.capacity(tank) * share * (1.0 + SLACK)).ok_or(too_small)?;
        let least = fills
            .at_least(most.hold_up * share * (1.0 + SLACK))
            .filter(|least| *least <= top)
            .ok_or(too_small)?;
        let enough = fills.at_least(wanted).map_or(top, |enough| enough.min(top)).max(least);
        let cut_by_time = usable < recipe;
        let even = fills.get(enough).is_some_and(|fill| fill.living <= wanted * (1.0 + 3.0 * SLACK));
        let lines = self.tank(tank).is_some_and(|it| it.hold_up.value > 0.0);
        let most = if cut_by_time && even && lines { (enough + 1).min(top) } else { enough };
        Ok(Some(Range { least, enough, most, wanted, cut_by_time }))
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
