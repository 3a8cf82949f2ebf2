//! What will the rest cost at least?

use super::MAX_TANKS;
use super::fill::sizes;
use super::line::SLACK;
use super::node::{Cost, Node, compare, compare_times};
use super::search::Aim;
use super::step::{Kind, Plant};
use crate::math::ceil;
use core::cmp::Ordering;

/// What is to be bettered, and what every order still asks for after its recipe.
#[derive(Debug)]
pub(super) struct Bound<'a, 'b> {
    plant: &'b Plant<'a>,
    leader: Option<usize>,
    /// Per tank and order: mixes of the recipes after the order's, at least.
    mixes: &'b [f64],
    /// Per tank and order: slurry of the largest mix of the order's recipe.
    largest: &'b [f64],
    /// Per tank and order: living share of the order's recipe.
    living: &'b [f64],
    /// Per order: living product of the leader's recipes after the order's, at least.
    opened: &'b [f64],
    /// The volume that all sets are multiples of; 0 if there is none.
    step: f64,
    /// The tanks, those that are longest in mixing first, and by how much longer than the next.
    slowest_first: [(usize, f64); MAX_TANKS],
    /// Seed that the best plan so far treats.
    goal: f64,
    /// When it is, in run time, and the slurry of each tank until then.
    arrival: f64,
    slurry: [f64; MAX_TANKS],
    /// Mixes and living product that fall beyond the goal.
    beyond_mixes: [f64; MAX_TANKS],
    beyond_opened: f64,
}

/// Numbers that a bound takes of the working memory.
pub(super) fn numbers(orders: usize, tanks: usize) -> usize {
    (orders + 1) * (3 * tanks + 1)
}

/// See [`Bound::beside`].
#[derive(Clone, Copy, Debug)]
pub(super) struct Beside {
    /// Of each tank but the leader.
    mixes: [f64; MAX_TANKS],
    /// Has the goal been reached?
    arrives: bool,
}

impl<'a, 'b> Bound<'a, 'b> {
    pub(super) fn new(plant: &'b Plant<'a>, leader: Option<usize>, memory: &'b mut [f64]) -> Option<Self> {
        let rows = plant.line.orders() + 1;
        let cells = rows * plant.tanks.len();
        let (mixes, rest) = memory.split_at_mut_checked(cells)?;
        let (largest, rest) = rest.split_at_mut_checked(cells)?;
        let (living, rest) = rest.split_at_mut_checked(cells)?;
        let opened = rest.get_mut(..rows)?;
        let step = leader
            .and_then(|tank| plant.tank(tank))
            .map_or(0.0, |tank| common(sizes(tank).iter().map(|it| it.adds.value)));
        for (tank, column) in mixes.chunks_exact_mut(rows.max(1)).enumerate() {
            later(plant, tank, column, |slurry, share| least_mixes(slurry, largest_mix(plant, tank, share)));
        }
        // Not zipped: what is built for size then keeps a check of the division by the rows.
        let mut all_largest = largest.chunks_exact_mut(rows.max(1));
        for (tank, living) in living.chunks_exact_mut(rows.max(1)).enumerate() {
            let Some(largest) = all_largest.next() else { break };
            for (order, (living, largest)) in living.iter_mut().zip(largest).enumerate() {
                *living = plant.living_of_recipe(tank, order);
                *largest = largest_mix(plant, tank, *living);
            }
        }
        if let Some(tank) = leader {
            later(plant, tank, opened, |slurry, share| least_opened(plant, tank, step, slurry * share));
        } else {
            opened.fill(0.0);
        }
        let mut bound = Self {
            plant,
            leader,
            mixes,
            largest,
            living,
            opened,
            step,
            slowest_first: slowest_first(plant),
            goal: 0.0,
            arrival: 0.0,
            slurry: [0.0; MAX_TANKS],
            beyond_mixes: [0.0; MAX_TANKS],
            beyond_opened: 0.0,
        };
        bound.aim(plant.line.end());
        Some(bound)
    }

    /// Sets the seed that is to be treated.
    pub(super) fn aim(&mut self, goal: f64) {
        self.goal = goal;
        self.arrival = self.plant.line.arrival(goal);
        for (tank, cell) in self.slurry.iter_mut().enumerate().take(self.plant.tanks.len()) {
            *cell = self.plant.line.slurry(tank, goal);
        }
        self.beyond_mixes = [0.0; MAX_TANKS];
        self.beyond_opened = 0.0;
        if goal >= self.plant.line.end() {
            return;
        }
        let (line, order) = (&self.plant.line, self.plant.line.order_at(goal));
        for tank in 0..self.plant.tanks.len() {
            // Of the recipe at the goal only what comes before it.
            let start = line.recipe_start(tank, order);
            let (whole, part) = (line.recipe_end(tank, order) - start, line.slurry(tank, goal) - start);
            let share = self.cell(self.living, tank, order);
            let lines = self.plant.tank(tank).map_or(0.0, |it| it.hold_up.value);
            let part = if part > self.plant.slack(tank) { part + lines } else { 0.0 };
            let cost = |slurry| least_mixes(slurry, self.cell(self.largest, tank, order));
            let mixes = self.cell(self.mixes, tank, order) + cost(whole + lines) - cost(part);
            if let Some(cell) = self.beyond_mixes.get_mut(tank) {
                *cell = mixes;
            }
            if Some(tank) == self.leader {
                let cost = |slurry: f64| least_opened(self.plant, tank, self.step, slurry * share);
                let later = self.opened.get(order).copied().unwrap_or(0.0);
                self.beyond_opened = later + cost(whole + lines) - cost(part);
            }
        }
    }

