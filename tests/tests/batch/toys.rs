//! Toys that few random ones are like: each has shown a planner with one slip in it to be worse than the brute force.
use crate::brute::{Brute, Toy, ToyOrder, ToyTank};
use crate::optimum::agrees_with;

/// Minutes, kg per minute, minutes of changeover; the recipe of each tank, 0 if it is not needed.
fn order(minutes: i32, speed: i32, changeover: i32, recipes: &[i32]) -> ToyOrder {
    let recipes = recipes.iter().map(|recipe| (*recipe > 0).then_some(*recipe)).collect();
    ToyOrder { minutes, speed, changeover, recipes }
}

/// Litres, litres, minutes, minutes (0: for ever); litres of each set, and how many of them there are.
fn tank(capacity: i32, hold_up: i32, mixing: i32, pot_life: i32, sets: &[i32], stock: &[i32]) -> ToyTank {
    let pot_life = (pot_life > 0).then_some(pot_life);
    ToyTank { capacity, hold_up, mixing, pot_life, sets: sets.to_vec(), stock: stock.to_vec() }
}

fn toy(orders: &[ToyOrder], tanks: &[ToyTank], shifts: &[(i32, i32)]) -> Toy {
    Toy { orders: orders.to_vec(), tanks: tanks.to_vec(), shifts: shifts.to_vec() }
}

fn are_best(toys: &[Toy]) {
    for toy in toys {
        // Without shifts there is time for all.
        let shifts = if toy.shifts.is_empty() { vec![(0, 1000)] } else { toy.shifts.clone() };
        let best = Brute::best(&Toy { shifts, ..toy.clone() });
        agrees_with(toy, best).unwrap();
    }
}

/// A larger fill than can be used, so that the sets of the next one come out even.
#[test]
fn sets_that_come_out_even() {
    are_best(&[toy(
        &[order(3, 1, 0, &[1]), order(3, 1, 2, &[1]), order(8, 2, 1, &[1])],
        &[tank(4, 1, 2, 4, &[4, 2], &[])],
        &[(0, 7), (13, 25), (40, 48)],
    )]);
}

/// What is left on the shelf decides which of two plans up to a stop is the better one.
#[test]
fn sets_left_on_the_shelf() {
    are_best(&[
        toy(&[order(4, 2, 0, &[1]), order(8, 1, 0, &[2])], &[tank(7, 0, 0, 0, &[2, 3], &[2, 4])], &[]),
        toy(&[order(9, 2, 0, &[1]), order(4, 2, 0, &[2])], &[tank(9, 1, 0, 0, &[3, 4], &[2])], &[]),
        toy(
            &[order(6, 2, 0, &[1]), order(7, 1, 0, &[1]), order(5, 2, 1, &[1])],
            &[tank(7, 0, 1, 4, &[5, 4, 2], &[4, 2, 4])],
            &[(0, 8), (12, 29)],
        ),
    ]);
}

/// What is treated, where time or sets do not suffice, bounds what is still to come.
#[test]
fn what_is_still_to_come() {
    are_best(&[
        toy(
            &[order(7, 1, 0, &[1]), order(6, 2, 1, &[2]), order(9, 2, 1, &[2])],
            &[tank(5, 0, 1, 10, &[4, 3, 3], &[])],
            &[(0, 8)],
        ),
        toy(
            &[order(6, 2, 1, &[2]), order(7, 1, 2, &[3])],
            &[tank(7, 0, 2, 9, &[3], &[3, 1, 1])],
            &[(0, 6), (15, 30)],
        ),
    ]);
}
