//! Every plan keeps the rules: a replay of the written batches that shares nothing with the planner.

use crate::support::Planned;
use hilum::batch::{Filling, Job, Mix, Need, Refill, Shift};

const NEAR: f64 = 1e-9;

fn near(a: f64, b: f64, size: f64) -> bool {
    (a - b).abs() <= NEAR * size.abs().max(a.abs())
}

/// Panics at the first rule that is broken.
pub(crate) fn check(job: &Job<'_>, planned: &Planned) {
    let treated = treated_of_orders(job, planned);
    for (tank, it) in job.tanks.iter().enumerate() {
        let mixes: Vec<(usize, &Mix)> =
            planned.mixes.iter().enumerate().filter(|(_, mix)| mix.tank == tank).collect();
        for (number, (index, mix)) in mixes.iter().enumerate() {
            assert_eq!(usize::try_from(mix.number).unwrap(), number + 1, "numbers count within a tank");
            volumes(job, planned, *index, mix);
            assert!(mix.mixed.value <= it.capacity.value * (1.0 + NEAR), "fits: {mix:?}");
        }
        for (order, seed) in treated.iter().enumerate() {
            let sum: f64 = mixes
                .iter()
                .flat_map(|(index, _)| {
                    planned.portions.iter().filter(move |it| it.mix == *index && it.order == order)
                })
                .map(|it| it.mass.value)
                .sum();
            let wanted = if need(job, order, tank).is_some() { *seed } else { 0.0 };
            assert!(
                near(sum, wanted, job.orders[order].mass.value),
                "order {order} tank {tank}: {sum}, not {wanted}"
            );
        }
        lines(job, planned, tank, &mixes);
    }
    stock(job, planned);
    if !job.shifts.is_empty() {
        planned.mixes.iter().for_each(|mix| instants(job, mix));
        replay(job, planned, &treated);
    }
}

fn need(job: &Job<'_>, order: usize, tank: usize) -> Option<Need> {
    job.needs[order * job.tanks.len() + tank]
}

/// Seed is treated in running order, up to what the summary says.
fn treated_of_orders(job: &Job<'_>, planned: &Planned) -> Vec<f64> {
    let mut left = planned.summary.treated.value;
    let total: f64 = job.orders.iter().map(|it| it.mass.value).sum();
    assert!(left >= 0.0 && left <= total * (1.0 + NEAR));
    assert_eq!(planned.summary.all_treated, left >= total * (1.0 - NEAR));
    job.orders
        .iter()
        .map(|it| {
            let seed = left.min(it.mass.value);
            left -= seed;
            seed
        })
        .collect()
}

fn volumes(job: &Job<'_>, planned: &Planned, index: usize, mix: &Mix) {
    let size = job.tanks[mix.tank].capacity.value;
    let parts = mix.applied.value + mix.hold_up.value + mix.discarded.value;
    assert!(near(mix.mixed.value, parts, size), "mixed = applied + hold-up + discarded: {mix:?}");
    let portions: Vec<_> = planned.portions.iter().filter(|it| it.mix == index).collect();
    assert!(!portions.is_empty(), "a mix treats seed: {mix:?}");
    assert!(portions.iter().all(|it| it.mass.value > 0.0));
    let slurry: f64 =
        portions.iter().map(|it| it.mass.value * need(job, it.order, mix.tank).unwrap().per_mass.value).sum();
    assert!(near(slurry, mix.applied.value, size), "{slurry} is applied: {mix:?}");
    let Filling::Sets(sizes) = job.tanks[mix.tank].filling else {
        assert!(mix.discarded.value == 0.0 && mix.sets == [0; 8], "a measured mix is used up: {mix:?}");
        return;
    };
    let share = need(job, portions[0].order, mix.tank).unwrap().living;
    if share > 0.0 {
        let living: f64 =
            sizes.iter().zip(mix.sets).map(|(set, count)| set.adds.value * f64::from(count)).sum();
        assert!(near(living / share, mix.mixed.value, size), "whole sets: {mix:?}");
    }
}

/// The recipe that a mix is of.
fn recipe(job: &Job<'_>, planned: &Planned, index: usize) -> u32 {
    let portion = planned.portions.iter().find(|it| it.mix == index).unwrap();
    need(job, portion.order, planned.mixes[index].tank).unwrap().recipe
}

fn lines(job: &Job<'_>, planned: &Planned, tank: usize, mixes: &[(usize, &Mix)]) {
    let hold_up = job.tanks[tank].hold_up.value;
    let mut before: Option<(u32, f64)> = None;
    for (index, mix) in mixes {
        let own = recipe(job, planned, *index);
        let full = before.is_some_and(|(recipe, discarded)| recipe == own && discarded == 0.0);
        assert_eq!(mix.hold_up.value, if full { 0.0 } else { hold_up }, "lines: {mix:?}");
        before = Some((own, mix.discarded.value));
    }
}

fn instants(job: &Job<'_>, mix: &Mix) {
    let times = mix.times.unwrap();
    let it = &job.tanks[mix.tank];
    let (at, ready, done) = (times.mix_at.value, times.ready_at.value, times.done_at.value);
    assert_eq!(at, at.floor(), "a mix starts on a whole second");
    assert!((ready - at - it.mixing.value).abs() < 1e-5);
    let within = |shift: &Shift| shift.from.value <= at && ready <= shift.to.value + 1e-5;
    assert!(job.shifts.iter().any(within), "mixed within one shift: {mix:?}");
    assert!(
        job.shifts.iter().any(|shift| shift.from.value < done && done <= shift.to.value + 1e-5),
        "done: {mix:?}"
    );
    assert!(done > ready - 1e-5);
    assert_eq!(times.use_by.map(|by| by.value), it.pot_life.map(|life| (at + life.value + 1e-6).floor()));
    assert!(times.use_by.is_none_or(|by| done <= by.value), "used within its pot life: {mix:?}");
}

