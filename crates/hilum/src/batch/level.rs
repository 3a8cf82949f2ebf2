//! Can the measured fills be more alike?
//!
//! A plan's stops at which one measured tank is mixed alone are as late as can be. Where they can be moved without
//! losing anything else, they are: fills between two stops that stay are made equal.

use super::expand::after;
use super::line::SLACK;
use super::node::{Node, compare};
use super::step::{Kind, Plant, Pour};
use super::{MAX_TANKS, tanks};

/// Stops that are tried anew at most, all trials taken together.
pub(super) const TRIALS: usize = 20_000;

/// In place of a shift to wait for: the stop was moved.
const MOVED: u32 = u32::MAX;

/// Steps towards a place that is itself out of reach.
const HALVINGS: u32 = 30;

/// Which of a tank's stops are moved.
#[derive(Clone, Copy)]
enum Moved {
    /// All but the first of a recipe.
    All,
    /// Those of them at which no other tank is mixed.
    Lone,
    /// So many after one stop; so far towards where they should be.
    After { first: usize, count: usize, share: f64 },
}

/// Levels in place; `scratch` is as long as `pours`. Returns where the plan ends.
pub(super) fn level(plant: &Plant<'_>, pours: &mut [Pour], scratch: &mut [Pour], end: &Node) -> Node {
    let mut trial = Trial { plant, pours, scratch, best: *end, left: TRIALS };
    for tank in (0..plant.tanks.len()).filter(|tank| !plant.tops_up(*tank)) {
        if trial.moves(tank, Moved::All) || trial.moves(tank, Moved::Lone) {
            continue;
        }
        for first in 0..trial.pours.len() {
            // To look for what cannot be tried any more takes its time, too: the square of the mixes.
            if trial.left.checked_sub(trial.pours.len()).is_none() {
                return trial.best;
            }
            for count in (1..=movable_after(plant, trial.pours, tank, first)).rev() {
                if trial.moves(tank, Moved::After { first, count, share: 1.0 }) {
                    break;
                }
            }
            trial.nearer(tank, first);
        }
    }
    trial.best
}

/// A plan under improvement.
struct Trial<'a, 'b> {
    plant: &'b Plant<'a>,
    pours: &'b mut [Pour],
    scratch: &'b mut [Pour],
    best: Node,
    left: usize,
}

impl Trial<'_, '_> {
    /// Moves stops; keeps them there if the plan is better for it.
    fn moves(&mut self, tank: usize, what: Moved) -> bool {
        let Some(left) = self.left.checked_sub(self.pours.len()) else { return false };
        copy(self.pours, self.scratch);
        if !self.move_stops(tank, what) {
            return false;
        }
        self.left = left;
        sort(self.scratch);
        match replay(self.plant, self.scratch) {
            Some(node)
                if compare(node.position, self.best.position).is_ge()
                    && node.cost.compare(&self.best.cost).is_lt() =>
            {
                copy(self.scratch, self.pours);
                self.best = node;
                true
            }
            _ => false,
        }
    }

    /// Moves the stops after this one as near to even as can be, from this side or the other.
    fn nearer(&mut self, tank: usize, first: usize) {
        let movable = movable_after(self.plant, self.pours, tank, first);
        for count in [movable, 1].into_iter().take(movable) {
            self.halve(tank, first, count);
            if self.moves(tank, Moved::After { first, count, share: 1.999 }) {
                self.halve(tank, first, count);
            }
        }
    }

    fn halve(&mut self, tank: usize, first: usize, count: usize) {
        // Share of the way left at which it is known not to work.
        let mut fails = 1.0;
        for _ in 0..HALVINGS {
            let share = 0.5 * fails;
            fails = if self.moves(tank, Moved::After { first, count, share }) {
                (fails - share) / (1.0 - share)
            } else {
                share
            };
        }
    }

