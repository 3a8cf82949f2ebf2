//! Cases worked by hand. Seed runs at 4 t/h throughout; 5 mL/kg are 20 L an hour.
use crate::support::{Planned, hours, litres, need, order, run, set, shift, tank};
use crate::valid;
use hilum::batch::{Counted, Error, Filling, Job, Mix, Need, Order, Proof, Refill, SetSize, Shift, Tank};
use hilum::quantity::volume::liter;

pub(crate) fn plan(
    orders: &[Order],
    tanks: &[Tank<'_>],
    needs: &[Option<Need>],
    shifts: &[Shift],
) -> Planned {
    let job = Job { orders, tanks, needs, shifts };
    let planned = run(job).unwrap();
    valid::check(&job, &planned);
    planned
}

pub(crate) fn tonnes(seed: f64) -> Order {
    order(1000.0 * seed, 4000.0, 30.0)
}

fn is_at(planned: &Planned, hour: f64) -> bool {
    (planned.summary.finish.unwrap() - hours(hour)).abs().value < 1.0
}

fn of(planned: &Planned, tank: usize) -> Vec<Mix> {
    planned.mixes.iter().filter(|mix| mix.tank == tank).copied().collect()
}

fn discarded(planned: &Planned) -> f64 {
    planned.mixes.iter().map(|mix| mix.discarded.get::<liter>()).sum()
}

/// 10 t: 50 L. Sets of 10 L, tank of 20 L: three mixes of 20, 20 and 10 L. A quarter of an hour to mix, an hour to run:
/// 8:00, 8:15, 9:15, 9:30, 10:30, 10:45, 11:15.
#[test]
fn one_day() {
    let sets = [set(10.0, 1.0)];
    let tanks = [tank(20.0, 15.0, Some(24.0), Filling::Sets(&sets))];
    let planned = plan(&[tonnes(10.0)], &tanks, &[need(5.0, 1, 1.0)], &[shift(8.0, 18.0)]);
    assert_eq!((planned.mixes.len(), planned.summary.proof), (3, Proof::Proven));
    assert!(planned.summary.all_treated && is_at(&planned, 11.25));
    assert!(discarded(&planned) < 1e-9);
}

/// 36 t: 180 L. A large set (40 L) lasts two hours, a small one (20 L) an hour; pot life four hours, half an hour to mix.
/// 8:30 to 10:30, 11:00 to 13:00, 13:30 to 15:30; ready again at 16:00 with an hour to go: a large set would lose half of
/// it overnight, a small one is used up. One large set is left for the morning: 8:30 to 10:30. The small one could as
/// well come sooner in the day: of plans alike the large fills come first.
#[test]
fn the_last_mix_before_the_night_is_a_small_one() {
    let sets = [set(40.0, 1.0), set(20.0, 1.0)];
    let tanks = [tank(40.0, 30.0, Some(4.0), Filling::Sets(&sets))];
    let shifts = [shift(8.0, 17.0), shift(32.0, 41.0)];
    let planned = plan(&[tonnes(36.0)], &tanks, &[need(5.0, 1, 1.0)], &shifts);
    assert_eq!(planned.summary.proof, Proof::Proven);
    assert!(planned.summary.all_treated && is_at(&planned, 34.5));
    assert!(discarded(&planned) < 1e-9);
    assert_eq!(planned.mixes.len(), 5);
    assert_eq!(planned.mixes[3].sets[..2], [0, 1]);
}

/// 9 t: 45 L. Two large sets would leave 35 L, a large and a small one leave 5 L.
#[test]
fn small_sets_save_what_large_ones_would_waste() {
    let sets = [set(40.0, 1.0), set(10.0, 1.0)];
    let tanks = [tank(40.0, 30.0, Some(24.0), Filling::Sets(&sets))];
    let planned = plan(&[tonnes(9.0)], &tanks, &[need(5.0, 1, 1.0)], &[shift(8.0, 17.0)]);
    assert!((discarded(&planned) - 5.0).abs() < 1e-9);
    // 40 and 10 L: that 20 and 30 L would have a smaller sum of squares does not help, no sets make them of one large.
    assert_eq!(planned.mixes.len(), 2);
}

/// 8 t: 40 L, one set, mixed at 16:00 of the first day because a small order of another recipe came before; it is good
/// for a day, so what is left in the evening is used in the morning.
#[test]
fn a_mix_outlives_the_night() {
    let sets = [set(40.0, 1.0)];
    let tanks = [tank(40.0, 30.0, Some(24.0), Filling::Sets(&sets))];
    let shifts = [shift(15.5, 17.0), shift(32.0, 41.0)];
    let planned = plan(&[tonnes(8.0)], &tanks, &[need(5.0, 1, 1.0)], &shifts);
    // Ready at 16:00, an hour in the evening, an hour in the morning.
    assert!(planned.mixes.len() == 1 && is_at(&planned, 33.0));
}

/// Twelve hours of seed, nine of shift: half an hour to mix, two to run, so three and a half mixes: 8:30 to 10:30, to
/// 13:00, to 15:30, and from 16:00 to 17:00: seven hours, 28 t. The last one is half a set too large.
#[test]
fn out_of_time() {
    let sets = [set(40.0, 1.0)];
    let tanks = [tank(40.0, 30.0, Some(24.0), Filling::Sets(&sets))];
    let planned = plan(&[tonnes(48.0)], &tanks, &[need(5.0, 1, 1.0)], &[shift(8.0, 17.0)]);
    assert!(!planned.summary.all_treated);
    assert!((planned.summary.treated.value - 28_000.0).abs() < 1e-6);
    assert!((discarded(&planned) - 20.0).abs() < 1e-6);
}

/// 26 t: six and a half hours. A set of the living product lasts 3 h 15, and is good for four hours; a quarter of an hour
/// to mix. The other tank lasts two hours and takes 20 minutes. Filled to the brim every time, it would stop the treater
/// twice within the second living mix: 20 + 195 + 2 × 20 minutes is more than four hours, and a third set is opened.
/// Filled for as long as the living mix lasts, in two fills, both are mixed together: 20 + 195 + 20 minutes, twice.
#[test]
fn a_second_tank_filled_in_step_saves_a_mix() {
    let sets = [set(65.0, 1.0)];
    let tanks =
        [tank(65.0, 15.0, Some(4.0), Filling::Sets(&sets)), tank(20.0, 20.0, None, Filling::Measured)];
    let needs = [need(5.0, 1, 1.0), need(2.5, 1, 0.0)];
    let planned = plan(&[tonnes(26.0)], &tanks, &needs, &[shift(6.0, 20.0)]);
    assert_eq!(planned.summary.proof, Proof::Proven);
    assert_eq!((of(&planned, 0).len(), of(&planned, 1).len()), (2, 4));
    assert!(is_at(&planned, 6.0 + (2.0 * 235.0) / 60.0));
    assert!(discarded(&planned) < 1e-6);
    let second = |tank: usize, number: usize| of(&planned, tank)[number].times.unwrap().mix_at;
    assert_eq!(second(0, 1), second(1, 2));
    // 13 t a living mix, 32.5 L in two fills alike.
    assert!(
        of(&planned, 1).iter().all(|mix| (mix.mixed.get::<liter>() - 16.25).abs() < 0.01),
        "{:?}",
        of(&planned, 1)
    );
}

/// 10 t: 50 L, and 2 L in empty lines: the first mix fills them. Another recipe for 2 t: 10 L and the lines again.
/// Sets of 13 L, tank of 26 L: 26 + 26 = 52 for the first, one set for the second leaves 1 L.
#[test]
fn lines_are_filled_once_a_recipe() {
    let sets = [set(13.0, 1.0)];
    let mut it = tank(26.0, 15.0, Some(24.0), Filling::Sets(&sets));
    it.hold_up = litres(2.0);
    let needs = [need(5.0, 1, 1.0), need(5.0, 2, 1.0)];
    let planned = plan(&[tonnes(10.0), tonnes(2.0)], &[it], &needs, &[shift(8.0, 18.0)]);
    let parts = |mix: &Mix| [mix.mixed, mix.applied, mix.hold_up, mix.discarded].map(|it| it.get::<liter>());
    let expected = [[26.0, 24.0, 2.0, 0.0], [26.0, 26.0, 0.0, 0.0], [13.0, 10.0, 2.0, 1.0]];
    for (mix, expected) in planned.mixes.iter().zip(expected) {
        assert!(parts(mix).iter().zip(expected).all(|(a, b)| (a - b).abs() < 1e-9), "{mix:?}");
    }
}

/// 20 L: one set of 20 L or two of 10 L, whichever is cheaper.
#[test]
fn the_cheaper_of_two_alike() {
    let mixed = |large: f64, small: f64| {
        let sets = [set(20.0, large), set(10.0, small)];
        let tanks = [tank(20.0, 15.0, None, Filling::Sets(&sets))];
        plan(&[tonnes(4.0)], &tanks, &[need(5.0, 1, 1.0)], &[shift(8.0, 18.0)]).mixes[0].sets
    };
    assert_eq!(mixed(100.0, 55.0)[..2], [1, 0]);
    assert_eq!(mixed(100.0, 45.0)[..2], [0, 2]);
    // At one price the fewest.
    assert_eq!(mixed(100.0, 50.0)[..2], [1, 0]);
}

/// Without shifts: 50 L through a tank of 20 L are three mixes, and three alike have the least sum of squares.
#[test]
fn measured_fills_are_alike() {
    let tanks = [tank(20.0, 15.0, None, Filling::Measured)];
    let planned = plan(&[tonnes(10.0)], &tanks, &[need(5.0, 1, 0.0)], &[]);
    assert_eq!(planned.mixes.len(), 3);
    assert!(
        planned
            .mixes
            .iter()
            .all(|mix| (mix.mixed.get::<liter>() - 50.0 / 3.0).abs() < 1e-9 && mix.times.is_none())
    );
    assert_eq!(planned.summary.finish, None);
}

/// Topped up beside running: 50 L through 20 L are three fills, and one stop of a quarter of an hour.
#[test]
fn topped_up_without_a_stop() {
    let mut it = tank(20.0, 15.0, None, Filling::Measured);
    it.refill = Refill::TopUp;
    let planned = plan(&[tonnes(10.0)], &[it], &[need(5.0, 1, 0.0)], &[shift(8.0, 18.0)]);
    assert!(planned.mixes.len() == 3 && is_at(&planned, 8.25 + 2.5));
}

/// A living product that is measured out: 16 t, 80 L, four hours to run, pot life two and a half hours with half an hour
/// to mix: two hours of seed a mix, no more, whatever the tank holds.
#[test]
fn measured_for_as_long_as_it_lasts() {
    let tanks = [tank(200.0, 30.0, Some(2.5), Filling::Measured)];
    let planned = plan(&[tonnes(16.0)], &tanks, &[need(5.0, 1, 0.5)], &[shift(8.0, 18.0)]);
    assert!(planned.mixes.len() == 2 && is_at(&planned, 13.0));
    assert!(planned.mixes.iter().all(|mix| (mix.mixed.get::<liter>() - 40.0).abs() < 1e-6));
}

/// A set of 30 L does not fit 20 L; nor 30 L diluted to 60 % (50 L) into 40 L.
#[test]
fn a_set_too_large_for_the_tank() {
    let sets = [set(30.0, 1.0)];
    for (capacity, living) in [(20.0, 1.0), (40.0, 0.6)] {
        let tanks = [tank(capacity, 15.0, None, Filling::Sets(&sets))];
        let needs = [need(5.0, 1, living)];
        let job = Job { orders: &[tonnes(10.0)], tanks: &tanks, needs: &needs, shifts: &[shift(8.0, 18.0)] };
        assert_eq!(run(job).map(|_| ()), Err(Error::TankTooSmall { tank: 0 }));
    }
}

/// A billion tonnes in sets of one pound through 100 L: refused, and at once.
#[test]
fn more_batches_than_anyone_mixes() {
    let sets = [set(0.5, 1.0)];
    let tanks = [tank(100.0, 15.0, None, Filling::Sets(&sets))];
    let job = Job { orders: &[tonnes(1e9)], tanks: &tanks, needs: &[need(5.0, 1, 1.0)], shifts: &[] };
    let error = run(job).map(|_| ()).unwrap_err();
    assert_eq!(error, Error::TooMany { counted: Counted::Mixes, limit: 100_000 });
}

/// Numbers that cannot be are named.
#[test]
fn refused_numbers() {
    let good = tank(20.0, 15.0, None, Filling::Measured);
    let check = |order: Order, tank: Tank<'_>, needs: &[Option<Need>], shifts: &[Shift]| {
        run(Job { orders: &[order], tanks: &[tank], needs, shifts }).map(|_| ()).unwrap_err().to_string()
    };
    let needs = [need(5.0, 1, 0.0)];
    let day = [shift(8.0, 18.0)];
    assert!(check(tonnes(0.0), good, &needs, &day).contains("the seed mass of order 0"));
    assert!(check(tonnes(f64::NAN), good, &needs, &day).contains("the seed mass of order 0 cannot be NaN"));
    assert!(
        check(Order { speed: None, ..tonnes(1.0) }, good, &needs, &day).contains("the seed speed of order 0")
    );
    assert!(
        check(tonnes(1.0), Tank { capacity: litres(-1.0), ..good }, &needs, &day)
            .contains("the capacity of tank 0")
    );
    assert!(check(tonnes(1.0), good, &[], &day).contains("one per order and tank, 1"));
    assert!(check(tonnes(1.0), good, &[need(5.0, 1, 1.5)], &day).contains("the living share of need 0"));
    assert!(
        check(tonnes(1.0), good, &needs, &[shift(18.0, 8.0)])
            .contains("the hours of shift 0 cannot be -36000")
    );
    assert!(check(tonnes(1.0), good, &needs, &[shift(8.0, 8.0)]).contains("the hours of shift 0"));
    let late = Order { changeover: hours(-1.0), ..tonnes(1.0) };
    assert!(check(late, good, &needs, &day).contains("the changeover"));
    assert!(check(tonnes(1.0), Tank { hold_up: litres(-1.0), ..good }, &needs, &day).contains("tank 0"));
    // Eight sizes of set are taken, nine are not.
    let sets = [set(1.0, 1.0); 9];
    let with = |sets| Tank { filling: Filling::Sets(sets), ..good };
    let living = [need(5.0, 1, 1.0)];
    assert!(check(tonnes(1.0), with(&sets), &living, &day).contains('8'));
    plan(&[tonnes(1.0)], &[with(&sets[..8])], &living, &day);
    // Lines as large as the tank, of a tank that is measured out.
    let full = run(Job {
        orders: &[tonnes(1.0)],
        tanks: &[Tank { hold_up: litres(20.0), ..good }],
        needs: &needs,
        shifts: &day,
    });
    assert_eq!(full.map(|_| ()), Err(Error::TankTooSmall { tank: 0 }));
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
        // Mixed at eight for a quarter of an hour; the last order never begins.
        let begins = (!shifts.is_empty()).then(|| hours(8.25));
        assert_eq!(planned.first_seed, [begins, None]);
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
    // Half of it living: lines of 12 L hold 6 L of that, two sets are 10, and a tank of 18 L takes 9.
    (it.hold_up, it.capacity) = (litres(12.0), litres(18.0));
    let half = Job { tanks: &[it], needs: &[need(5.0, 1, 0.5)], ..job };
    assert_eq!(run(half).map(|planned| planned.summary), Err(Error::TankTooSmall { tank: 0 }));
    // Nor does it where a recipe of nothing else comes first: three sets fill its lines and leave 3 L.
    let both = Job { orders: &[job.orders[0]; 2], needs: &[need(5.0, 1, 1.0), need(5.0, 2, 0.5)], ..half };
    assert_eq!(run(both).map(|planned| planned.summary), Err(Error::TankTooSmall { tank: 0 }));
    it.capacity = litres(20.0);
    assert!(run(Job { tanks: &[it], ..half }).is_ok());
    // A set of 44 mL does not go into 147 L of a mix that is 2 in 10,000 alive, though more than can be counted do neat.
    let (small, needs) = ([set(0.044, 1.0)], [need(5.0, 1, 1.0), need(5.0, 2, 2e-4)]);
    let large = tank(147.0, 15.0, None, Filling::Sets(&small));
    let thin = Job { tanks: &[large], needs: &needs, ..both };
    assert_eq!(run(thin).map(|planned| planned.summary), Err(Error::TankTooSmall { tank: 0 }));
}

