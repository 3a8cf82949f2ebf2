//! How long does a plan take? Told, not asserted: run with `--ignored --nocapture` in release.
use crate::support::{litres, need, order, run, set, shift, tank};
use crate::valid;
use hilum::batch::{Filling, Job, Need, Order, Refill, Shift, Tank};
use std::time::Instant;

fn week(shifts: u32, from: f64, to: f64) -> Vec<Shift> {
    (0..shifts).map(|day| shift(24.0 * f64::from(day) + from, 24.0 * f64::from(day) + to)).collect()
}

fn tell(name: &str, job: &Job<'_>) {
    let start = Instant::now();
    let planned = run(*job);
    let time = start.elapsed();
    match planned {
        Ok(planned) => {
            let again = Instant::now();
            let _ = run(*job);
            println!(
                "{name}: {time:?}, again {:?}: {} mixes, {:?}",
                again.elapsed(),
                planned.mixes.len(),
                planned.summary
            );
            if job.orders.len() * job.tanks.len() < 10_000 {
                valid::check(job, &planned);
            }
        }
        Err(error) => println!("{name}: {time:?}: {error}"),
    }
}

#[test]
#[ignore = "a measurement"]
fn one() {
    let sizes = [set(20.0, 1.0), set(10.0, 1.0), set(5.0, 1.0), set(2.5, 1.0)];
    let orders: Vec<Order> = (0..20).map(|n| order(14_000.0 + 137.0 * f64::from(n), 2800.0, 10.0)).collect();
    let mut it = tank(21.0, 15.0, Some(4.0), Filling::Sets(&sizes));
    it.hold_up = litres(1.0);
    let needs = vec![need(4.0, 1, 1.0); 20];
    let job = Job { orders: &orders, tanks: &[it], needs: &needs, shifts: &week(14, 7.0, 17.0) };
    for _ in 0..3 {
        tell("one", &job);
    }
    let job = Job {
        orders: &orders[..3],
        tanks: &[it, tank(30.0, 20.0, None, Filling::Measured)],
        needs: &needs[..6],
        shifts: &week(2, 7.0, 17.0),
    };
    for _ in 0..3 {
        tell("three orders", &job);
    }
    let orders = [order(4000.0, 2800.0, 10.0), order(6000.0, 2800.0, 10.0), order(5000.0, 2800.0, 10.0)];
    let mut it = tank(50.0, 15.0, Some(24.0), Filling::Sets(&sizes));
    it.hold_up = litres(1.0);
    let needs: Vec<Option<Need>> =
        (0..6).map(|n| if n % 2 == 0 { need(4.0, 1, 1.0) } else { need(5.0, 1 + n / 4, 0.0) }).collect();
    let job = Job {
        orders: &orders,
        tanks: &[it, tank(60.0, 20.0, None, Filling::Measured)],
        needs: &needs,
        shifts: &week(1, 7.0, 17.0),
    };
    for _ in 0..5 {
        tell("three orders, one shift", &job);
    }
}

