//! The choice of packs against all choices there are.
//!
//! The brute force counts in whole quarters of a hundred pounds and whole cents, so it has no noise to
//! look away from; `choose` gets the same numbers in pounds and dollars.

#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may panic")]

use hilum::pack::{Choice, Coverage, Objective, PackSize, Price, Proof, Supply, choose};
use hilum::quantity::{Mass, mass::pound};
use proptest::prelude::*;

/// A size of pack in whole numbers: quarters of a hundredweight, sets, cents.
#[derive(Clone, Copy, Debug)]
struct Size {
    covers: u32,
    stock: Option<u32>,
    cents: Option<u32>,
}

/// Sets of each size and what they come to.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Best {
    sets: Vec<u64>,
    leftover: u64,
    cents: u64,
}

fn pounds(quarters: u32) -> Mass {
    Mass::new::<pound>(f64::from(quarters) * 25.0)
}

fn open(need: u32, sizes: &[Size], objective: Objective) -> Choice {
    let sizes: Vec<_> = sizes
        .iter()
        .map(|size| PackSize {
            covers: Coverage::new(pounds(size.covers)).unwrap(),
            stock: size.stock,
            price: size.cents.map(|cents| Price::new(f64::from(cents) / 100.0).unwrap()),
        })
        .collect();
    choose(pounds(need), &sizes, objective).unwrap()
}

/// Every choice in which no size alone covers more than the need takes.
fn brute(need: u32, sizes: &[Size], objective: Objective) -> (Best, Supply) {
    let in_stock: Option<u64> =
        sizes.iter().map(|size| size.stock.map(|stock| u64::from(stock) * u64::from(size.covers))).sum();
    let supply =
        if in_stock.is_some_and(|all| all < u64::from(need)) { Supply::Short } else { Supply::Enough };
    if supply == Supply::Short {
        // Then all that is on hand is opened.
        let sets: Vec<u64> = sizes.iter().map(|size| u64::from(size.stock.unwrap_or(0))).collect();
        let cents = sizes.iter().zip(&sets).map(|(size, n)| u64::from(size.cents.unwrap_or(0)) * n).sum();
        return (Best { sets, leftover: 0, cents }, supply);
    }
    let most: Vec<u64> = sizes
        .iter()
        .map(|size| match size.stock {
            Some(stock) => u64::from(stock.min(need.div_ceil(size.covers))),
            None => u64::from(need.div_ceil(size.covers)),
        })
        .collect();
    let mut best: Option<Best> = None;
    let mut sets = vec![0_u64; sizes.len()];
    loop {
        let sum =
            |of: fn(&Size) -> u32| sizes.iter().zip(&sets).map(|(s, n)| u64::from(of(s)) * n).sum::<u64>();
        if let Some(leftover) = sum(|size| size.covers).checked_sub(u64::from(need)) {
            let found = Best { sets: sets.clone(), leftover, cents: sum(|size| size.cents.unwrap_or(0)) };
            if best.as_ref().is_none_or(|best| key(&found, objective) < key(best, objective)) {
                best = Some(found);
            }
        }
        // The next choice, as an odometer counts.
        let Some(wheel) = sets.iter().zip(&most).position(|(n, most)| n < most) else { break };
        sets[..wheel].fill(0);
        sets[wheel] += 1;
    }
    (best.unwrap(), supply)
}

/// What the documentation of `choose` says: objective, leftover, cost, sets, earlier sizes.
fn key(choice: &Best, objective: Objective) -> ([u64; 4], Vec<std::cmp::Reverse<u64>>) {
    let sets = choice.sets.iter().sum();
    let first = match objective {
        Objective::LeastLeftover => choice.leftover,
        Objective::LeastCost => choice.cents,
        Objective::FewestSets => sets,
    };
    let earlier = choice.sets.iter().copied().map(std::cmp::Reverse).collect();
    ([first, choice.leftover, choice.cents, sets], earlier)
}

fn objective() -> impl Strategy<Value = Objective> {
    prop_oneof![Just(Objective::LeastLeftover), Just(Objective::LeastCost), Just(Objective::FewestSets)]
}

fn size() -> impl Strategy<Value = Size> {
    // Few different prices, some of them in proportion, so that ties happen.
    let price =
        prop_oneof![Just(None), (0_u32..5).prop_map(Some), (0_u32..5).prop_map(|price| Some(price * 250))];
    (5_u32..60, prop::option::of(0_u32..12), price).prop_map(|(covers, stock, price)| Size {
        covers,
        stock,
        cents: price.map(|price| price * covers.div_ceil(4)),
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 500, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn is_the_best_of_all(
        need in 1_u32..160,
        sizes in prop::collection::vec(size(), 1..=4),
        objective in objective(),
    ) {
        let (best, supply) = brute(need, &sizes, objective);
        let choice = open(need, &sizes, objective);
        prop_assert_eq!(choice.proof, Proof::Proven);
        prop_assert_eq!(choice.supply, supply);
        prop_assert_eq!(choice.sets().collect::<Vec<_>>(), best.sets);
        let quarters = f64::from(u32::try_from(best.leftover).unwrap());
        prop_assert!((choice.leftover.get::<pound>() - quarters * 25.0).abs() < 1e-6);
        let cents = f64::from(u32::try_from(best.cents).unwrap());
        prop_assert!((choice.cost - cents / 100.0).abs() < 1e-9);
    }

    #[test]
    fn covers_the_need_whatever_the_sizes(
        need in 1e-3_f64..1e12,
        covers in prop::collection::vec(1e-1_f64..1e4, 1..=8),
        stock in prop::option::of(0_u32..1_000),
        objective in objective(),
    ) {
        let sizes: Vec<_> = covers
            .iter()
            .map(|lb| PackSize { covers: Coverage::new(Mass::new::<pound>(*lb)).unwrap(), stock, price: None })
            .collect();
        let need = Mass::new::<pound>(need);
        let choice = choose(need, &sizes, objective).unwrap();
        prop_assert!(choice.supply == Supply::Short || choice.covered >= need * (1.0 - 1e-9));
        prop_assert!(choice.leftover.value >= 0.0);
        if choice.supply == Supply::Enough {
            let most = stock.map_or(u64::MAX, u64::from);
            prop_assert!(choice.sets().all(|sets| sets <= most));
        }
    }
}
