//! The best plan: labels in order of time, the dominated ones dropped.

use super::bound::{Beside, Bound};
use super::clock::INSTANT;
use super::expand::{Care, Choices, Stop};
use super::greedy::choose;
use super::node::{Cost, Node, compare};
use super::step::{Content, Kind, Plant, Pour};
use super::store::{Label, NONE, Store};
use super::{Proof, tanks};
use core::cmp::Ordering;

/// The best plan so far ends here.
#[derive(Clone, Copy, Debug)]
struct Found {
    stop: Stop,
    parent: u32,
    end: Node,
}

/// What a search is after.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Aim {
    /// More seed, less product, fewer mixes, an earlier end: plans that are equal in these are one.
    Time,
    /// And fills that are more alike, and better sets.
    Fills,
}

/// How much is done before a search is given up: mixes that are looked at; [`COMPARED`] labels compared count as one.
#[derive(Clone, Copy, Debug)]
pub(super) struct Effort {
    /// In all.
    pub(super) most: u32,
    /// And without finding anything better.
    pub(super) in_vain: u32,
}

/// Where very many plans come to one place, they are most of the work.
const COMPARED: u32 = 64;

impl Effort {
    const NONE: Self = Self::up_to(0);

    /// However long nothing better is found.
    pub(super) const fn up_to(most: u32) -> Self {
        Self { most, in_vain: most }
    }
}

pub(super) struct Search<'a, 'b> {
    plant: &'b Plant<'a>,
    choices: Choices<'a, 'b>,
    bound: Bound<'a, 'b>,
    store: Store<'b>,
    full: bool,
    aim: Aim,
    effort: Effort,
    /// Mixes that were looked at; how many, when the best plan was found.
    looks: u32,
    looks_at_best: u32,
    /// Labels compared since the last look that these count as.
    compared: u32,
    /// Looks of all searches together.
    all_looks: u32,
    /// The best plan so far: how far, at what cost; where it ends, if it is not the one given.
    goal: f64,
    best: Cost,
    found: Option<Found>,
}

/// The next stage of the beam: its first label, and how many it may have.
#[derive(Clone, Copy)]
struct Stage {
    first: u32,
    width: u32,
}

/// Takes up where the choices of a label lead.
pub(super) struct Next<'s, 'a, 'b> {
    search: &'s mut Search<'a, 'b>,
    parent: u32,
    /// None where all is searched.
    stage: Option<Stage>,
}

impl Next<'_, '_, '_> {
    /// What the tanks beside the leader will take, at a node where all but the leader have just been mixed.
    pub(super) fn beside(&self, mixed: &Node) -> Beside {
        self.search.bound.beside(mixed)
    }

    /// Is anything to be hoped for from a node whose tanks have just been mixed?
    pub(super) fn is_worth(&mut self, mixed: &Node, beside: &Beside) -> bool {
        self.search.spend(1) && !self.search.is_hopeless_beside(mixed, beside)
    }

    /// A stop, and the node it leads to.
    pub(super) fn visit(&mut self, stop: Stop, node: &Node) {
        let search = &mut *self.search;
        search.compare_with_best(stop, node, self.parent);
        if search.ends(node) {
            return;
        }
        match self.stage {
            Some(stage) => search.keep(stop, node, self.parent, stage),
            None => search.offer(stop, node, self.parent),
        }
    }
}

impl<'a, 'b> Search<'a, 'b> {
    /// `known` is where a plan ends that is to be bettered.
    pub(super) fn new(
        choices: Choices<'a, 'b>,
        bound: Bound<'a, 'b>,
        store: Store<'b>,
        known: &Node,
    ) -> Self {
        let plant = choices.plant;
        let (goal, best) = (known.position, known.cost);
        let mut search = Self {
            plant,
            choices,
            bound,
            store,
            full: false,
            aim: Aim::Fills,
            effort: Effort::NONE,
            looks: 0,
            looks_at_best: 0,
            compared: 0,
            all_looks: 0,
            goal,
            best,
            found: None,
        };
        search.bound.aim(goal);
        search
    }

    pub(super) fn room(&self) -> u32 {
        self.store.room()
    }

    pub(super) fn all_looks(&self) -> u32 {
        self.all_looks
    }

    /// Follows the few most promising plans from stop to stop: quick, and often the best.
    pub(super) fn beam(&mut self, width: u32, effort: Effort) {
        self.start(effort);
        (self.aim, self.choices.care) = (Aim::Fills, Care::Quick);
        let choices = self.choices;
        let (mut first, mut end) = (0, self.store.count);
        while first < end && !self.full && self.store.room() - end >= width {
            for index in first..end {
                let node = self.store.node(index);
                let stage = Some(Stage { first: end, width });
                choices.each(&node, &mut Next { search: self, parent: index, stage });
            }
            (first, end) = (end, self.store.count);
        }
    }