    fn cell(&self, table: &[f64], tank: usize, order: usize) -> f64 {
        let rows = self.plant.line.orders() + 1;
        table.get(tank * rows + order).copied().unwrap_or(0.0)
    }

    /// Can nothing better than this come of the node? `false` where that is not known.
    pub(super) fn is_hopeless(&self, node: &Node, beside: &Beside, best: &Cost, aim: Aim) -> bool {
        let least = self.least_beside(node, beside);
        let total = self.plant.clock.total();
        if least.finish > total + 1e-3 {
            return true;
        }
        // Seed counts before all else: as long as more might be treated, costs say nothing.
        if self.goal < self.plant.line.end() && least.finish < total - 1e-3 {
            return false;
        }
        let product = least.compare_product(best);
        if aim == Aim::Time {
            return product.then_with(|| compare_times(least.finish, best.finish)) != Ordering::Less;
        }
        let order = product.then_with(|| compare(least.finish, best.finish));
        let squares = || compare(least.squares + self.squares(node, best.mixes - least.mixes), best.squares);
        order.then_with(squares) == Ordering::Greater
    }

    /// Which of two is to be followed: what cannot be in time comes last.
    pub(super) fn compare_promises(&self, a: &Cost, b: &Cost) -> Ordering {
        let total = self.plant.clock.total();
        let late = |cost: &Cost| if cost.finish > total { cost.finish } else { 0.0 };
        late(a).total_cmp(&late(b)).then_with(|| a.compare(b))
    }

    /// Squares of what the leader's recipe in use still takes, at least, when so many mixes more than needed are made.
    fn squares(&self, node: &Node, spare: f64) -> f64 {
        let plant = self.plant;
        let Some(tank) = self.leader.filter(|_| self.goal >= plant.line.end()) else { return 0.0 };
        let order = plant.line.order_at(node.position);
        let (rest, living) = (self.rest(node, tank, order), self.cell(self.living, tank, order));
        if rest <= 0.0 || living <= 0.0 {
            return 0.0;
        }
        let poured = least_opened(plant, tank, self.step, rest * living) / living;
        let mixes = least_mixes(rest, self.cell(self.largest, tank, order)) + spare.max(0.0);
        poured * poured / mixes.max(1.0) * (1.0 - SLACK)
    }

    /// What a plan through this node costs at least when it treats the seed up to the goal.
    pub(super) fn least(&self, node: &Node) -> Cost {
        self.least_beside(node, &self.beside(node))
    }

    /// Mixes that the tanks beside the leader take at least: the same for all that may go into the leader.
    pub(super) fn beside(&self, node: &Node) -> Beside {
        let mut beside = Beside { mixes: [0.0; MAX_TANKS], arrives: node.position >= self.goal };
        if !beside.arrives {
            let order = self.plant.line.order_at(node.position);
            let mixes = beside.mixes.iter_mut().take(self.plant.tanks.len()).enumerate();
            for (tank, cell) in mixes.filter(|(tank, _)| Some(*tank) != self.leader) {
                *cell = self.mixes_of(tank, order, self.rest(node, tank, order));
            }
        }
        beside
    }

    /// The same as [`Self::least`], where it is known what tanks beside the leader take.
    pub(super) fn least_beside(&self, node: &Node, beside: &Beside) -> Cost {
        let mut cost = node.cost;
        if beside.arrives {
            return cost;
        }
        let mut mixes = beside.mixes;
        if let Some((tank, cell)) = self.leader.and_then(|tank| Some((tank, mixes.get_mut(tank)?))) {
            let order = self.plant.line.order_at(node.position);
            let rest = self.rest(node, tank, order);
            *cell = self.mixes_of(tank, order, rest);
            let living = rest * self.cell(self.living, tank, order);
            cost.opened += least_opened(self.plant, tank, self.step, living);
            cost.opened += (self.opened.get(order).copied().unwrap_or(0.0) - self.beyond_opened).max(0.0);
        }
        cost.mixes += mixes.iter().take(self.plant.tanks.len()).sum::<f64>();
        let run = self.arrival - self.plant.line.run_at(node.position);
        cost.finish = node.work + run + self.waits(&mixes);
        cost
    }

    /// Mixes of a tank up to the goal, where so much of the recipe in use is still to be mixed.
    fn mixes_of(&self, tank: usize, order: usize, rest: f64) -> f64 {
        let beyond = self.beyond_mixes.get(tank).copied().unwrap_or(0.0);
        let now = least_mixes(rest, self.cell(self.largest, tank, order));
        now + (self.cell(self.mixes, tank, order) - beyond).max(0.0)
    }

