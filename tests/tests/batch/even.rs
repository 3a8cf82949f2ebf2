//! Of plans alike the one with the least sum of squared fills, large ones first. Seed runs at 4 t/h; 5 mL/kg are 20 L an hour.
use crate::support::{Planned, hours, litres, need, run_in, set, shift, tank};
use crate::worked::{plan, tonnes};
use hilum::batch::{Filling, Job, Refill, Room, Tank};
use hilum::quantity::volume::liter;

#[track_caller]
fn are(planned: &Planned, of: usize, fills: &[f64]) {
    are_within(planned, of, fills, 0.05);
}

/// A second of running is 1/180 L at most.
#[track_caller]
pub(crate) fn are_within(planned: &Planned, of: usize, fills: &[f64], slack: f64) {
    let got: Vec<f64> =
        planned.mixes.iter().filter(|mix| mix.tank == of).map(|mix| mix.mixed.get::<liter>()).collect();
    let other = got.iter().zip(fills).position(|(got, fill)| (got - fill).abs() >= slack);
    assert!(
        other.is_none(),
        "fill {other:?} of tank {of}: {:?}",
        other.map(|index| (got[index], fills[index]))
    );
    assert_eq!(got.len(), fills.len(), "fills of tank {of}");
}

/// 50 L through 20 L: three alike, with shifts or without, over a night as well.
#[test]
fn measured_in_three() {
    let tanks = [tank(20.0, 15.0, None, Filling::Measured)];
    let third = 50.0 / 3.0;
    for shifts in [&[][..], &[shift(8.0, 18.0)], &[shift(8.0, 9.5), shift(32.0, 40.0)]] {
        are(&plan(&[tonnes(10.0)], &tanks, &[need(5.0, 1, 0.0)], shifts), 0, &[third; 3]);
    }
}

/// 2 L stay in the lines: 52 L in three. Another recipe is 30 L and the lines again, 32 L in two.
#[test]
fn the_lines_count_in_the_first() {
    let mut it = tank(20.0, 15.0, None, Filling::Measured);
    it.hold_up = litres(2.0);
    let needs = [need(5.0, 1, 0.0), need(5.0, 2, 0.0)];
    let third = 52.0 / 3.0;
    for shifts in [&[][..], &[shift(8.0, 18.0)]] {
        let planned = plan(&[tonnes(10.0), tonnes(6.0)], &[it], &needs, shifts);
        are(&planned, 0, &[third, third, third, 16.0, 16.0]);
    }
}

/// 20 and 10 L: 50 L are 20, 20 and 10 in this order; of 70 L in a tank of 30 L, 30 + 20 + 20 have a smaller sum of squares
/// than 30 + 30 + 10.
#[test]
fn whole_sets_large_ones_first() {
    let sets = [set(20.0, 2.0), set(10.0, 1.0)];
    for shifts in [&[][..], &[shift(8.0, 20.0)]] {
        let tanks = [tank(20.0, 15.0, Some(24.0), Filling::Sets(&sets))];
        are(&plan(&[tonnes(10.0)], &tanks, &[need(5.0, 1, 1.0)], shifts), 0, &[20.0, 20.0, 10.0]);
        let tanks = [tank(30.0, 15.0, Some(24.0), Filling::Sets(&sets))];
        are(&plan(&[tonnes(14.0)], &tanks, &[need(5.0, 1, 1.0)], shifts), 0, &[30.0, 20.0, 20.0]);
        // And at twice the slurry, half of it living.
        let tanks = [tank(60.0, 15.0, Some(24.0), Filling::Sets(&sets))];
        are(&plan(&[tonnes(14.0)], &tanks, &[need(10.0, 1, 0.5)], shifts), 0, &[60.0, 40.0, 40.0]);
    }
}

/// Beside sets of 40 L that run for two hours, a tank of 9 L at half the rate: 40 L in all, in no fewer than five fills, alike.
#[test]
fn a_follower_in_the_fewest_fills() {
    let sets = [set(40.0, 1.0)];
    let tanks =
        [tank(40.0, 15.0, Some(24.0), Filling::Sets(&sets)), tank(9.0, 10.0, None, Filling::Measured)];
    let needs = [need(5.0, 1, 1.0), need(2.5, 1, 0.0)];
    let planned = plan(&[tonnes(16.0)], &tanks, &needs, &[shift(8.0, 20.0)]);
    are(&planned, 0, &[40.0, 40.0]);
    are(&planned, 1, &[8.0; 5]);
}

