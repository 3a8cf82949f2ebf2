//! Cases worked by hand.
use crate::support::{litres, need, order, run, set, shift, tank};
use hilum::batch::{Error, Filling, Job, Proof, SetSize};

/// 10 t at 4 t/h, 5 mL/kg: 50 L. One size of set, 10 L neat, tank 20 L: three mixes of 20, 20 and 10 L. From eight
/// o'clock: a quarter of an hour to mix, one hour to run 4 t: 8:15, 9:15, 9:30, 10:30, 10:45, 11:15.
#[test]
fn one_day() {
    let sets = [set(10.0, 1.0)];
    let job = Job {
        orders: &[order(10_000.0, 4000.0, 0.0)],
        tanks: &[tank(20.0, 15.0, Some(24.0), Filling::Sets(&sets))],
        needs: &[need(5.0, 1, 1.0)],
        shifts: &[shift(8.0, 18.0)],
    };
    let planned = run(job).unwrap();
    for mix in &planned.mixes {
        println!("{mix:?}");
    }
    println!("{:?} {:?}", planned.summary, planned.portions);
    assert!(planned.summary.all_treated);
    assert_eq!(planned.mixes.len(), 3);
    let finish = planned.summary.finish.unwrap().value;
    assert!((finish - 11.25 * 3600.0).abs() < 1e-6, "{finish}");
}

/// 9 t at 5 mL/kg: 45 L in a tank of 20 L, sets of 8 L (5 on hand) and 20 L (5 on hand).
/// Without the shelf in mind six sets of 8 L (48 L) are least: 16 + 16 + 16. With five of them, 40 L and one of 20 L
/// would be 60 L; two of 20 L and one of 8 L are 48 L as well, in three mixes: 20 + 20 + 8.
#[test]
fn few_small_sets_are_made_up_with_large_ones() {
    let size = |litres, stock| SetSize { stock: Some(stock), ..set(litres, litres) };
    let sets = [size(8.0, 5), size(20.0, 5)];
    let job = Job {
        orders: &[order(9000.0, 4000.0, 0.0)],
        tanks: &[tank(20.0, 15.0, None, Filling::Sets(&sets))],
        needs: &[need(5.0, 1, 1.0)],
        shifts: &[],
    };
    let planned = run(job).unwrap();
    let opened = |size: usize| planned.mixes.iter().map(|mix| mix.sets[size]).sum::<u32>();
    assert_eq!((opened(0), opened(1), planned.mixes.len()), (1, 2, 3));
    assert!(planned.summary.all_treated);
    assert_eq!((planned.summary.short_of_stock, planned.summary.proof), (0, Proof::Proven));
}

/// 6 t at 5 mL/kg are 30 L, three sets of 10 L; two are on hand: 20 L treat 4 t, and 2 t are left, with and
/// without shifts. The order after them, which does not need the tank, waits behind them.
#[test]
fn sets_run_out() {
    let sets = [SetSize { stock: Some(2), ..set(10.0, 1.0) }];
    for shifts in [&[][..], &[shift(8.0, 18.0)][..]] {
        let job = Job {
            orders: &[order(6000.0, 4000.0, 0.0), order(1000.0, 4000.0, 0.0)],
            tanks: &[tank(20.0, 15.0, None, Filling::Sets(&sets))],
            needs: &[need(5.0, 1, 1.0), None],
            shifts,
        };
        let planned = run(job).unwrap();
        assert_eq!(planned.mixes.len(), 1);
        assert_eq!(planned.mixes[0].sets[0], 2);
        assert!((planned.summary.treated.value - 4000.0).abs() < 1e-6, "{:?}", planned.summary);
        assert!(!planned.summary.all_treated);
        assert_eq!((planned.summary.short_of_stock, planned.summary.proof), (1, Proof::Proven));
    }
}

