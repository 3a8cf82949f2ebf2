//! Branch and bound over how many sets of each size to open.
//!
//! Depth first, one size per level, most sets first. Sizes go by price per coverage, then largest first
//! (for the fewest sets: largest first), so that sets of a later size that make up whole sets of an earlier
//! one are never worth opening: `Swap`. A branch is left when not even its bound could beat the best so far.

use core::cmp::Ordering;

use super::{MOST_SIZES, Objective, PackSize, Price, Proof, Supply};
use crate::math;
use crate::slack::SLACK;

/// Partial choices looked at before the search stops: measured, at most 4 ms on a two-core x86-64 machine.
pub(super) const MOST_NODES: u32 = 100_000;

/// Multiples of a common measure are met to this share of the size: noise of conversions, nothing more.
const NOISE: f64 = 1e-12;

/// What was found.
pub(super) struct Found {
    /// Sets of each size, in the order given.
    pub(super) sets: [f64; MOST_SIZES],
    /// Partial choices that could still have been looked at.
    pub(super) nodes_left: u32,
    pub(super) supply: Supply,
}

impl Found {
    pub(super) fn proof(&self) -> Proof {
        if self.nodes_left == 0 { Proof::BoundReached } else { Proof::Proven }
    }
}

/// The best choice for a need.
pub(super) fn best(need: f64, sizes: &[PackSize], objective: Objective) -> Found {
    let slack = need * SLACK;
    let mut levels = [Level::NONE; MOST_SIZES];
    let mut start =
        Node { remaining: need, cost: 0.0, sets: 0.0, counts: [0.0; MOST_SIZES], most: [0.0; MOST_SIZES] };
    let mut in_stock = 0.0;
    for (((level, most), size), place) in levels.iter_mut().zip(&mut start.most).zip(sizes).zip(0..) {
        *level = Level::new(place, size);
        *most = level.stock;
        in_stock += level.stock * level.covers;
    }
    if in_stock < need - slack {
        return Found { sets: start.most, nodes_left: MOST_NODES, supply: Supply::Short };
    }
    let levels = levels.get_mut(..sizes.len()).unwrap_or_default();
    set_up(levels, objective);
    for (level, most) in levels.iter().zip(&mut start.most) {
        *most = level.stock;
    }
    let levels = &*levels;
    let mut swaps = [[Swap::NONE; MOST_SIZES]; MOST_SIZES];
    for (swaps, this) in swaps.iter_mut().zip(levels) {
        for (swap, other) in swaps.iter_mut().zip(levels) {
            *swap = Swap::of(this, other).unwrap_or(Swap::NONE);
        }
    }
    let mut search = Search {
        levels,
        swaps: &swaps,
        objective,
        slack,
        least_leftover: 0.0,
        best: None,
        nodes_left: MOST_NODES,
    };
    search.least_leftover = levels.first().map_or(0.0, |first| search.bound(&start, first).leftover);
    search.descend(0, &start);
    Found {
        sets: search.best.map_or([0.0; MOST_SIZES], |(_, sets)| sets),
        nodes_left: search.nodes_left,
        supply: Supply::Enough,
    }
}

fn stock(size: &PackSize) -> f64 {
    size.stock.map_or(f64::INFINITY, f64::from)
}

fn price(size: &PackSize) -> f64 {
    size.price.map_or(0.0, Price::number)
}

/// Sets of a later size that a swap takes out, and of this one that it puts in, for the same coverage.
#[derive(Clone, Copy)]
struct Swap {
    put_in: f64,
    taken_out: f64,
}

impl Swap {
    const NONE: Self = Self { put_in: f64::INFINITY, taken_out: f64::INFINITY };

    /// The fewest sets of a later size that make up whole sets of this one. Swapping them is never a loss:
    /// this size comes first because it costs no more per coverage, or takes no more sets.
    fn of(this: &Level, later: &Level) -> Option<Self> {
        let measure = common_measure(this.covers, later.covers)?;
        let (put_in, taken_out) = (later.covers / measure, this.covers / measure);
        Some(Self { put_in: math::round(put_in), taken_out: math::round(taken_out) })
    }
}

/// One size of pack, at its level of the search.
#[derive(Clone, Copy)]
struct Level {
    /// Its place among the sizes as given.
    place: usize,
    covers: f64,
    price: f64,
    stock: f64,
    /// Common measure of the coverages from this level on; 0 when there is none.
    measure: f64,
    /// Least price per coverage from this level on.
    cheapest: f64,
    /// Largest coverage from this level on.
    largest: f64,
}

