//! How far stops can be moved for fills more alike. Seed runs at 4 t/h; 5 mL/kg are 20 L an hour.
use crate::even::are_within;
use crate::support::{Planned, hours, litres, need, set, shift, tank};
use crate::worked::{plan, tonnes};
use hilum::batch::{Filling, Need, Order};

/// A second of running is 1/180 L, and two stops may lie half a second off on either side.
const SECOND: f64 = 0.006;

#[track_caller]
fn ends(planned: &Planned, hour: f64) {
    let finish = planned.summary.finish.unwrap();
    assert!((finish - hours(hour)).abs().value < 1e-3, "{finish:?} is not {hour} h");
}

/// An hour to mix, from eight to twelve and from eight (32) to eight in the evening (44): mixed at 8:00, run from 9:00 to 12:00, that is 60 L.
/// A second mix starts at 11:00 (after 40 L) at the latest, or in the morning (after 60 L): between 40 and 60 L the treater would
/// wait for the morning with seed still to run that evening. Either way the morning has an hour to mix, or the same hour of seed
/// more to run.
fn over_a_night(seed: f64, capacity: f64) -> Planned {
    let tanks = [tank(capacity, 60.0, None, Filling::Measured)];
    plan(&[tonnes(seed)], &tanks, &[need(5.0, 1, 0.0)], &[shift(8.0, 12.0), shift(32.0, 44.0)])
}

/// 110 L in two: 55 and 55 L would be between; 60 + 50 (sum of squares 6100) are more alike than 40 + 70 (6500) and than a full
/// tank and the rest, 80 + 30 (7300). An hour in the morning, then 50 L.
#[test]
fn a_stop_in_the_morning_is_nearest() {
    let planned = over_a_night(22.0, 80.0);
    are_within(&planned, 0, &[60.0, 50.0], SECOND);
    ends(&planned, 33.0 + 2.5);
}

/// 90 L in two: 40 + 50 (4100) are more alike than 60 + 30 (4500).
#[test]
fn a_stop_in_the_evening_is_nearest() {
    let planned = over_a_night(18.0, 80.0);
    are_within(&planned, 0, &[40.0, 50.0], SECOND);
    ends(&planned, 32.0 + 2.5);
}

/// 170 L in three: the first of three alike would end at 56.67 L, between. After 60 L two alike, 60 + 55 + 55 (9650); after 40 L
/// 40 + 65 + 65 (10 050). 205 L in four likewise: 51.25 L are between, so 60 + 3 × 48.33 (10 608), or 40 + 3 × 55 (10 675).
#[test]
fn what_follows_the_night_is_alike() {
    are_within(&over_a_night(34.0, 80.0), 0, &[60.0, 55.0, 55.0], SECOND);
    let third = 145.0 / 3.0;
    are_within(&over_a_night(41.0, 68.0), 0, &[60.0, third, third, third], SECOND);
}

/// 2 L for the lines, so 22 L of the first recipe, run from 9:00 to 10:00. An hour of changeover and an hour to mix the second: ready
/// at noon, for 450 L from the next morning on. The mix after that starts in the last hour before the evening (44) at the latest, after
/// 11 hours or 220 L, or in the morning after it, after 240 L. Of these 452 L, 226 and 226 are between; 222 + 230 (102 184) are
/// more alike than 242 + 210 (102 664).
#[test]
fn lines_of_the_second_recipe() {
    let mut it = tank(300.0, 60.0, None, Filling::Measured);
    it.hold_up = litres(2.0);
    let orders = [tonnes(4.0), Order { changeover: hours(1.0), ..tonnes(90.0) }];
    let needs = [need(5.0, 1, 0.0), need(5.0, 2, 0.0)];
    let shifts = [shift(8.0, 12.0), shift(32.0, 44.0), shift(56.0, 80.0)];
    are_within(&plan(&orders, &[it], &needs, &shifts), 0, &[22.0, 222.0, 230.0], SECOND);
}

/// 50 L through 8 L are seven fills of 7.143 L, 1285.7 s each. A stop within a second would lose the rest of it, for mixing
/// starts on a whole one: the stops are a little sooner, and the end is as of seven mixes and two and a half hours.
#[test]
fn no_part_of_a_second_is_lost() {
    let tanks = [tank(8.0, 15.0, None, Filling::Measured)];
    let planned = plan(&[tonnes(10.0)], &tanks, &[need(5.0, 1, 0.0)], &[shift(8.0, 18.0)]);
    are_within(&planned, 0, &[50.0 / 7.0; 7], SECOND);
    ends(&planned, 8.0 + 7.0 * 0.25 + 2.5);
}