/// Topped up beside running: 50 L through 20 L in three fills alike, each run in 50 minutes; a quarter of an hour to mix, so that
/// the next is ready when the one before is used up: 8:00, 8:50 and 9:40. With 2 L for the lines 52 L, and the first runs for
/// 15.33 L, 46 minutes; the others for 17.33 L, 52 minutes.
#[test]
fn topped_up_in_three() {
    let mut it = tank(20.0, 15.0, None, Filling::Measured);
    it.refill = Refill::TopUp;
    let times = |it: Tank<'_>, fills: [f64; 3], minutes: [[f64; 3]; 3]| {
        let planned = plan(&[tonnes(10.0)], &[it], &[need(5.0, 1, 0.0)], &[shift(8.0, 18.0)]);
        are(&planned, 0, &fills);
        for (mix, expected) in planned.mixes.iter().zip(minutes) {
            let times = mix.times.unwrap();
            for (got, minute) in [times.mix_at, times.ready_at, times.done_at].into_iter().zip(expected) {
                assert!((got - hours(8.0 + minute / 60.0)).abs().value <= 1.0, "{times:?}: {minute} min");
            }
        }
    };
    let third = 50.0 / 3.0;
    times(it, [third; 3], [[0.0, 15.0, 65.0], [50.0, 65.0, 115.0], [100.0, 115.0, 165.0]]);
    it.hold_up = litres(2.0);
    let third = 52.0 / 3.0;
    times(it, [third; 3], [[0.0, 15.0, 61.0], [46.0, 61.0, 113.0], [98.0, 113.0, 165.0]]);
}

/// Lines of 15 L take most of a tank of 20 L. 7 L to apply are 22 L in two fills, and 27 L are 42 L in three; alike, fills of 11 or 14 L
/// would not fill the lines. So the first of two leaves half of the 7 L: 18.5 and 3.5 L; the first of three is full and leaves 5 L,
/// the others are 11 L. Another recipe, with 25 L to apply, is 40 L in two full tanks.
#[test]
fn long_lines_of_a_tank_that_is_topped_up() {
    let mut it = tank(20.0, 15.0, None, Filling::Measured);
    (it.refill, it.hold_up) = (Refill::TopUp, litres(15.0));
    let needs = [1, 2, 3].map(|recipe| need(5.0, recipe, 0.0));
    for shifts in [&[][..], &[shift(8.0, 18.0)]] {
        let planned = plan(&[tonnes(5.4), tonnes(1.4), tonnes(5.0)], &[it], &needs, shifts);
        are(&planned, 0, &[20.0, 11.0, 11.0, 18.5, 3.5, 20.0, 20.0]);
    }
}

/// What `Room` says of numbers is exact: one fewer is refused.
#[test]
fn numbers_are_counted_exactly() {
    let sets = [set(10.0, 1.0)];
    let tanks =
        [tank(20.0, 15.0, Some(24.0), Filling::Sets(&sets)), tank(30.0, 15.0, None, Filling::Measured)];
    let (orders, days) = ([tonnes(4.0), tonnes(3.0)], [shift(8.0, 12.0), shift(13.0, 18.0)]);
    let needs = [need(5.0, 1, 1.0), need(2.5, 1, 0.0), need(5.0, 1, 1.0), need(2.5, 1, 0.0)];
    let job = Job { orders: &orders, tanks: &tanks, needs: &needs, shifts: &days };
    let room = Room::of(&job);
    // No, one or two sets of 10 L, and half of the room is to work in.
    assert_eq!(room.fills, 2 * 3);
    let planned = |numbers| run_in(job, Room { numbers, ..room }).is_ok();
    assert!(planned(room.numbers) && !planned(room.numbers - 1));
}

/// Room by the slurry that is asked for, in full tanks of 20 L: 400 plans for each, 512 at least and 24,576 at most; where more than 150
/// are due no search ends, and 4,096 do. Beside another tank all that there is from 4 to 30, and never more than 131,072 contents.
#[test]
fn room_by_what_is_due() {
    let labels = |tanks: usize, litres: f64| {
        let (orders, tanks) =
            ([tonnes(litres / 5.0)], vec![tank(20.0, 15.0, None, Filling::Measured); tanks]);
        let needs = vec![need(5.0, 1, 0.0); tanks.len()];
        let room = Room::of(&Job { orders: &orders, tanks: &tanks, needs: &needs, shifts: &[] });
        assert_eq!((room.pours, room.contents), (1024 + 2, room.labels * tanks.len()));
        room.labels
    };
    let alone = [5.0, 50.0, 200.0, 2000.0, 2980.0, 3020.0].map(|litres| labels(1, litres));
    assert_eq!(alone, [512, 1000, 4000, 24_576, 24_576, 4096]);
    // Three in two tanks, then five, 29 and 31.
    let beside = [30.0, 50.0, 290.0, 310.0].map(|litres| labels(2, litres));
    assert_eq!(beside, [1200, 24_576, 24_576, 12_400]);
    assert_eq!(labels(20, 50.0), 131_072 / 20);
}
