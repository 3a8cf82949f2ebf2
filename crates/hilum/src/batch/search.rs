//! The best plan: labels in order of time, the dominated ones dropped.

use super::bound::Bound;
use super::expand::{Choices, Stop};
use super::node::{Cost, Node, compare};
use super::step::{Content, Kind, Plant, Pour};
use super::{Proof, tanks};
use core::cmp::Ordering;

/// A plan up to a stop, and the stop before.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Label {
    position: f64,
    work: f64,
    cost: Cost,
    early: u32,
    /// What was decided at the parent.
    stop: Stop,
    parent: u32,
    /// The queue's entry of this index, not of this label.
    queue: u32,
    /// The chain's first label of this index; its next one.
    head: u32,
    next: u32,
}

/// No label.
const NONE: u32 = u32::MAX;

/// Expansions that are made at most.
const EXPANSIONS: u32 = 1_000_000;

/// Labels are found again by their position, in cells of this share of all the seed.
const CELL: f64 = 1e-7;

pub(super) struct Search<'a, 'b> {
    plant: &'b Plant<'a>,
    choices: Choices<'a, 'b>,
    bound: Bound<'a, 'b>,
    labels: &'b mut [Label],
    contents: &'b mut [Content],
    count: u32,
    queued: u32,
    full: bool,
    /// The best plan so far: how far, at what cost, by which label (none: the one given).
    goal: f64,
    best: Cost,
    found: u32,
}

impl<'a, 'b> Search<'a, 'b> {
    pub(super) fn new(
        choices: Choices<'a, 'b>,
        bound: Bound<'a, 'b>,
        labels: &'b mut [Label],
        contents: &'b mut [Content],
        known: &Node,
    ) -> Self {
        let plant = choices.plant;
        let tanks = plant.tanks.len().max(1);
        let room = labels.len().min(contents.len() / tanks).min(usize::try_from(NONE - 1).unwrap_or(0));
        let labels = labels.get_mut(..room).unwrap_or(&mut []);
        labels.iter_mut().for_each(|label| label.head = NONE);
        let (goal, best) = (known.position, known.cost);
        let mut search =
            Self { plant, choices, bound, labels, contents, count: 0, queued: 0, full: false, goal, best, found: NONE };
        search.bound.aim(goal);
        search
    }

    /// Searches; tells whether nothing can be better.
    pub(super) fn run(&mut self) -> Proof {
        let choices = self.choices;
        self.offer(Stop::default(), &Node::START, NONE);
        let mut expansions = 0;
        while let Some(index) = self.pop() {
            let node = self.node(index);
            if self.bound.is_hopeless(&node, &self.best) || self.is_dominated(&node, index) {
                continue;
            }
            choices.each(&node, &mut |stop, next| self.offer(stop, next, index));
            expansions += 1;
            if self.full || expansions >= EXPANSIONS {
                return Proof::Bounded;
            }
        }
        Proof::Proven
    }

    /// Writes the pours of the plan that was found; none if the one given was the best.
    pub(super) fn trace(&self, pours: &mut [Pour]) -> Option<(usize, Node)> {
        if self.found == NONE {
            return None;
        }
        let mut count = 0;
        let mut index = self.found;
        while let Some(label) = self.label(index).filter(|label| label.parent != NONE) {
            let position = self.label(label.parent)?.position;
            for tank in tanks(label.stop.tanks) {
                let (tank, Stop { at, fill, shift, .. }) = (u32::try_from(tank).ok()?, label.stop);
                *pours.get_mut(count)? = Pour { position, at, tank, fill, wait: shift };
                count += 1;
            }
            index = label.parent;
        }
        pours.get_mut(..count)?.reverse();
        Some((count, self.node(self.found)))
    }

    fn label(&self, index: u32) -> Option<&Label> {
        self.labels.get(usize::try_from(index).ok()?)
    }

    fn label_mut(&mut self, index: u32) -> Option<&mut Label> {
        self.labels.get_mut(usize::try_from(index).ok()?)
    }

