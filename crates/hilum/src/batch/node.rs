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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::batch::clock::Clock;
    use crate::batch::fill::{Fills, Keep};
    use crate::batch::line::{Line, numbers};
    use crate::batch::{Filling, Job, Need, Order, Refill, SetSize, Tank};
    use crate::quantity::{Mass, Time, Volume, mass::kilogram, time::second, volume::cubic_meter};

    /// 100 kg. The first tank gives 1 a kg, half of it living, in sets of 10, with 4 in the lines; the second 2 a kg by
    /// measure, a quarter living, 50 at most, with 3 in the lines.
    #[test]
    fn what_mixes_cost() {
        let volume = Volume::new::<cubic_meter>;
        let set = [SetSize { adds: volume(10.0), stock: None, ranks: [3.0, 4.0] }];
        let tank = |capacity, hold_up, filling| Tank {
            capacity: volume(capacity),
            hold_up: volume(hold_up),
            mixing: Time::new::<second>(0.0),
            refill: Refill::WhenEmpty,
            pot_life: None,
            filling,
        };
        let tanks = [tank(40.0, 4.0, Filling::Sets(&set)), tank(50.0, 3.0, Filling::Measured)];
        let need = |per_mass, living| {
            Some(Need { per_mass: volume(per_mass) / Mass::new::<kilogram>(1.0), recipe: 1, living })
        };
        let needs = [need(1.0, 0.5), need(2.0, 0.25)];
        let (mass, changeover) = (Mass::new::<kilogram>(100.0), Time::new::<second>(0.0));
        let orders = [Order { mass, speed: None, changeover }];
        let job = Job { orders: &orders, tanks: &tanks, needs: &needs, shifts: &[] };
        let (mut memory, mut before) = ([0.0; 16], [0.0; 1]);
        assert_eq!(numbers(1, 2), 16);
        let plant = Plant {
            tanks: &tanks,
            line: Line::new(job, &mut memory).unwrap(),
            clock: Clock::new(&[], &mut before),
            fills: [Fills::NONE; MAX_TANKS],
            keep: Keep::NoStock,
        };
        let slot = |at| Slot { shift: 0, at, ready: at };
        let mut two = Fill { living: 20.0, ranks: [6.0, 8.0, 2.0], ..Fill::default() };
        two.sets = [2, 0, 0, 0, 0, 0, 0, 0];
        let cost = |opened, mixes, squares, ranks| Cost { opened, mixes, finish: 0.0, squares, ranks };
        let mut node = Node::START;
        // 20 living are 40 of slurry, 4 of which stay in the lines.
        node.mix(&plant, 0, &slot(0.0), Some(&two));
        assert_eq!(node.cost, cost(20.0, 1.0, 1600.0, [6.0, 8.0, 2.0]));
        assert_eq!((node.content(0).end, node.content(0).opened), (36.0, two.sets));
        // Of a measured one, a quarter of what the lines take is lost; how much is mixed is still open.
        node.mix(&plant, 1, &slot(0.0), None);
        assert_eq!((node.cost, node.content(1).end), (cost(20.75, 2.0, 1600.0, [6.0, 8.0, 2.0]), 47.0));
        // After 20 kg: 40 and the lines were mixed.
        node.position = 20.0;
        node.mix(&plant, 1, &slot(20.0), None);
        assert_eq!(
            (node.cost, node.content(1).end),
            (cost(20.75, 3.0, 1600.0 + 43.0 * 43.0, [6.0, 8.0, 2.0]), 90.0)
        );
        // After 30 kg sets are mixed again with 6 left: these go, and the lines are filled again.
        node.position = 30.0;
        node.mix(&plant, 0, &slot(30.0), Some(&two));
        assert_eq!(node.cost, cost(40.75, 4.0, 3200.0 + 43.0 * 43.0, [12.0, 16.0, 4.0]));
        assert_eq!((node.content(0).end, node.content(0).opened.first()), (66.0, Some(&4)));
        // The end: 20 were mixed for the 10 kg since the last measured mix.
        node.close_all(&plant);
        assert_eq!(node.cost, cost(40.75, 4.0, 3200.0 + 43.0 * 43.0 + 400.0, [12.0, 16.0, 4.0]));
    }
}
