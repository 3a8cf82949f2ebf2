//! The planner against the brute force.
use crate::brute::{Best, Brute, Toy, ToyOrder, ToyTank};
use crate::support::{Planned, litres, run, seconds};
use crate::valid;
use hilum::batch::{Filling, Job, Need, Order, Proof, Refill, SetSize, Shift, Tank};
use hilum::quantity::{
    Mass, MassFlow, Volume, mass::kilogram, mass_flow::kilogram_per_second, volume::liter,
};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

/// The toy in the planner's terms: a running minute takes 1 L.
pub(crate) fn plan_toy(toy: &Toy) -> Planned {
    let orders: Vec<Order> = toy
        .orders
        .iter()
        .map(|it| Order {
            mass: Mass::new::<kilogram>(f64::from(it.minutes * it.speed)),
            speed: Some(MassFlow::new::<kilogram_per_second>(f64::from(it.speed) / 60.0)),
            changeover: seconds(60.0 * f64::from(it.changeover)),
        })
        .collect();
    let sets: Vec<Vec<SetSize>> = toy
        .tanks
        .iter()
        .map(|tank| {
            tank.sets
                .iter()
                .enumerate()
                .map(|(size, set)| SetSize {
                    adds: litres(f64::from(*set)),
                    stock: tank.stock.get(size).map(|stock| u32::try_from(*stock).unwrap()),
                    ranks: [f64::from(*set), 0.0],
                })
                .collect()
        })
        .collect();
    let tanks: Vec<Tank<'_>> = toy
        .tanks
        .iter()
        .zip(&sets)
        .map(|(it, sets)| Tank {
            capacity: litres(f64::from(it.capacity)),
            hold_up: litres(f64::from(it.hold_up)),
            mixing: seconds(60.0 * f64::from(it.mixing)),
            refill: Refill::WhenEmpty,
            pot_life: it.pot_life.map(|life| seconds(60.0 * f64::from(life))),
            filling: if sets.is_empty() { Filling::Measured } else { Filling::Sets(sets) },
        })
        .collect();
    let mut needs = Vec::new();
    for order in &toy.orders {
        for (recipe, tank) in order.recipes.iter().zip(&toy.tanks) {
            needs.push(recipe.map(|recipe| Need {
                per_mass: Volume::new::<liter>(1.0) / Mass::new::<kilogram>(f64::from(order.speed)),
                recipe: u32::try_from(recipe).unwrap(),
                living: if tank.sets.is_empty() { 0.0 } else { 1.0 },
            }));
        }
    }
    let shifts: Vec<Shift> = toy
        .shifts
        .iter()
        .map(|(from, to)| Shift {
            from: seconds(60.0 * f64::from(*from)),
            to: seconds(60.0 * f64::from(*to)),
        })
        .collect();
    let job = Job { orders: &orders, tanks: &tanks, needs: &needs, shifts: &shifts };
    let planned = run(job).unwrap();
    valid::check(&job, &planned);
    planned
}

fn cost(toy: &Toy, planned: &Planned) -> [f64; 5] {
    let total: i32 = toy.orders.iter().map(|it| it.minutes * it.speed).sum();
    let litres = |volume: Volume| volume.get::<liter>();
    let sets = |tank: usize| !toy.tanks[tank].sets.is_empty();
    [
        f64::from(total) - planned.summary.treated.get::<kilogram>(),
        planned.mixes.iter().filter(|mix| sets(mix.tank)).map(|mix| litres(mix.mixed)).sum(),
        planned.mixes.iter().map(|_| 1.0).sum(),
        planned.summary.finish.map_or(0.0, |finish| finish.value / 60.0),
        planned.mixes.iter().map(|mix| litres(mix.mixed) * litres(mix.mixed)).sum(),
    ]
}

/// The toy and its plan, in a few lines.
fn tell(toy: &Toy, planned: &Planned) -> String {
    let mixes = planned.mixes.iter().map(|mix| {
        let times = mix.times.unwrap_or_default();
        let minutes = [times.mix_at, times.ready_at, times.done_at].map(|it| it.value / 60.0);
        let litres = [mix.mixed, mix.applied, mix.hold_up, mix.discarded].map(|it| it.get::<liter>());
        let use_by = times.use_by.map(|it| it.value / 60.0);
        format!("\ntank {} {minutes:?} use by {use_by:?}: {litres:?}", mix.tank)
    });
    format!("\n{toy:?}{}", mixes.collect::<String>())
}