    fn contents_of(&self, index: u32) -> &[Content] {
        let tanks = self.plant.tanks.len();
        let start = usize::try_from(index).unwrap_or(usize::MAX).saturating_mul(tanks);
        self.contents.get(start..start.saturating_add(tanks)).unwrap_or(&[])
    }

    fn node(&self, index: u32) -> Node {
        let mut node = Node::START;
        if let Some(label) = self.label(index) {
            (node.position, node.work, node.cost, node.early) = (label.position, label.work, label.cost, label.early);
        }
        node.contents.iter_mut().zip(self.contents_of(index)).for_each(|(cell, content)| *cell = *content);
        node
    }

    /// Takes a node up, if it may lead to something better.
    fn offer(&mut self, stop: Stop, node: &Node, parent: u32) {
        let better = self.is_better(node);
        let ends = node.position >= self.plant.line.end() || node.work > self.plant.clock.total();
        if !better && (ends || self.bound.is_hopeless(node, &self.best) || self.is_dominated(node, NONE)) {
            return;
        }
        let index = self.count;
        if !self.store(stop, node, parent) {
            self.full = true;
            return;
        }
        if better {
            self.found = index;
            if node.position > self.goal {
                self.goal = node.position;
                self.bound.aim(self.goal);
            }
        }
        if !ends {
            self.push(index);
        }
    }

    /// Is the node, as it is, the best plan?
    fn is_better(&mut self, node: &Node) -> bool {
        let further = compare(node.position, self.goal);
        if further == Ordering::Less {
            return false;
        }
        let mut ended = *node;
        if node.position < self.plant.line.end() {
            ended.close_all(self.plant);
        }
        let better = further == Ordering::Greater || ended.cost.compare(&self.best) == Ordering::Less;
        if better {
            self.best = ended.cost;
        }
        better
    }

    fn store(&mut self, stop: Stop, node: &Node, parent: u32) -> bool {
        let index = self.count;
        let cell = self.cell(node.position);
        let head = self.label(cell).map_or(NONE, |label| label.head);
        let Some(label) = self.label_mut(index) else { return false };
        (label.position, label.work, label.cost, label.early) = (node.position, node.work, node.cost, node.early);
        (label.stop, label.parent, label.next) = (stop, parent, head);
        if let Some(first) = self.label_mut(cell) {
            first.head = index;
        }
        let tanks = self.plant.tanks.len();
        let start = usize::try_from(index).unwrap_or(usize::MAX).saturating_mul(tanks);
        let cells = self.contents.get_mut(start..).unwrap_or(&mut []);
        cells.iter_mut().zip(node.contents.iter().take(tanks)).for_each(|(cell, content)| *cell = *content);
        self.count += 1;
        true
    }

    /// Chain of a position.
    fn cell(&self, position: f64) -> u32 {
        let number = crate::math::floor(position / (self.plant.line.end() * CELL));
        self.chain(number)
    }

    fn chain(&self, number: f64) -> u32 {
        let room = f64::from(u32::try_from(self.labels.len()).unwrap_or(NONE)).max(1.0);
        let rest = number - crate::math::floor(number / room) * room;
        super::whole(rest).and_then(|rest| u32::try_from(rest).ok()).unwrap_or(0)
    }

    /// Is another label at the same place never worse?
    fn is_dominated(&self, node: &Node, index: u32) -> bool {
        let number = crate::math::floor(node.position / (self.plant.line.end() * CELL));
        [0.0, -1.0, 1.0].into_iter().any(|beside| {
            let mut other = self.label(self.chain(number + beside)).map_or(NONE, |label| label.head);
            while let Some(label) = self.label(other) {
                if other != index && self.dominates(other, label, node, index) {
                    return true;
                }
                other = label.next;
            }
            false
        })
    }

