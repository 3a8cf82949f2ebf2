//! A valid plan, quickly: every tank as full as it can be used.

use super::clock::Slot;
use super::expand::{after, fits};
use super::line::SLACK;
use super::node::Node;
use super::step::{Plant, Pour};
use super::{Counted, Error, tanks};

/// A plan, as far as it goes.
#[derive(Clone, Copy, Debug)]
pub(super) struct Reach {
    /// Pours that were decided.
    pub(super) pours: usize,
    /// Where it ends.
    pub(super) node: Node,
}

/// Plans one stop after the other.
pub(super) fn plan(plant: &Plant<'_>, pours: &mut [Pour]) -> Result<Reach, Error> {
    let mut node = Node::START;
    let mut best = Reach { pours: 0, node };
    let (mut count, mut idle) = (0, 0);
    // Where the treater came to this stop, before anything was mixed.
    let mut came = node;
    while node.position < plant.line.end() && idle <= plant.tanks.len() {
        let Some((slot, due)) = slot(plant, &node, node.due(plant)) else { break };
        let kept = without_unused(plant, &node, due, pours, count);
        if kept < count {
            node = remade(plant, &came, pours.get(..kept).unwrap_or(&[]), node.work);
            count = kept;
        }
        let mut short = false;
        for tank in tanks(due) {
            let choice = choose(plant, &node, tank, &slot);
            short |= choice == Choice::OutOfStock;
            let limit = pours.len();
            let cell = pours.get_mut(count).ok_or(Error::TooMany { counted: Counted::Mixes, limit })?;
            let (fill, wait) = (number(choice.fill().unwrap_or(0)), number(slot.shift));
            *cell = Pour { position: node.position, at: slot.at, tank: number(tank), fill, wait };
            count += 1;
        }
        if short {
            break;
        }
        node = mixed(plant, &node, due, &slot);
        let leg = plant.leg(node.position, node.work, node.contents(plant));
        idle = if leg.to > node.position { 0 } else { idle + 1 };
        node = after(&node, &leg, 0);
        if idle == 0 {
            (best, came) = (Reach { pours: count, node }, node);
        }
        if node.work > plant.clock.total() {
            break;
        }
    }
    best.node.close_all(plant);
    Ok(best)
}

/// Drops the pours of a mix that spoiled while the treater waited for another.
fn without_unused(plant: &Plant<'_>, node: &Node, due: u32, pours: &mut [Pour], count: usize) -> usize {
    let unused = |pour: &Pour| {
        pour.position >= node.position
            && tanks(due).any(|tank| number(tank) == pour.tank && plant.is_unused(tank, node))
    };
    let start =
        pours.get(..count).map_or(count, |done| done.partition_point(|pour| pour.position < node.position));
    let mut kept = start;
    for index in start..count {
        let Some(pour) = pours.get(index).copied().filter(|pour| !unused(pour)) else { continue };
        if let Some(cell) = pours.get_mut(kept) {
            *cell = pour;
        }
        kept += 1;
    }
    kept
}

/// The treater at a stop, with only these mixes made there: lines are as they would be without the others.
fn remade(plant: &Plant<'_>, came: &Node, pours: &[Pour], work: f64) -> Node {
    let mut node = *came;
    for pour in pours.iter().filter(|pour| pour.position >= came.position) {
        let Ok(tank) = usize::try_from(pour.tank) else { continue };
        let slot = Slot { shift: usize::try_from(pour.wait).unwrap_or(0), at: pour.at, ready: work };
        node.mix(plant, tank, &slot, plant.sets_in(pour, tank));
    }
    node.work = work;
    node
}

/// The first moment at which what is mixed can be used before it expires, and what is mixed then.
fn slot(plant: &Plant<'_>, node: &Node, due: u32) -> Option<(Slot, u32)> {
    if due == 0 {
        return Some((Slot { shift: 0, at: 0.0, ready: node.work }, 0));
    }
    let (mut slot, mut joined) = plant.slot_for(node, due, 0)?;
    while !fits(plant, joined, &slot) {
        (slot, joined) = plant.slot_for(node, due, slot.shift + 1)?;
    }
    Some((slot, joined))
}

/// All that is due, mixed.
fn mixed(plant: &Plant<'_>, node: &Node, due: u32, slot: &Slot) -> Node {
    let mut next = *node;
    for tank in tanks(due) {
        let fill = choose(plant, node, tank, slot).fill();
        next.mix(plant, tank, slot, fill.and_then(|index| plant.fills(tank).get(index)));
    }
    next
}

/// Whole sets for as much as will be used, and no more if that can be helped; none for a measured tank.
pub(super) fn choose(plant: &Plant<'_>, node: &Node, tank: usize, slot: &Slot) -> Choice {
    let most = plant.mixed(tank, node.position, slot.at, &node.content(tank));
    let Some(range) = plant.range(node, tank, slot, &most) else { return Choice::Measure };
    if range.least > range.top {
        return Choice::OutOfStock;
    }
    let fills = plant.fills(tank);
    let exact = fills.get(range.enough).is_some_and(|fill| fill.living >= range.wanted);
    // A smaller one that is used up, then a smallest one for the rest, leaves least before a night.
    let below = fills.at_most(range.wanted * (1.0 + SLACK)).filter(|below| *below >= range.least);
    let wanted = if exact && range.cut_by_time { below.unwrap_or(range.enough) } else { range.enough };
    let in_stock = |index: &usize| fills.get(*index).is_some_and(|fill| plant.is_in_stock(tank, node, fill));
    let smaller = (range.least..=wanted).rev().find(in_stock);
    let larger = || (wanted..=range.top).find(in_stock);
    smaller.or_else(larger).map_or(Choice::OutOfStock, Choice::Fill)
}

/// What goes into a tank.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Choice {
    Measure,
    /// Index of the whole sets.
    Fill(usize),
    OutOfStock,
}

impl Choice {
    pub(super) fn fill(self) -> Option<usize> {
        match self {
            Self::Fill(index) => Some(index),
            Self::Measure | Self::OutOfStock => None,
        }
    }
}

fn number(index: usize) -> u32 {
    u32::try_from(index).unwrap_or(u32::MAX)
}