fn agrees(toy: &Toy) -> Result<(), TestCaseError> {
    agrees_with(toy, Brute::best(toy))
}

pub(crate) fn agrees_with(toy: &Toy, best: Best) -> Result<(), TestCaseError> {
    let planned = plan_toy(toy);
    let mut found = cost(toy, &planned);
    let Best { untreated, opened, mixes, finish, squares } = best;
    let best = [untreated, opened, mixes, finish, squares].map(f64::from);
    if toy.shifts.is_empty() {
        // Nothing is said of instants.
        found[3] = best[3];
    }
    prop_assert_eq!(planned.summary.proof, Proof::Proven);
    let measured = toy.tanks.iter().any(|tank| tank.sets.is_empty());
    // Beside others, and where nights or a pot life come between, measured fills are levelled as far as can be seen.
    let alone = toy.tanks.len() == 1 && toy.shifts.len() <= 1 && toy.tanks[0].pot_life.is_none();
    let levels = if measured && !alone { 4 } else { 5 };
    for (level, (found, best)) in found.iter().zip(best).enumerate().take(levels) {
        if measured && *found < best - 1e-6 {
            // The brute force stops on whole minutes only: a valid plan that is better is no mistake.
            break;
        }
        prop_assert!(
            (found - best).abs() < 1e-6,
            "level {}: {} instead of {} {}",
            level,
            found,
            best,
            tell(toy, &planned)
        );
    }
    Ok(())
}

fn orders(tanks: usize) -> impl Strategy<Value = Vec<ToyOrder>> {
    let order = (3..10_i32, 1..3_i32, 0..3_i32, prop::collection::vec((0..4_i32, 0..5_i32), tanks));
    prop::collection::vec(order, 1..4).prop_map(|orders| {
        let mut recipes = [1_i32; 9];
        orders
            .into_iter()
            .map(|(minutes, speed, changeover, needs)| {
                let recipes = needs
                    .iter()
                    .enumerate()
                    .map(|(tank, (change, need))| {
                        recipes[tank] += i32::from(*change == 0);
                        (*need > 0 || tank == 0).then_some(recipes[tank])
                    })
                    .collect();
                ToyOrder { minutes, speed, changeover, recipes }
            })
            .collect()
    })
}

fn shifts() -> impl Strategy<Value = Vec<(i32, i32)>> {
    prop::collection::vec((1..20_i32, 6..18_i32), 1..4).prop_map(|lengths| {
        let mut at = 0;
        lengths
            .into_iter()
            .enumerate()
            .map(|(index, (night, work))| {
                let from = at + if index > 0 { night } else { 0 };
                at = from + work;
                (from, at)
            })
            .collect()
    })
}

fn leader() -> impl Strategy<Value = ToyTank> {
    (
        4..10_i32,
        0..2_i32,
        1..4_i32,
        prop::option::weighted(0.8, 4..30_i32),
        prop::collection::vec(2..6_i32, 1..4),
    )
        .prop_map(|(capacity, hold_up, mixing, pot_life, mut sets)| {
            sets.retain(|set| *set <= capacity);
            if sets.is_empty() {
                sets.push(2);
            }
            ToyTank { capacity, hold_up, mixing, pot_life, sets, stock: vec![] }
        })
}

fn follower(pot_life: f64) -> impl Strategy<Value = ToyTank> {
    (2..9_i32, 0..2_i32, 0..4_i32, prop::option::weighted(pot_life, 5..20_i32)).prop_map(
        |(capacity, hold_up, mixing, pot_life)| ToyTank {
            capacity,
            hold_up,
            mixing,
            pot_life,
            sets: vec![],
            stock: vec![],
        },
    )
}

fn one() -> impl Strategy<Value = Toy> {
    (orders(1), leader(), shifts()).prop_map(|(orders, leader, shifts)| Toy {
        orders,
        tanks: vec![leader],
        shifts,
    })
}

fn measured() -> impl Strategy<Value = Toy> {
    (orders(1), follower(0.7), shifts()).prop_map(|(orders, tank, shifts)| Toy {
        orders,
        tanks: vec![tank],
        shifts,
    })
}

fn two() -> impl Strategy<Value = Toy> {
    (orders(2), leader(), follower(0.5), shifts()).prop_map(|(orders, leader, mut follower, shifts)| {
        follower.pot_life = None;
        Toy { orders, tanks: vec![leader, follower], shifts }
    })
}