    fn move_stops(&mut self, tank: usize, what: Moved) -> bool {
        let (plant, end) = (self.plant, self.best.position);
        match what {
            Moved::All => spread(plant, self.pours, self.scratch, tank, end, is_movable),
            Moved::Lone => spread(plant, self.pours, self.scratch, tank, end, is_lone),
            Moved::After { first, count, share } => {
                let own = |pour: &&Pour| usize::try_from(pour.tank) == Ok(tank);
                let next = self.pours.iter().skip(first + 1).filter(own).nth(count);
                let to = next.map_or(end, |pour| pour.position);
                even(plant, self.pours, self.scratch, tank, Stretch { first, count, to, share })
            }
        }
    }
}

/// Stops after one that stays, up to a position.
#[derive(Clone, Copy)]
struct Stretch {
    first: usize,
    count: usize,
    to: f64,
    share: f64,
}

/// Stops of a tank that follow one of its stops and may be moved.
fn movable_after(plant: &Plant<'_>, pours: &[Pour], tank: usize, first: usize) -> usize {
    let own = |index: &usize| pours.get(*index).is_some_and(|pour| usize::try_from(pour.tank) == Ok(tank));
    if !own(&first) {
        return 0;
    }
    (first + 1..pours.len()).filter(own).take_while(|index| is_movable(plant, pours, *index)).count()
}

/// Copies what fits; core's own copying panics where the lengths differ, which here they never do.
pub(super) fn copy<T: Copy>(from: &[T], to: &mut [T]) {
    for (to, from) in to.iter_mut().zip(from) {
        *to = *from;
    }
}

/// By position, then by instant.
pub(super) fn sort(pours: &mut [Pour]) {
    super::sort::sort(pours, |a, b| {
        let order = a.position.total_cmp(&b.position).then(a.at.total_cmp(&b.at)).then(a.tank.cmp(&b.tank));
        order.is_lt()
    });
}