    /// Searches; tells whether nothing can be better.
    pub(super) fn run(&mut self, aim: Aim, care: Care, effort: Effort) -> Proof {
        self.start(effort);
        (self.aim, self.choices.care) = (aim, care);
        let choices = self.choices;
        if self.full {
            return Proof::Bounded;
        }
        self.store.link_last();
        self.store.push(0);
        while let Some(index) = self.store.pop().filter(|_| !self.full) {
            let node = self.store.node(index);
            if !self.is_hopeless(&node) && !self.is_dominated(&node, index) {
                choices.each(&node, &mut Next { search: self, parent: index, stage: None });
            }
        }
        if self.full { Proof::Bounded } else { Proof::Proven }
    }

    fn start(&mut self, effort: Effort) {
        self.store.clear();
        self.full = !self.store.add(Stop::default(), &Node::START, NONE, Cost::default());
        (self.found, self.effort, self.looks, self.looks_at_best) = (None, effort, 0, 0);
    }

    /// Writes the pours of the plan that was found; none if the one given was the best, or there is no room for it.
    pub(super) fn trace(&self, pours: &mut [Pour]) -> Option<(usize, Node)> {
        let Found { mut stop, mut parent, end } = self.found?;
        if self.pours_of(stop, parent) > pours.len() {
            return None;
        }
        let mut count = 0;
        while let Some(label) = self.store.label(parent) {
            for tank in tanks(stop.tanks) {
                let Stop { at, shift, .. } = stop;
                let fill = self.fill(parent, &stop, tank);
                let (position, tank) = (label.position, u32::try_from(tank).ok()?);
                *pours.get_mut(count)? = Pour { position, at, tank, fill, wait: shift };
                count += 1;
            }
            (stop, parent) = (label.stop, label.parent);
        }
        turn_round(pours.get_mut(..count)?);
        Some((count, end))
    }

    fn pours_of(&self, last: Stop, parent: u32) -> usize {
        let (mut stop, mut parent, mut count) = (last, parent, 0);
        while let Some(label) = self.store.label(parent) {
            count += tanks(stop.tanks).count();
            (stop, parent) = (label.stop, label.parent);
        }
        count
    }

    /// The whole sets that went into a tank: the leader's are decided, others' follow from where it was.
    fn fill(&self, parent: u32, stop: &Stop, tank: usize) -> u32 {
        if Some(tank) == self.choices.leader {
            return stop.fill;
        }
        let node = self.store.node(parent);
        let shift = usize::try_from(stop.shift).unwrap_or(usize::MAX);
        let slot = self.plant.slot_for(&node, stop.tanks, shift);
        let chosen = slot.and_then(|(slot, _)| choose(self.plant, &node, tank, &slot).fill());
        chosen.and_then(|index| u32::try_from(index).ok()).unwrap_or(0)
    }

    /// Counts; false when it has been enough.
    fn spend(&mut self, looks: u32) -> bool {
        self.looks += looks;
        self.all_looks = self.all_looks.saturating_add(looks);
        let in_vain = self.looks - self.looks_at_best;
        self.full |= self.looks > self.effort.most || in_vain > self.effort.in_vain;
        !self.full
    }

    fn is_hopeless(&self, node: &Node) -> bool {
        self.is_hopeless_beside(node, &self.bound.beside(node))
    }

    fn is_hopeless_beside(&self, node: &Node, beside: &Beside) -> bool {
        self.bound.is_hopeless(node, beside, &self.best, self.aim)
    }

    /// Takes a node up, if it may lead to something better.
    fn offer(&mut self, stop: Stop, node: &Node, parent: u32) {
        if self.is_hopeless(node) || self.is_dominated(node, NONE) {
            return;
        }
        let index = self.store.count;
        if self.store.add(stop, node, parent, Cost::default()) {
            self.store.link_last();
            self.store.push(index);
        } else {
            self.full = true;
        }
    }

    /// Takes a node up among the most promising of its stage.
    fn keep(&mut self, stop: Stop, node: &Node, parent: u32, Stage { first, width }: Stage) {
        let stage = first..self.store.count;
        let known =
            |index| self.store.label(index).is_some_and(|label| self.dominates(index, label, node, NONE));
        if stage.clone().any(known) {
            return;
        }
        let least = self.bound.least(node);
        if self.store.count < first + width {
            self.store.add(stop, node, parent, least);
            return;
        }
        let promise = |index: u32| self.store.label(index).map_or(Cost::default(), |label| label.least);
        let worst = stage.max_by(|a, b| self.bound.compare_promises(&promise(*a), &promise(*b)));
        if let Some(worst) = worst.filter(|it| self.bound.compare_promises(&least, &promise(*it)).is_lt()) {
            self.store.put(worst, stop, node, parent, least);
        }
    }

    fn ends(&self, node: &Node) -> bool {
        node.position >= self.plant.line.end() || node.work > self.plant.clock.total()
    }

    /// Is the node, as it is, the best plan?
    fn compare_with_best(&mut self, stop: Stop, node: &Node, parent: u32) {
        let further = compare(node.position, self.goal);
        if further == Ordering::Less {
            return;
        }
        let mut end = *node;
        if node.position < self.plant.line.end() {
            end.close_all(self.plant);
        }
        if further == Ordering::Equal && end.cost.compare(&self.best) != Ordering::Less {
            return;
        }
        self.best = end.cost;
        self.looks_at_best = self.looks;
        self.found = Some(Found { stop, parent, end });
        if node.position > self.goal {
            self.goal = node.position;
            self.bound.aim(self.goal);
        }
    }