    fn dominates(&self, other: u32, label: &Label, node: &Node, index: u32) -> bool {
        if compare(label.position, node.position) != Ordering::Equal
            || label.work > node.work + 1e-6
            || (label.early != 0 && label.early != node.early)
        {
            return false;
        }
        let cost = label.cost.compare_product(&node.cost);
        let cost = cost.then_with(|| compare(label.cost.squares, node.cost.squares));
        let cost = cost.then_with(|| label.cost.compare_ranks(&node.cost));
        if cost == Ordering::Greater || !self.at_least_as_full(other, node) {
            return false;
        }
        // Of two alike the first one stays.
        let alike = cost == Ordering::Equal && label.work > node.work - 1e-6 && label.early == node.early;
        !alike || other < index || !self.as_full(node, other)
    }

    fn at_least_as_full(&self, other: u32, node: &Node) -> bool {
        let contents = self.contents_of(other).iter().zip(&node.contents).enumerate();
        contents.into_iter().all(|(tank, (a, b))| no_worse(self.plant, tank, node, a, b))
    }

    fn as_full(&self, node: &Node, other: u32) -> bool {
        let contents = self.contents_of(other).iter().zip(&node.contents).enumerate();
        contents.into_iter().all(|(tank, (a, b))| no_worse(self.plant, tank, node, b, a))
    }

    fn push(&mut self, index: u32) {
        let mut at = self.queued;
        self.queued += 1;
        while at > 0 {
            let up = (at - 1) / 2;
            let parent = self.entry(up);
            if !self.is_sooner(index, parent) {
                break;
            }
            self.set_entry(at, parent);
            at = up;
        }
        self.set_entry(at, index);
    }

    fn pop(&mut self) -> Option<u32> {
        self.queued = self.queued.checked_sub(1)?;
        let first = self.entry(0);
        let last = self.entry(self.queued);
        let mut at = 0;
        loop {
            let (left, right) = (2 * at + 1, 2 * at + 2);
            if left >= self.queued {
                break;
            }
            let child =
                if right < self.queued && self.is_sooner(self.entry(right), self.entry(left)) { right } else { left };
            if !self.is_sooner(self.entry(child), last) {
                break;
            }
            self.set_entry(at, self.entry(child));
            at = child;
        }
        self.set_entry(at, last);
        Some(first)
    }

    fn entry(&self, at: u32) -> u32 {
        self.label(at).map_or(NONE, |label| label.queue)
    }

    fn set_entry(&mut self, at: u32, index: u32) {
        if let Some(label) = self.label_mut(at) {
            label.queue = index;
        }
    }

    fn is_sooner(&self, a: u32, b: u32) -> bool {
        match (self.label(a), self.label(b)) {
            (Some(a), Some(b)) => a.work < b.work || (a.work <= b.work && a.position > b.position),
            _ => false,
        }
    }
}

/// Is what one tank holds at this node never worse than what another one holds?
fn no_worse(plant: &Plant<'_>, tank: usize, node: &Node, a: &Content, b: &Content) -> bool {
    let slack = plant.slack(tank);
    let order = plant.line.order_at(node.position);
    let slurry = plant.line.slurry(tank, node.position);
    let gone = |content: &Content| {
        content.kind == Kind::None
            || content.recipe < plant.line.recipe_end(tank, order)
            || content.end <= slurry + slack
            || content.expires <= node.work + 1e-6
    };
    match (gone(a), gone(b)) {
        (true, true) => {
            // Full lines are not always better: sets may come out even with what empty ones take.
            plant.hold_up_at(tank, order, slurry, a).total_cmp(&plant.hold_up_at(tank, order, slurry, b)).is_eq()
                && (a.kind != Kind::Measured || a.from >= b.from - slack)
        }
        (false, false) if a.kind == Kind::Sets => {
            (a.end - b.end).abs() <= slack && a.expires >= b.expires - 1e-6 && b.kind == Kind::Sets
        }
        (false, false) => a.from >= b.from - slack && a.end >= b.end - slack && a.expires >= b.expires - 1e-6,
        (false, true) => a.kind != Kind::Sets && b.kind != Kind::Sets && a.from >= b.from - slack,
        (true, false) => false,
    }
}
