//! How much work is a plan? A budget, like one of flash: a bound that is weaker, or drops too much, shows in it.
//!
//! The figures in `tests/data/effort.txt` are what the planner takes, and no claim that this is right: whether a plan is the
//! best is for the brute force to say. A change of the search that is meant renews them with `HILUM_WRITE_EFFORT=1`, and says
//! in its commit what they became.
use crate::support::{hours, litres, need, order, run, seconds, shift};
use hilum::batch::{Filling, Job, Need, Order, Refill, SetSize, Shift, Tank};
use std::fmt::Write as _;

/// Invented days by number: a generator of its own, so that no version of a library changes them.
struct Chance(u64);

impl Chance {
    fn below(&mut self, limit: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % limit
    }

    fn one_of<T: Copy>(&mut self, of: &[T]) -> T {
        of[usize::try_from(self.below(u64::try_from(of.len()).unwrap())).unwrap()]
    }
}

/// What stands in a shed, by kind of day.
#[derive(Clone, Copy)]
struct Shed {
    name: &'static str,
    days: u64,
    /// Tanks of whole sets, then measured ones.
    with_sets: usize,
    measured: usize,
    least_orders: u64,
    most_orders: u64,
    most_shifts: u64,
    pot_lives: &'static [Option<f64>],
    stock: Option<u32>,
}

const ALIVE: &[Option<f64>] = &[Some(2.5), Some(4.0), Some(6.0), Some(24.0), None];

const ONE: Shed = Shed {
    name: "one tank of sets",
    days: 60,
    with_sets: 1,
    measured: 0,
    least_orders: 1,
    most_orders: 8,
    most_shifts: 4,
    pot_lives: ALIVE,
    stock: None,
};

const SHEDS: [Shed; 7] = [
    ONE,
    Shed { name: "sets on the shelf", days: 40, stock: Some(6), ..ONE },
    Shed { name: "sets and a measured tank", days: 80, measured: 1, most_orders: 5, most_shifts: 3, ..ONE },
    Shed {
        name: "sets and two measured tanks",
        days: 60,
        measured: 2,
        most_orders: 4,
        most_shifts: 2,
        ..ONE
    },
    Shed {
        name: "two measured tanks",
        days: 40,
        with_sets: 0,
        measured: 2,
        pot_lives: &[None, None, Some(5.0)],
        ..ONE
    },
    Shed { name: "two tanks of sets", days: 10, with_sets: 2, measured: 1, most_shifts: 2, ..ONE },
    Shed {
        name: "many orders",
        days: 4,
        measured: 1,
        least_orders: 101,
        most_orders: 130,
        most_shifts: 14,
        ..ONE
    },
];

fn sizes(chance: &mut Chance, stock: Option<u32>) -> Vec<SetSize> {
    let few =
        chance.one_of(&[&[20.0][..], &[20.0, 5.0], &[20.0, 10.0, 5.0, 2.5], &[20.3, 9.7], &[12.0, 7.0, 3.0]]);
    let sizes = few.iter().zip([4.0, 3.0, 2.0, 1.0]);
    let stock =
        |chance: &mut Chance| stock.map(|most| u32::try_from(chance.below(u64::from(most) + 1)).unwrap());
    sizes
        .map(|(adds, rank)| SetSize { adds: litres(*adds), stock: stock(chance), ranks: [rank, 0.0] })
        .collect()
}

fn tanks<'a>(shed: &Shed, sets: &'a [Vec<SetSize>], chance: &mut Chance) -> Vec<Tank<'a>> {
    (0..shed.with_sets + shed.measured)
        .map(|tank| Tank {
            capacity: litres(chance.one_of(&[21.0, 30.0, 45.0, 60.0])),
            hold_up: litres(chance.one_of(&[0.0, 0.0, 1.0])),
            mixing: seconds(60.0 * chance.one_of(&[5.0, 12.0, 20.0])),
            refill: chance.one_of(&[Refill::WhenEmpty, Refill::WhenEmpty, Refill::TopUp]),
            pot_life: if tank == 0 { chance.one_of(shed.pot_lives).map(hours) } else { None },
            filling: sets.get(tank).map_or(Filling::Measured, |sizes| Filling::Sets(sizes)),
        })
        .collect()
}

fn orders(shed: &Shed, chance: &mut Chance) -> Vec<Order> {
    let count = shed.least_orders + chance.below(shed.most_orders - shed.least_orders + 1);
    let share = if count > 100 { 0.1 } else { 1.0 };
    let amounts = [1500.0, 3200.0, 4100.0, 7777.0];
    let changeovers = [0.0, 10.0, 25.0];
    (0..count)
        .map(|_| order(share * chance.one_of(&amounts), 2800.0, share * chance.one_of(&changeovers)))
        .collect()
}

/// One recipe or two; one order in twelve needs nothing of a measured tank.
fn needs(shed: &Shed, orders: usize, chance: &mut Chance) -> Vec<Option<Need>> {
    let recipes = chance.one_of(&[1, 1, 2]);
    let tanks = shed.with_sets + shed.measured;
    (0..orders * tanks)
        .map(|cell| (cell / tanks, cell % tanks))
        .map(|(row, tank)| {
            let living = if tank < shed.with_sets { 1.0 } else { 0.0 };
            let is_left_out = tank >= shed.with_sets && chance.below(12) == 0;
            let of = need(chance.one_of(&[3.0, 4.0, 5.0]), u32::from(row * recipes >= orders), living);
            of.filter(|_| !is_left_out)
        })
        .collect()
}

fn looks(shed: &Shed, day: u64) -> u32 {
    let mut chance = Chance(day * 977 + 11);
    let sets: Vec<Vec<SetSize>> = (0..shed.with_sets).map(|_| sizes(&mut chance, shed.stock)).collect();
    let tanks = tanks(shed, &sets, &mut chance);
    let orders = orders(shed, &mut chance);
    let needs = needs(shed, orders.len(), &mut chance);
    let shifts: Vec<Shift> = (0..=chance.below(shed.most_shifts))
        .map(|day| 24.0 * f64::from(u32::try_from(day).unwrap()))
        .map(|day| shift(day + 7.0, day + chance.one_of(&[12.0, 15.5, 17.0])))
        .collect();
    let job = Job { orders: &orders, tanks: &tanks, needs: &needs, shifts: &shifts };
    run(job).map_or(0, |planned| planned.looks)
}

#[test]
fn no_more_is_looked_at_than_budgeted() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/data/effort.txt");
    let mut told = String::new();
    for shed in &SHEDS {
        write!(told, "{}:", shed.name).unwrap();
        (0..shed.days).for_each(|number| write!(told, " {}", looks(shed, number)).unwrap());
        told.push('\n');
    }
    if std::env::var_os("HILUM_WRITE_EFFORT").is_some() {
        std::fs::write(path, &told).unwrap();
    }
    let budget = std::fs::read_to_string(path).unwrap();
    for (told, budget) in told.lines().zip(budget.lines()) {
        let mut days = told.split(' ').zip(budget.split(' ')).enumerate();
        if let Some((day, (took, most))) = days.find(|(_, (took, most))| took != most) {
            panic!("{told}\nDay {day} took {took} looks; the budget is {most}.");
        }
    }
    assert_eq!(told.lines().count(), budget.lines().count());
}