/// Sets of 40.01 L are used up within a second, where they stay: 2 × 40.01 L. The other tank, which is mixed at once, gives half as
/// much, 40.01 L through 9 L: five fills of 8.002 L, though none of them ends with a set.
#[test]
fn sets_stay_where_they_are_used_up() {
    let sets = [set(40.01, 1.0)];
    let tanks = [tank(41.0, 15.0, None, Filling::Sets(&sets)), tank(9.0, 0.0, None, Filling::Measured)];
    let needs = [need(5.0, 1, 1.0), need(2.5, 1, 0.0)];
    let planned = plan(&[tonnes(16.004)], &tanks, &needs, &[shift(8.0, 18.0)]);
    are_within(&planned, 0, &[40.01, 40.01], 1e-6);
    are_within(&planned, 1, &[8.002; 5], SECOND);
}

/// Sets of 41 and of 9 L, and half as much of what is mixed at once: 25 L through 7 L in four fills alike. The third of full ones would
/// end after the large set (20.5 L), the third of these ends before it, at 18.75 L.
#[test]
fn a_stop_moves_past_another() {
    let sets = [set(41.0, 1.0), set(9.0, 1.0)];
    let tanks = [tank(41.0, 15.0, None, Filling::Sets(&sets)), tank(7.0, 0.0, None, Filling::Measured)];
    let needs = [need(5.0, 1, 1.0), need(2.5, 1, 0.0)];
    let planned = plan(&[tonnes(10.0)], &tanks, &needs, &[shift(8.0, 18.0)]);
    are_within(&planned, 0, &[41.0, 9.0], 1e-6);
    are_within(&planned, 1, &[6.25; 4], SECOND);
    ends(&planned, 8.0 + 0.5 + 2.5);
}

/// An order takes 66 L of one tank in sets of 40 and 26 L, half as much of another through 10.5 L: no fewer than four fills, and a stop is
/// saved where one of them is mixed with the second set, after 20 L. So 10 + 10 and 6.5 + 6.5 L, forty times. Of the
/// stops of so many mixes only some could be tried one by one.
#[test]
fn many_stops_beside_others() {
    let sets = [set(40.0, 1.0), set(26.0, 1.0)];
    let tanks = [tank(41.0, 15.0, None, Filling::Sets(&sets)), tank(10.5, 10.0, None, Filling::Measured)];
    let orders = vec![Order { changeover: hours(0.0), ..tonnes(13.2) }; 40];
    let needs: Vec<Option<Need>> =
        (0..40).flat_map(|recipe| [need(5.0, recipe, 1.0), need(2.5, recipe, 0.0)]).collect();
    let planned = plan(&orders, &tanks, &needs, &[shift(0.0, 1000.0)]);
    are_within(&planned, 0, &[40.0, 26.0].repeat(40), 1e-6);
    are_within(&planned, 1, &[10.0, 10.0, 6.5, 6.5].repeat(40), SECOND);
    // 15 min twice, 10 min twice, and 3.3 h of seed.
    ends(&planned, 40.0 * (50.0 / 60.0 + 3.3));
}

/// Two measured tanks without shifts, two recipes of each: 1000 and 995 L through 30 L in 34 fills alike, through 29 L in 35.
#[test]
fn two_tanks_of_many_fills() {
    let tanks = [30.0, 29.0].map(|capacity| tank(capacity, 15.0, None, Filling::Measured));
    let needs = [1, 1, 2, 2].map(|recipe| need(5.0, recipe, 0.0));
    let planned = plan(&[tonnes(200.0), tonnes(199.0)], &tanks, &needs, &[]);
    for (tank, fills) in [(0, 34), (1, 35)] {
        let alike = |litres: f64| vec![litres / f64::from(fills); usize::try_from(fills).unwrap()];
        are_within(&planned, tank, &[alike(1000.0), alike(995.0)].concat(), 1e-6);
    }
}

/// 119 990 L in 6000 sets of 20 L, and as much through 21 L in 5714 fills alike: so many that there is time for one trial only,
/// which is not spent on the sets.
#[test]
fn thousands_of_fills() {
    let sets = [set(20.0, 1.0)];
    let tanks = [tank(20.0, 15.0, None, Filling::Sets(&sets)), tank(21.0, 15.0, None, Filling::Measured)];
    let planned = plan(&[tonnes(23_998.0)], &tanks, &[need(5.0, 1, 1.0), need(5.0, 1, 0.0)], &[]);
    are_within(&planned, 0, &vec![20.0; 6000], 1e-6);
    are_within(&planned, 1, &vec![119_990.0 / 5714.0; 5714], 1e-6);
}
