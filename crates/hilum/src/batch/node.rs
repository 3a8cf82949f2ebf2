//! A plan up to a stop, and what it has cost so far.

use super::clock::Slot;
use super::fill::Fill;
use super::line::SLACK;
use super::step::{Content, Kind, Plant};
use super::{MAX_SIZES, MAX_TANKS, tanks};
use core::cmp::Ordering;

/// What plans are compared by, after the seed treated.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub(super) struct Cost {
    /// Living product poured as whole sets, and what empty lines took of others.
    pub(super) opened: f64,
    pub(super) mixes: f64,
    /// Work time when the last seed has passed.
    pub(super) finish: f64,
    /// Of the fills.
    pub(super) squares: f64,
    /// Of the sets.
    pub(super) ranks: [f64; 3],
}

/// Near enough to be the same: sums in another order differ in their last bits.
pub(super) fn compare(a: f64, b: f64) -> Ordering {
    let slack = SLACK * a.abs().max(b.abs());
    if a < b - slack {
        Ordering::Less
    } else if a > b + slack {
        Ordering::Greater
    } else {
        Ordering::Equal
    }
}

/// The least difference in time that counts.
pub(super) fn compare_times(a: f64, b: f64) -> Ordering {
    compare_within(a, b, 1e-6)
}

fn compare_within(a: f64, b: f64, slack: f64) -> Ordering {
    if a < b - slack {
        Ordering::Less
    } else if a > b + slack {
        Ordering::Greater
    } else {
        Ordering::Equal
    }
}

impl Cost {
    /// In the order of what is wanted.
    pub(super) fn compare(&self, other: &Self) -> Ordering {
        self.compare_product(other)
            .then_with(|| compare_times(self.finish, other.finish))
            .then_with(|| compare(self.squares, other.squares))
            .then_with(|| self.compare_ranks(other))
    }

    /// Living product, then mixes.
    pub(super) fn compare_product(&self, other: &Self) -> Ordering {
        compare(self.opened, other.opened).then_with(|| compare_within(self.mixes, other.mixes, 0.5))
    }

    pub(super) fn compare_ranks(&self, other: &Self) -> Ordering {
        let pairs = self.ranks.iter().zip(&other.ranks);
        pairs.map(|(a, b)| compare(*a, *b)).find(|order| order.is_ne()).unwrap_or(Ordering::Equal)
    }
}

/// At a stop, before anything is mixed.
#[derive(Clone, Copy, Debug)]
pub(super) struct Node {
    pub(super) position: f64,
    /// Work time, the changeover done.
    pub(super) work: f64,
    pub(super) cost: Cost,
    /// Tanks to be mixed here although they are not due.
    pub(super) early: u32,
    pub(super) contents: [Content; MAX_TANKS],
}

impl Node {
    pub(super) const START: Self = Self {
        position: 0.0,
        work: 0.0,
        cost: Cost { opened: 0.0, mixes: 0.0, finish: 0.0, squares: 0.0, ranks: [0.0; 3] },
        early: 0,
        contents: [Content {
            recipe: 0.0,
            from: 0.0,
            end: 0.0,
            hold_up: 0.0,
            expires: 0.0,
            kind: Kind::None,
            opened: [0; MAX_SIZES],
        }; MAX_TANKS],
    };

    pub(super) fn contents(&self, plant: &Plant<'_>) -> &[Content] {
        self.contents.get(..plant.tanks.len()).unwrap_or(&[])
    }

    pub(super) fn content(&self, tank: usize) -> Content {
        self.contents.get(tank).copied().unwrap_or_default()
    }

    /// The tanks that need a mix before the next seed.
    pub(super) fn due(&self, plant: &Plant<'_>) -> u32 {
        self.due_at(plant, self.work)
    }

    /// The same, after waiting until a work time.
    pub(super) fn due_at(&self, plant: &Plant<'_>, work: f64) -> u32 {
        let order = plant.line.order_at(self.position);
        let contents = self.contents(plant).iter().enumerate();
        contents
            .filter(|(tank, content)| plant.is_due_in(order, *tank, self.position, work, content))
            .map(|it| 1 << it.0)
            .sum()
    }

    /// Mixes one tank; `fill` says which whole sets. The treater waits for it.
    pub(super) fn mix(&mut self, plant: &Plant<'_>, tank: usize, slot: &Slot, fill: Option<&Fill>) {
        let mixed = self.start(plant, tank, slot);
        let living = plant.living(tank, self.position);
        if let Some(fill) = fill {
            return self.pour(tank, &mixed, fill, living);
        }
        self.cost.opened += mixed.hold_up * living;
        if let Some(cell) = self.contents.get_mut(tank) {
            *cell = mixed;
        }
    }

    /// All of a mix but what goes in: gives what the tank would hold if as much was mixed as can be used.
    pub(super) fn start(&mut self, plant: &Plant<'_>, tank: usize, slot: &Slot) -> Content {
        self.close(plant, tank);
        self.cost.mixes += 1.0;
        self.work = slot.ready;
        plant.mixed(tank, self.position, slot.at, &self.content(tank))
    }

    /// Pours whole sets, of this living share, into a mix that was started.
    pub(super) fn pour(&mut self, tank: usize, started: &Content, fill: &Fill, living: f64) {
        let slurry = fill.living / living;
        self.cost.opened += fill.living;
        self.cost.squares += slurry * slurry;
        self.cost.ranks.iter_mut().zip(&fill.ranks).for_each(|(sum, rank)| *sum += rank);
        if let Some(cell) = self.contents.get_mut(tank) {
            *cell = started.of_sets(slurry);
            cell.opened.iter_mut().zip(&fill.sets).for_each(|(sum, sets)| *sum = sum.saturating_add(*sets));
        }
    }

    /// A measured mix turns out to have been what was used of it.
    fn close(&mut self, plant: &Plant<'_>, tank: usize) {
        let content = self.content(tank);
        if content.kind == Kind::Measured {
            let used =
                plant.line.slurry(tank, self.position).min(content.recipe) - content.from + content.hold_up;
            self.cost.squares += used * used;
        }
    }

    /// Nothing more is treated.
    pub(super) fn close_all(&mut self, plant: &Plant<'_>) {
        tanks(u32::MAX).take(plant.tanks.len()).for_each(|tank| self.close(plant, tank));
    }
}