    /// How long the treater waits for so many mixes of each tank, at least: those of slower tanks beside those of quicker ones
    /// as far as they go.
    fn waits(&self, counts: &[f64; MAX_TANKS]) -> f64 {
        let (mut waits, mut most) = (0.0, 0.0_f64);
        for (tank, longer) in self.slowest_first.iter().take(self.plant.tanks.len()) {
            most = most.max(counts.get(*tank).copied().unwrap_or(0.0));
            waits += most * longer;
        }
        waits
    }

    /// Slurry of the recipe in use that is still to be mixed, lines included.
    fn rest(&self, node: &Node, tank: usize, order: usize) -> f64 {
        let plant = self.plant;
        let content = node.content(tank);
        let goal = self.slurry.get(tank).copied().unwrap_or(0.0);
        let until = plant.line.recipe_end(tank, order).min(goal);
        let here = plant.line.slurry_in(order, tank, node.position);
        if until <= here + plant.slack(tank) {
            return 0.0;
        }
        let due = plant.is_due_in(order, tank, node.position, node.work, &content);
        let current = content.recipe >= plant.line.recipe_end(tank, order) && content.kind != Kind::None;
        let lines = if current && !due { 0.0 } else { plant.hold_up_at(tank, order, here, &content) };
        let from = if current && !due { content.end } else { here };
        let rest = until - from;
        if rest > plant.slack(tank) { rest + lines } else { 0.0 }
    }
}

fn slowest_first(plant: &Plant<'_>) -> [(usize, f64); MAX_TANKS] {
    let mut order: [(usize, f64); MAX_TANKS] = core::array::from_fn(|tank| (tank, plant.mixing(tank)));
    super::sort::sort(&mut order, |(_, a), (_, b)| a > b);
    let mut quicker = 0.0;
    for (_, longer) in order.iter_mut().take(plant.tanks.len()).rev() {
        (quicker, *longer) = (*longer, *longer - quicker);
    }
    order
}

/// For every order: the sum over the recipes that come after its own.
fn later(plant: &Plant<'_>, tank: usize, column: &mut [f64], cost: impl Fn(f64, f64) -> f64) {
    let lines = plant.tank(tank).map_or(0.0, |it| it.hold_up.value);
    let (mut sum, mut recipe, mut share) = (0.0, None, 0.0);
    for (order, cell) in column.iter_mut().enumerate().rev() {
        let ends = plant.line.recipe_end(tank, order);
        if let Some(later) = recipe.filter(|later| ends < *later) {
            // The later recipe begins where this one ends.
            sum += cost(later - ends + lines, share);
        }
        if let Some(need) = plant.line.need(order, tank) {
            share = need.living;
        }
        recipe = Some(ends);
        *cell = sum;
    }
}

/// Slurry of the largest mix of a recipe with this living share; without end where the tank is topped up.
fn largest_mix(plant: &Plant<'_>, tank: usize, share: f64) -> f64 {
    if plant.tops_up(tank) {
        return f64::INFINITY;
    }
    let capacity = plant.capacity(tank);
    let fills = plant.fills(tank);
    let largest = if share > 0.0 {
        fills.at_most(capacity * share * (1.0 + SLACK)).and_then(|it| fills.get(it))
    } else {
        None
    };
    largest.map_or(capacity, |fill| fill.living / share)
}

/// Fewest mixes for so much slurry.
fn least_mixes(slurry: f64, largest: f64) -> f64 {
    if slurry <= 0.0 {
        return 0.0;
    }
    if largest.is_infinite() {
        return 1.0;
    }
    ceil(slurry / largest - SLACK * 10.0).max(0.0)
}

/// Least living product that whole sets can add up to, from so much on.
fn least_opened(plant: &Plant<'_>, tank: usize, step: f64, living: f64) -> f64 {
    if living <= 0.0 {
        return 0.0;
    }
    let wanted = living * (1.0 - SLACK);
    let fills = plant.fills(tank);
    let known = fills.at_least(wanted).filter(|_| fills.complete).and_then(|index| fills.get(index));
    match known {
        Some(fill) => fill.living,
        None if step > 0.0 => ceil(wanted / step - SLACK) * step,
        None => wanted,
    }
}

/// The largest volume that all are whole multiples of, if there is one worth the name.
fn common(sizes: impl Iterator<Item = f64> + Clone) -> f64 {
    let least = sizes.clone().fold(f64::INFINITY, f64::min);
    let step = sizes.fold(0.0, |a: f64, b| divisor(a, b, least * 1e-6));
    if step < least * 1e-3 { 0.0 } else { step }
}

/// Euclid's, up to a slack.
fn divisor(a: f64, b: f64, slack: f64) -> f64 {
    let (mut large, mut small) = (a.max(b), a.min(b));
    while small > slack {
        let rest = large - crate::math::floor(large / small + 1e-9) * small;
        (large, small) = (small, rest.max(0.0));
    }
    large
}