    /// Is another label at the same place never worse?
    fn is_dominated(&mut self, node: &Node, index: u32) -> bool {
        let mut compared = 0;
        let is_dominated = self.store.any_near(node.position, |other, label| {
            compared += 1;
            other != index && self.dominates(other, label, node, index)
        });
        self.compared += compared;
        self.spend(self.compared / COMPARED);
        self.compared %= COMPARED;
        is_dominated
    }

    fn dominates(&self, other: u32, label: &Label, node: &Node, index: u32) -> bool {
        let is_thorough = self.choices.care == Care::Thorough;
        if compare(label.position, node.position) != Ordering::Equal
            || label.work > node.work + INSTANT
            || (is_thorough && label.work < node.work - INSTANT)
            || (label.early != node.early && (is_thorough || label.early != 0))
        {
            return false;
        }
        let cost = match (label.cost.compare_product(&node.cost), self.aim) {
            (Ordering::Equal, Aim::Fills) => compare(label.cost.squares, node.cost.squares)
                .then_with(|| label.cost.compare_ranks(&node.cost)),
            (cost, _) => cost,
        };
        if cost == Ordering::Greater {
            return false;
        }
        let (theirs, own) = (self.store.contents(other), node.contents(self.plant));
        if is_thorough {
            return self.is_same(node, theirs, own) && (cost == Ordering::Less || other < index);
        }
        if !self.is_no_worse(node, theirs, own) {
            return false;
        }
        // Of two alike the first one stays.
        let alike = cost == Ordering::Equal && label.work > node.work - INSTANT && label.early == node.early;
        !alike || other < index || !self.is_no_worse(node, own, theirs)
    }

    /// Does it make no difference which of two the tanks hold at this node?
    fn is_same(&self, node: &Node, a: &[Content], b: &[Content]) -> bool {
        a.iter().zip(b).enumerate().all(|(tank, (a, b))| same(self.plant, tank, node, a, b))
    }

    /// Is what the tanks hold at this node never worse than what others hold?
    fn is_no_worse(&self, node: &Node, a: &[Content], b: &[Content]) -> bool {
        let here = self.plant.line.order_at(node.position);
        a.iter().zip(b).enumerate().all(|(tank, (a, b))| no_worse(self.plant, here, tank, node, a, b))
    }
}

/// Does it make no difference which of two a tank holds at this node?
fn same(plant: &Plant<'_>, tank: usize, node: &Node, a: &Content, b: &Content) -> bool {
    let slack = plant.slack(tank);
    let near = |a: f64, b: f64, slack: f64| a.total_cmp(&b).is_eq() || (a - b).abs() <= slack;
    // Of a measured mix it is open yet how much it was.
    let alike = a.kind == b.kind && (a.kind != Kind::Measured || near(a.from, b.from, slack));
    let lines = || {
        let order = plant.line.order_at(node.position);
        let slurry = plant.line.slurry_in(order, tank, node.position);
        [a, b].map(|content| plant.hold_up_at(tank, order, slurry, content))
    };
    alike
        && near(a.recipe, b.recipe, slack)
        && near(a.end, b.end, slack)
        && near(a.expires, b.expires, INSTANT)
        && plant.leaves_stock(tank, a, b)
        && matches!(lines(), [a, b] if a.total_cmp(&b).is_eq())
}

/// Is what one tank holds at this node never worse than what another one holds?
fn no_worse(plant: &Plant<'_>, order: usize, tank: usize, node: &Node, a: &Content, b: &Content) -> bool {
    if a == b {
        return true;
    }
    if !plant.leaves_stock(tank, a, b) {
        return false;
    }
    let slack = plant.slack(tank);
    let slurry = plant.line.slurry_in(order, tank, node.position);
    let gone = |content: &Content| {
        content.kind == Kind::None
            || content.recipe < plant.line.recipe_end(tank, order)
            || content.end <= slurry + slack
            || content.expires <= node.work + INSTANT
    };
    let lines = |content| plant.hold_up_at(tank, order, slurry, content);
    match (gone(a), gone(b)) {
        // Full lines are not always better: sets may come out even with what empty ones take.
        (true, true) => {
            lines(a).total_cmp(&lines(b)).is_eq() && (a.kind != Kind::Measured || a.from >= b.from - slack)
        }
        (false, false) if a.kind == Kind::Sets => {
            (a.end - b.end).abs() <= slack && a.expires >= b.expires - INSTANT && b.kind == Kind::Sets
        }
        (false, false) => {
            a.from >= b.from - slack && a.end >= b.end - slack && a.expires >= b.expires - INSTANT
        }
        (false, true) => a.kind != Kind::Sets && b.kind != Kind::Sets && a.from >= b.from - slack,
        (true, false) => false,
    }
}

/// The last becomes the first. Not `reverse`, whose checks of bounds stay in what is built for size.
fn turn_round(mut pours: &mut [Pour]) {
    while let [first, between @ .., last] = pours {
        core::mem::swap(first, last);
        pours = between;
    }
}