impl Level {
    const NONE: Self =
        Self { place: 0, covers: 0.0, price: 0.0, stock: 0.0, measure: 0.0, cheapest: 0.0, largest: 0.0 };

    fn new(place: usize, size: &PackSize) -> Self {
        let (covers, price) = (size.covers.0, price(size));
        let cheapest = price / covers;
        Self { place, covers, price, stock: stock(size), measure: covers, cheapest, largest: covers }
    }
}

/// Which of two sizes is decided first.
fn order(one: &Level, other: &Level, objective: Objective) -> Ordering {
    let by_price = compare(one.price * other.covers, other.price * one.covers);
    let by_coverage = compare(other.covers, one.covers);
    match objective {
        Objective::FewestSets => by_coverage.then(by_price),
        Objective::LeastLeftover | Objective::LeastCost => by_price.then(by_coverage),
    }
    .then(one.place.cmp(&other.place))
}

/// Puts the sizes in the order in which they are decided, and says what holds from each on.
fn set_up(levels: &mut [Level], objective: Objective) {
    let mut left = &mut *levels;
    while !left.is_empty() {
        first_to_front(left, objective);
        left = left.get_mut(1..).unwrap_or_default();
    }
    let mut after: Option<&Level> = None;
    for level in levels.iter_mut().rev() {
        if let Some(after) = after {
            level.measure = common_measure(level.covers, after.measure).unwrap_or(0.0);
            level.cheapest = math::min(level.cheapest, after.cheapest);
            level.largest = math::max(level.largest, after.largest);
        }
        after = Some(level);
    }
}

/// Takes the size that is decided first to the front; the others stay in their order. One by one: a comparison with
/// slack is no total order, so it cannot sort.
fn first_to_front(levels: &mut [Level], objective: Objective) {
    let Some((mut first, rest)) = levels.split_first().map(|(first, rest)| (*first, rest)) else { return };
    for level in rest {
        if order(level, &first, objective) == Ordering::Less {
            first = *level;
        }
    }
    let mut taken = first;
    for level in levels {
        core::mem::swap(level, &mut taken);
        if taken.place == first.place {
            return;
        }
    }
}

/// The largest number that two coverages are whole multiples of, but for noise (Euclid).
fn common_measure(one: f64, other: f64) -> Option<f64> {
    let (mut large, mut small) = (math::max(one, other), math::min(one, other));
    let noise = large * NOISE;
    while small > noise {
        let rest = large - math::floor(large / small) * small;
        // Just below a multiple is noise as well.
        (large, small) = (small, if small - rest <= noise { 0.0 } else { rest });
    }
    let fits = |covers: f64| (covers - math::round(covers / large) * large).abs() <= covers * NOISE;
    (one > 0.0 && other > 0.0 && fits(one) && fits(other)).then_some(large)
}

/// A partial choice: the levels above are decided.
#[derive(Clone, Copy)]
struct Node {
    /// Seed still to cover; negative when there is some left over.
    remaining: f64,
    cost: f64,
    sets: f64,
    /// Sets of each level.
    counts: [f64; MOST_SIZES],
    /// The most sets of each level: stock, and what a swap would take out.
    most: [f64; MOST_SIZES],
}

impl Node {
    /// With so many sets of a level.
    fn with(&self, depth: usize, level: &Level, swaps: &[Swap], sets: f64) -> Self {
        let mut node = *self;
        node.remaining -= sets * level.covers;
        node.cost += sets * level.price;
        node.sets += sets;
        if let Some(count) = node.counts.get_mut(depth) {
            *count = sets;
        }
        for (most, swap) in node.most.iter_mut().zip(swaps).skip(depth + 1) {
            if sets + swap.put_in <= level.stock {
                *most = math::min(*most, swap.taken_out - 1.0);
            }
        }
        node
    }
}

/// What choices are compared by; of a partial choice, the least that it can come to.
#[derive(Clone, Copy)]
struct Score {
    leftover: f64,
    cost: f64,
    sets: f64,
}