/// The instant after so much work.
fn work(job: &Job<'_>, mut at: f64, mut seconds: f64) -> f64 {
    for shift in job.shifts {
        if shift.to.value <= at + 1e-6 {
            continue;
        }
        if seconds <= 1e-6 {
            return at;
        }
        at = at.max(shift.from.value);
        let step = seconds.min(shift.to.value - at);
        at += step;
        seconds -= step;
    }
    assert!(seconds < 1e-3, "worked after the last shift: {seconds} s");
    at
}

/// Runs the seed through the shed, with the mixes as written.
fn replay(job: &Job<'_>, planned: &Planned, treated: &[f64]) {
    let mut at = job.shifts[0].from.value;
    let mut current: Vec<Option<usize>> = vec![None; job.tanks.len()];
    let mut last_seed = at;
    for (order, seed) in treated.iter().enumerate().filter(|it| *it.1 > NEAR * job.orders[it.0].mass.value) {
        if order > 0 {
            at = work(job, at, job.orders[order].changeover.value);
        }
        let mut queue: Vec<Vec<(usize, f64)>> = (0..job.tanks.len())
            .map(|tank| {
                let of =
                    |it: &&hilum::batch::Portion| it.order == order && planned.mixes[it.mix].tank == tank;
                planned.portions.iter().filter(of).map(|it| (it.mix, it.mass.value)).rev().collect()
            })
            .collect();
        let mut done = 0.0;
        while done < seed * (1.0 - NEAR) {
            let (mut ready, mut refilled) = (at, Vec::new());
            for (tank, portions) in queue.iter_mut().enumerate() {
                while portions.last().is_some_and(|it| it.1 <= NEAR * seed) {
                    portions.pop();
                }
                let Some((mix, _)) = portions.last() else { continue };
                if current[tank] != Some(*mix) {
                    match begin(job, planned, *mix, at) {
                        Some(stops) => ready = ready.max(stops),
                        None => refilled.push(*mix),
                    }
                    if let Some(before) = current[tank] {
                        assert!(before < *mix || job.tanks[tank].refill == Refill::TopUp);
                    }
                    current[tank] = Some(*mix);
                }
            }
            // Where another tank stops the treater at the same moment, a refill may be made meanwhile.
            for mix in refilled.iter().map(|mix| &planned.mixes[*mix]) {
                assert!(
                    mix.times.unwrap().ready_at.value <= ready + 1e-3,
                    "topped up in time, {ready}: {mix:?}"
                );
            }
            at = ready;
            let step = queue.iter().filter_map(|it| it.last()).map(|it| it.1).fold(seed - done, f64::min);
            at = work(job, at, step / job.orders[order].speed.unwrap().value);
            for (tank, portions) in queue.iter_mut().enumerate() {
                if let Some((mix, mass)) = portions.last_mut() {
                    *mass -= step;
                    let times = planned.mixes[*mix].times.unwrap();
                    assert!(
                        at <= times.done_at.value + 1e-3,
                        "tank {tank} treats after it is done, {at}: {times:?}"
                    );
                }
            }
            done += step;
            last_seed = at;
        }
    }
    if planned.summary.treated.value > 0.0 {
        let finish = planned.summary.finish.unwrap().value;
        assert!((finish - last_seed).abs() < 1e-2, "{finish} is told, {last_seed} by replay");
    }
}

/// When a mix that is needed now is ready; none for a refill that is made beside running.
fn begin(job: &Job<'_>, planned: &Planned, index: usize, at: f64) -> Option<f64> {
    let mix = &planned.mixes[index];
    let times = mix.times.unwrap();
    let before = |it: &Mix| it.tank == mix.tank && it.number + 1 == mix.number;
    let same = |it: usize| recipe(job, planned, it) == recipe(job, planned, index);
    let refill = job.tanks[mix.tank].refill == Refill::TopUp
        && planned.mixes.iter().position(before).is_some_and(same);
    let beside =
        refill && job.tanks[mix.tank].pot_life.is_none() && job.tanks[mix.tank].filling == Filling::Measured;
    if beside {
        return None;
    }
    assert!(times.mix_at.value >= at - 1e-3, "mixed before the treater stops, {at}: {mix:?}");
    Some(times.ready_at.value)
}

/// No more sets are opened than there are on the shelf, and all that could be is treated unless the plan is short of some.
fn stock(job: &Job<'_>, planned: &Planned) {
    for (tank, it) in job.tanks.iter().enumerate() {
        let Filling::Sets(sizes) = it.filling else {
            assert_eq!(planned.summary.short_of_stock & (1 << tank), 0, "tank {tank} is measured");
            continue;
        };
        for (n, size) in sizes.iter().enumerate() {
            let mixes = planned.mixes.iter().filter(|mix| mix.tank == tank);
            let opened: u64 = mixes.map(|mix| u64::from(mix.sets[n])).sum();
            let stock = size.stock.map_or(u64::MAX, u64::from);
            assert!(opened <= stock, "{opened} sets of size {n} in tank {tank}, {stock} on the shelf");
        }
    }
    let short = planned.summary.short_of_stock != 0;
    assert!(!(short && planned.summary.all_treated), "short of stock, and all is treated");
}