fn two_measured() -> impl Strategy<Value = Toy> {
    (orders(2), follower(0.5), follower(0.5), shifts()).prop_map(|(orders, mut first, mut second, shifts)| {
        (first.pot_life, second.pot_life) = (None, None);
        Toy { orders, tanks: vec![first, second], shifts }
    })
}

fn three() -> impl Strategy<Value = Toy> {
    (orders(3), leader(), follower(0.5), follower(0.5), shifts()).prop_map(
        |(orders, leader, mut first, mut second, shifts)| {
            (first.pot_life, second.pot_life) = (None, None);
            Toy { orders, tanks: vec![leader, first, second], shifts }
        },
    )
}

/// More with HILUM_CASES.
pub(crate) fn cases() -> u32 {
    std::env::var("HILUM_CASES").ok().and_then(|cases| cases.parse().ok()).unwrap_or(150)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: cases(), failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn one_tank_of_sets_is_best(toy in one()) {
        agrees(&toy)?;
    }

    /// Stock is never exceeded; where it does not suffice, as much as can be is treated, and the plan says so.
    #[test]
    fn sets_on_the_shelf_are_best(mut toy in one(), stock in prop::collection::vec(0..5_i32, 3)) {
        let free = Brute::best(&toy);
        toy.tanks[0].stock = stock;
        let kept = Brute::best(&toy);
        let short = plan_toy(&toy).summary.short_of_stock;
        prop_assert_eq!(short, u32::from(kept.untreated > free.untreated));
        agrees_with(&toy, kept)?;
    }

    /// Without shifts no time is lost and no pot life ends.
    #[test]
    fn sets_without_shifts_are_best(toy in one(), stock in prop::collection::vec(0..5_i32, 0..4)) {
        let mut toy = toy;
        toy.tanks[0].mixing = 0;
        toy.tanks[0].pot_life = None;
        toy.tanks[0].stock = stock;
        toy.orders.iter_mut().for_each(|order| order.changeover = 0);
        toy.shifts = vec![(0, 1000)];
        let best = Brute::best(&toy);
        toy.shifts = vec![];
        agrees_with(&toy, best)?;
    }

    #[test]
    fn one_measured_tank_is_best(toy in measured()) {
        agrees(&toy)?;
    }

    #[test]
    fn sets_and_a_follower_are_best(toy in two()) {
        agrees(&toy)?;
    }

    #[test]
    fn two_measured_tanks_are_best(toy in two_measured()) {
        agrees(&toy)?;
    }

    #[test]
    fn sets_and_two_followers_are_best(toy in three()) {
        agrees(&toy)?;
    }
}

/// Wherever the treater may stop for a measured tank, at any minute, the squares of its fills are no less in a plan that is
/// equal in all else. Where several nights come between, stops are moved one stretch at a time, and now and then two would have to
/// move together: in no more than one toy of a hundred.
#[test]
fn a_measured_tank_is_level() {
    let mut runner = TestRunner::deterministic();
    let worse = |mut toy: Toy| {
        toy.tanks[0].pot_life = None;
        let Best { untreated, opened, mixes, finish, squares } = Brute::best_anywhere(&toy);
        let found = cost(&toy, &plan_toy(&toy));
        let others = [untreated, opened, mixes, finish].map(f64::from);
        let alike = found.iter().zip(others).all(|(a, b)| (a - b).abs() < 1e-6);
        alike && found[4] > f64::from(squares) + 1e-6
    };
    let toys = (0..200).map(|_| measured().new_tree(&mut runner).unwrap().current());
    assert!(toys.filter(|toy| worse(toy.clone())).count() <= 2);
}

/// What the rules leave out: a treater that may stop for a follower at any minute, and end a day early so that the sets of
/// the next come out even. Told, not asserted: run with `--ignored --nocapture`.
#[test]
#[ignore = "a measurement"]
fn stops_anywhere() {
    let mut runner = TestRunner::deterministic();
    let toys = (0..cases()).map(|_| two().new_tree(&mut runner).unwrap().current());
    let better: Vec<_> = toys.filter_map(|toy| agrees_with(&toy, Brute::best_anywhere(&toy)).err()).collect();
    let texts: Vec<_> = better.iter().map(ToString::to_string).collect();
    println!("{} of {}:\n{}", better.len(), cases(), texts.join("\n"));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: cases(), failure_persistence: None, ..ProptestConfig::default() })]

    /// Two pot lives: nothing is claimed but that the rules are kept.
    #[test]
    fn two_pot_lives_keep_the_rules(mut toy in two(), life in 5..20_i32) {
        toy.tanks[1].pot_life = Some(life);
        plan_toy(&toy);
    }
}