struct Search<'a> {
    levels: &'a [Level],
    /// Of each level with each later one.
    swaps: &'a [[Swap; MOST_SIZES]; MOST_SIZES],
    objective: Objective,
    /// Seed below this does not count.
    slack: f64,
    /// No choice at all leaves less over.
    least_leftover: f64,
    /// Score and sets by place.
    best: Option<(Score, [f64; MOST_SIZES])>,
    nodes_left: u32,
}

impl Search<'_> {
    /// Decides the level at this depth and those after it.
    fn descend(&mut self, depth: usize, node: &Node) {
        let (levels, swaps) = (self.levels, self.swaps);
        let (Some(level), Some(swaps)) = (levels.get(depth), swaps.get(depth)) else { return };
        let Some(most) = node.most.get(depth) else { return };
        let mut sets = math::min(math::ceil((node.remaining - self.slack) / level.covers), *most);
        while sets >= 0.0 && self.nodes_left > 0 {
            self.nodes_left -= 1;
            let with = node.with(depth, level, swaps, sets);
            sets -= 1.0;
            if with.remaining <= self.slack {
                self.offer(&with);
                continue;
            }
            let Some(next) = self.levels.get(depth + 1) else { return };
            // Fewer of this level leave the later ones even more to cover, at no less cost.
            if self.out_of_reach(depth + 1, &with) || self.lost(&with, next) {
                return;
            }
            let bound = self.bound(&with, next);
            if self.best.is_none_or(|(best, _)| self.compare(&bound, &best) != Ordering::Greater) {
                self.descend(depth + 1, &with);
            }
        }
    }

    /// Whether the levels from this depth on cannot cover what remains.
    fn out_of_reach(&self, depth: usize, node: &Node) -> bool {
        let rest = self.levels.iter().zip(&node.most).skip(depth);
        rest.map(|(level, most)| level.covers * most).sum::<f64>() < node.remaining - self.slack
    }

    /// Whether neither this partial choice nor one with fewer sets of its level can be the best.
    fn lost(&self, node: &Node, next: &Level) -> bool {
        let Some((best, _)) = self.best else { return false };
        let least = node.remaining - self.slack;
        let dearer = compare(node.cost + least * next.cheapest, best.cost) == Ordering::Greater;
        match self.objective {
            Objective::LeastLeftover => dearer && best.leftover <= self.least_leftover + self.slack,
            Objective::LeastCost => dearer,
            Objective::FewestSets => node.sets + math::ceil(least / next.largest) > best.sets,
        }
    }

    /// The least that a partial choice can come to, of each part of the score.
    fn bound(&self, node: &Node, next: &Level) -> Score {
        let least = math::max(node.remaining - self.slack, 0.0);
        let covered =
            if next.measure > 0.0 { math::ceil(least / next.measure) * next.measure } else { least };
        Score {
            leftover: math::max(covered - node.remaining, 0.0),
            cost: node.cost + covered * next.cheapest,
            sets: node.sets + math::ceil(least / next.largest),
        }
    }

    /// A choice that covers the need.
    fn offer(&mut self, node: &Node) {
        let score = Score { leftover: math::max(-node.remaining, 0.0), cost: node.cost, sets: node.sets };
        let mut sets = [0.0; MOST_SIZES];
        for (level, count) in self.levels.iter().zip(node.counts) {
            if let Some(place) = sets.get_mut(level.place) {
                *place = count;
            }
        }
        let better = self.best.is_none_or(|(best, best_sets)| match self.compare(&score, &best) {
            Ordering::Less => true,
            Ordering::Equal => sets > best_sets,
            Ordering::Greater => false,
        });
        if better {
            self.best = Some((score, sets));
        }
    }

    fn compare(&self, one: &Score, other: &Score) -> Ordering {
        let leftover = within(one.leftover, other.leftover, self.slack);
        let cost = compare(one.cost, other.cost);
        let sets = compare(one.sets, other.sets);
        match self.objective {
            Objective::LeastLeftover => leftover.then(cost).then(sets),
            Objective::LeastCost => cost.then(leftover).then(sets),
            Objective::FewestSets => sets.then(leftover).then(cost),
        }
    }
}

/// Compares numbers that are not negative, with the relative slack.
fn compare(one: f64, other: f64) -> Ordering {
    within(one, other, math::max(one, other) * SLACK)
}

/// Compares with an absolute slack.
fn within(one: f64, other: f64, slack: f64) -> Ordering {
    if (one - other).abs() <= slack { Ordering::Equal } else { one.total_cmp(&other) }
}