/// Sets of 3 and 4 L, used up exactly where an order ends at 27 minutes: the two minutes of changeover come first, then
/// the mix, whatever the last bit of the fills' sum.
#[test]
fn used_up_where_an_order_ends() {
    let minutes = |from: f64, to: f64| shift(from / 60.0, to / 60.0);
    let order = |minutes: f64, changeover: f64| order(minutes, 60.0, changeover);
    let sets = [set(3.0, 3.0), set(4.0, 4.0)];
    let tanks = [
        tank(8.0, 2.0, Some(0.2), Filling::Sets(&sets)),
        Tank { hold_up: litres(1.0), ..tank(5.0, 0.0, Some(8.0 / 60.0), Filling::Measured) },
    ];
    let (a, b) = (need(1000.0, 2, 1.0), need(1000.0, 3, 0.0));
    let orders = [order(9.0, 0.0), order(5.0, 1.0), order(7.0, 2.0)];
    let planned = plan(&orders, &tanks, &[a, None, a, b, a, b], &[minutes(0.0, 10.0), minutes(18.0, 34.0)]);
    assert!(of(&planned, 0).iter().all(|mix| mix.times.unwrap().mix_at != hours(27.0 / 60.0)));
}

/// A pot life of 4 h over many days: beyond 30 shifts not every wait is looked at, so the same plan is not called proven.
#[test]
fn more_than_thirty_shifts_are_not_proven() {
    let sets = [set(10.0, 1.0)];
    let tanks = [tank(20.0, 15.0, Some(4.0), Filling::Sets(&sets))];
    let proof = |days: u32| {
        let days: Vec<Shift> =
            (0..days).map(|day| shift(24.0 * f64::from(day) + 8.0, 24.0 * f64::from(day) + 18.0)).collect();
        let planned = plan(&[tonnes(10.0)], &tanks, &[need(5.0, 1, 1.0)], &days);
        assert_eq!(planned.mixes.len(), 3);
        planned.summary.proof
    };
    assert_eq!((proof(30), proof(31)), (Proof::Proven, Proof::Bounded));
}