/// None on hand: nothing is mixed, nothing treated.
#[test]
fn an_empty_shelf() {
    let sets = [SetSize { stock: Some(0), ..set(10.0, 1.0) }];
    let job = Job {
        orders: &[order(6000.0, 4000.0, 0.0)],
        tanks: &[tank(20.0, 15.0, None, Filling::Sets(&sets))],
        needs: &[need(5.0, 1, 1.0)],
        shifts: &[shift(8.0, 18.0)],
    };
    let planned = run(job).unwrap();
    assert_eq!(planned.mixes.len(), 0);
    assert_eq!((planned.summary.treated.value, planned.summary.short_of_stock), (0.0, 1));
}

/// One set on hand fills no more than half of the lines (5 of 10 L): the tank is large enough, the shelf is not.
#[test]
fn a_shelf_that_does_not_fill_the_lines() {
    let sets = [SetSize { stock: Some(1), ..set(5.0, 1.0) }];
    let mut it = tank(40.0, 15.0, None, Filling::Sets(&sets));
    it.hold_up = litres(10.0);
    let job =
        Job { orders: &[order(6000.0, 4000.0, 0.0)], tanks: &[it], needs: &[need(5.0, 1, 1.0)], shifts: &[] };
    let planned = run(job).unwrap();
    assert_eq!((planned.mixes.len(), planned.summary.short_of_stock), (0, 1));
}

/// One set adds 44 mL. At a share of 0.0023 that is 19.13 L of slurry in a tank of 147 L, so up to seven sets (133.9 L);
/// neat, 76 sets (3.344 L) are the fewest that fill lines of 3.3 L and leave some. The tank is not too small for either, with
/// 147 / 0.044 = 3340 sets in it at most, nor is one ten times as large.
#[test]
fn many_small_sets_in_a_large_tank() {
    let sets = [set(0.044, 1.0)];
    for capacity in [147.0, 1470.0] {
        let mut it = tank(capacity, 15.0, None, Filling::Sets(&sets));
        it.hold_up = litres(3.3);
        let job = Job {
            orders: &[order(10_000.0, 4000.0, 0.0), order(10_000.0, 4000.0, 0.0), order(100.0, 4000.0, 0.0)],
            tanks: &[it],
            needs: &[need(5.0, 1, 0.0023), need(5.0, 2, 1.0), need(0.4, 3, 1.0)],
            shifts: &[],
        };
        let planned = run(job).unwrap();
        crate::valid::check(&job, &planned);
        assert!(planned.summary.all_treated);
        // 50 L and the lines are 53.3 L of the first recipe: three sets, 57.39 L.
        assert_eq!(planned.mixes[0].sets[0], 3);
        // 53.3 L neat are 1212 sets, in one mix or in several; not all fills were looked at, so a handful more is allowed.
        let (last, before) = planned.mixes.split_last().unwrap();
        let neat: u32 = before[1..].iter().map(|mix| mix.sets[0]).sum();
        assert!((1212..1212 + 40).contains(&neat), "{neat} sets");
        // 0.04 L and the lines: 76 sets.
        assert!((76..76 + 40).contains(&last.sets[0]), "{last:?}");
        assert_eq!(planned.summary.proof, Proof::Bounded);
    }
}

/// Lines of 10 L take all that two sets of 5 L add; a tank of 14 L does not take a third.
#[test]
fn a_tank_that_is_too_small() {
    let sets = [set(5.0, 1.0)];
    let mut it = tank(14.0, 15.0, None, Filling::Sets(&sets));
    it.hold_up = litres(10.0);
    let job =
        Job { orders: &[order(6000.0, 4000.0, 0.0)], tanks: &[it], needs: &[need(5.0, 1, 1.0)], shifts: &[] };
    assert_eq!(run(job).map(|planned| planned.summary), Err(Error::TankTooSmall { tank: 0 }));
    it.capacity = litres(15.0);
    assert!(run(Job { tanks: &[it], ..job }).is_ok());
}