/// Spreads a tank's stops evenly between those that stay; false if there are none to move.
fn spread(
    plant: &Plant<'_>,
    pours: &[Pour],
    moved: &mut [Pour],
    tank: usize,
    end: f64,
    may_move: fn(&Plant<'_>, &[Pour], usize) -> bool,
) -> bool {
    let mut any = false;
    let mut open: Option<(usize, usize)> = None;
    for index in 0..=pours.len() {
        let pour = pours.get(index);
        if pour.is_some_and(|pour| usize::try_from(pour.tank) != Ok(tank)) {
            continue;
        }
        if let (Some((_, count)), true) = (&mut open, may_move(plant, pours, index)) {
            *count += 1;
            continue;
        }
        if let Some((first, count)) = open.take().filter(|it| it.1 > 0) {
            let to = pour.map_or(end, |pour| pour.position);
            any |= even(plant, pours, moved, tank, Stretch { first, count, to, share: 1.0 });
        }
        open = Some((index, 0));
    }
    any
}

/// May the stop be elsewhere? Not where a recipe begins, nor where whole sets are used up.
fn is_movable(plant: &Plant<'_>, pours: &[Pour], index: usize) -> bool {
    let Some(pour) = pours.get(index) else { return false };
    let tank = usize::try_from(pour.tank).unwrap_or(MAX_TANKS);
    let order = plant.line.order_at(pour.position);
    let starts =
        plant.line.slurry(tank, pour.position) - plant.line.recipe_start(tank, order) <= plant.slack(tank);
    !starts && !plant.is_sets(tank, order)
}

/// Is this, too, the only mix of its stop?
fn is_lone(plant: &Plant<'_>, pours: &[Pour], index: usize) -> bool {
    let Some(pour) = pours.get(index) else { return false };
    let beside = |other: Option<usize>| {
        let other = other.and_then(|other| pours.get(other));
        other.is_some_and(|it| {
            it.position.total_cmp(&pour.position).is_eq() && it.at.total_cmp(&pour.at).is_eq()
        })
    };
    is_movable(plant, pours, index) && !beside(index.checked_sub(1)) && !beside(index.checked_add(1))
}

/// Makes the fills of a stretch equal, or more so.
fn even(plant: &Plant<'_>, pours: &[Pour], moved: &mut [Pour], tank: usize, stretch: Stretch) -> bool {
    let Some(start) = pours.get(stretch.first) else { return false };
    let order = plant.line.order_at(start.position);
    let from = plant.line.slurry(tank, start.position);
    let begins = from - plant.line.recipe_start(tank, order) <= plant.slack(tank);
    let hold_up = if begins { plant.tank(tank).map_or(0.0, |it| it.hold_up.value) } else { 0.0 };
    let until = plant.line.slurry(tank, stretch.to).min(plant.line.recipe_end(tank, order));
    let fills = f64::from(u32::try_from(stretch.count + 1).unwrap_or(u32::MAX));
    let each = (until - from + hold_up) / fills;
    if each <= hold_up {
        return false;
    }
    let mut slurry = from - hold_up;
    let own = |pour: &&mut Pour| usize::try_from(pour.tank) == Ok(tank);
    for pour in moved.iter_mut().skip(stretch.first + 1).filter(own).take(stretch.count) {
        slurry += each;
        let to = plant.line.beyond(tank, slurry, plant.slack(tank));
        let position = match stretch.share {
            // As it is, free of rounding.
            1.0 => to,
            share => pour.position + (to - pour.position) * share,
        };
        (pour.position, pour.wait) = (position, MOVED);
    }
    true
}

/// Runs a plan with its stops at these positions, and sets their instants; none if a tank would be empty before.
pub(super) fn replay(plant: &Plant<'_>, pours: &mut [Pour]) -> Option<Node> {
    let mut node = Node::START;
    let mut rest = pours;
    while let Some(first) = rest.first().copied() {
        let count = rest.iter().take_while(|it| it.position <= first.position && it.at <= first.at).count();
        let (group, later) = rest.split_at_mut_checked(count)?;
        let leg = plant.leg(node.position, node.work, node.contents(plant));
        if leg.to < first.position - SLACK * plant.line.end() {
            return None;
        }
        let mut leg = plant.leg_to(node.position, node.work, first.position.min(leg.to));
        if first.wait == MOVED && leg.arrival >= leg.work && plant.clock.has_shifts() {
            // No part of a second lost where the stop may be a little sooner as well.
            let whole = plant.clock.whole_second(leg.work);
            leg = plant.leg_to(node.position, node.work, plant.position_at(node.position, node.work, whole));
        }
        node = after(&node, &leg, 0);
        stop(plant, &mut node, group)?;
        rest = later;
    }
    let leg = plant.leg(node.position, node.work, node.contents(plant));
    node = after(&node, &leg, 0);
    node.close_all(plant);
    Some(node)
}

fn stop(plant: &Plant<'_>, node: &mut Node, group: &mut [Pour]) -> Option<()> {
    let joined = group.iter().map(|pour| 1_u32 << pour.tank.min(31)).fold(0, |set, tank| set | tank);
    let wait = group.first().map(|pour| pour.wait).filter(|wait| *wait != MOVED).unwrap_or(0);
    let wait = usize::try_from(wait).ok()?;
    let (slot, all) = plant.slot_for(node, joined, wait)?;
    if all != joined {
        return None;
    }
    let before = *node;
    for pour in group.iter_mut() {
        let tank = tanks(joined).find(|tank| u32::try_from(*tank) == Ok(pour.tank))?;
        let order = plant.line.order_at(before.position);
        plant.line.need(order, tank)?;
        if plant.is_unused(tank, &before) {
            return None;
        }
        let content = before.content(tank);
        let is_due = || plant.is_due_in(order, tank, before.position, before.work, &content);
        if content.kind == Kind::Sets && !is_due() {
            return None;
        }
        let sets = plant.is_sets(tank, plant.line.order_at(node.position));
        let fill =
            usize::try_from(pour.fill).ok().filter(|_| sets).and_then(|index| plant.fills(tank).get(index));
        (pour.position, pour.at, pour.wait) = (node.position, slot.at, u32::try_from(wait).ok()?);
        node.mix(plant, tank, &slot, fill);
    }
    node.work = slot.ready;
    Some(())
}