#[test]
#[ignore = "a measurement"]
fn speed() {
    for (name, sizes) in [
        ("even sizes", vec![set(20.0, 1.0), set(10.0, 1.0), set(5.0, 1.0), set(2.5, 1.0)]),
        ("odd sizes", vec![set(20.3, 1.0), set(9.7, 1.0), set(5.17, 1.0), set(2.57, 1.0)]),
    ] {
        for life in [None, Some(24.0), Some(6.0), Some(4.0), Some(2.5)] {
            for hold_up in [0.0, 1.0] {
                let orders: Vec<Order> =
                    (0..20).map(|n| order(14_000.0 + 137.0 * f64::from(n), 2800.0, 10.0)).collect();
                let mut it = tank(21.0, 15.0, life, Filling::Sets(&sizes));
                it.hold_up = litres(hold_up);
                let needs = vec![need(4.0, 1, 1.0); 20];
                let job = Job { orders: &orders, tanks: &[it], needs: &needs, shifts: &week(14, 7.0, 17.0) };
                tell(&format!("{name}, 14 shifts, pot life {life:?} h, hold-up {hold_up}"), &job);
            }
        }
    }
    let sizes = [set(20.0, 1.0), set(10.0, 1.0), set(5.0, 1.0), set(2.5, 1.0)];
    let other = tank(30.0, 20.0, None, Filling::Measured);
    let orders: Vec<Order> = (0..20).map(|n| order(14_000.0 + 137.0 * f64::from(n), 2800.0, 10.0)).collect();
    let needs: Vec<Option<Need>> =
        (0..40).map(|n| if n % 2 == 0 { need(4.0, 1, 1.0) } else { need(5.0, 1, 0.0) }).collect();
    for life in [24.0, 4.0] {
        let tanks = [tank(21.0, 15.0, Some(life), Filling::Sets(&sizes)), other];
        let job = Job { orders: &orders, tanks: &tanks, needs: &needs, shifts: &week(14, 7.0, 17.0) };
        tell(&format!("with a follower, pot life {life} h"), &job);
    }
    for life in [24.0, 12.0, 6.0, 4.0] {
        let tanks = [tank(21.0, 15.0, Some(life), Filling::Sets(&sizes)), other];
        let job =
            Job { orders: &orders[..10], tanks: &tanks, needs: &needs[..20], shifts: &week(14, 7.0, 17.0) };
        tell(&format!("half as much with a follower, pot life {life} h"), &job);
        let it = Tank { hold_up: litres(1.0), ..tanks[0] };
        let tanks = [it, other];
        let job =
            Job { orders: &orders[..10], tanks: &tanks, needs: &needs[..20], shifts: &week(14, 7.0, 17.0) };
        tell(&format!("half as much with a follower and hold-up, pot life {life} h"), &job);
    }
    for (count, recipes) in [
        (10, 1),
        (100, 1),
        (1000, 1),
        (10, 5),
        (100, 5),
        (1000, 5),
        (10_000, 5),
        (1000, 1000),
        (10_000, 1000),
    ] {
        many(count, recipes, 3);
    }
    many(10_000, 5, 20);
    let orders = [order(1e12, 1e6, 0.0)];
    let pound = [set(0.002, 1.0)];
    for capacity in [100.0, 1e9] {
        let tanks = [tank(capacity, 15.0, Some(24.0), Filling::Sets(&pound))];
        tell("hostile", &Job { orders: &orders, tanks: &tanks, needs: &[need(4.0, 1, 1.0)], shifts: &[] });
        let shifts = week(14, 7.0, 17.0);
        tell(
            "hostile, shifts",
            &Job { orders: &orders, tanks: &tanks, needs: &[need(4.0, 1, 1.0)], shifts: &shifts },
        );
    }
}

/// Orders of a recipe in blocks of ten; three tanks or more.
fn many(count: u32, recipes: u32, tanks: usize) {
    let sizes = [set(40.0, 1.0), set(20.0, 1.0), set(10.0, 1.0)];
    let per_order = 14.0 * 10.0 * 0.75 / f64::from(count);
    let orders: Vec<Order> = (0..count)
        .map(|n| {
            order(
                per_order * 3000.0 * (0.7 + 0.02 * f64::from(n % 30)),
                3000.0,
                (5.0 * 100.0 / f64::from(count)).min(5.0),
            )
        })
        .collect();
    let mut all: Vec<Tank<'_>> = vec![
        tank(50.0, 15.0, Some(24.0), Filling::Sets(&sizes)),
        tank(200.0, 20.0, None, Filling::Measured),
        tank(100.0, 10.0, None, Filling::Measured),
    ];
    all[2].refill = Refill::TopUp;
    while all.len() < tanks {
        all.push(tank(150.0, 12.0, None, Filling::Measured));
    }
    let mut needs = Vec::new();
    for n in 0..count {
        for index in 0..all.len() {
            let recipe = if index == 0 { 1 } else { 1 + (n * recipes / count) };
            needs.push(need(2.0 + f64::from(n % 3) * 0.01, recipe, if index == 0 { 0.8 } else { 0.0 }));
        }
    }
    let job = Job { orders: &orders, tanks: &all, needs: &needs, shifts: &week(14, 7.0, 17.0) };
    tell(&format!("{count} orders, {tanks} tanks, {recipes} recipes"), &job);
}
