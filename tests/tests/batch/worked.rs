//! Cases worked by hand.
use crate::support::{need, order, run, set, shift, tank};
use hilum::batch::{Filling, Job};

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
