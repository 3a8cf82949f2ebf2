//! The wrappers as Rust calls them, so that Miri can watch every `unsafe`: lists, texts, working memory, opaque
//! structures, the planner's memory.

use std::mem::MaybeUninit;
use std::ptr;

use hilum_c::account::{achieved, used};
use hilum_c::array::{convert, dose};
use hilum_c::batch::{clock, input, output, plan};
use hilum_c::call::hilum_work;
use hilum_c::dose::liquid::{hilum_rate_per_mass, hilum_rate_per_mass_read};
use hilum_c::monitor;
use hilum_c::quantity::amount::{hilum_mass, hilum_share, hilum_time, hilum_volume};
use hilum_c::quantity::flow::{hilum_flow, hilum_seed_flow};
use hilum_c::treater;
use hilum_c::viability::{fit, survival};

/// The result of a call that must succeed.
fn ok<T>(call: impl FnOnce(Option<&mut MaybeUninit<T>>) -> i32) -> T {
    let mut out = MaybeUninit::uninit();
    assert_eq!(call(Some(&mut out)), 0);
    // SAFETY: a function that returns 0 has written its result.
    unsafe { out.assume_init() }
}

fn work(n: usize) -> Vec<MaybeUninit<hilum_work>> {
    vec![MaybeUninit::uninit(); n]
}

const LITER: f64 = 1e-3;

#[test]
fn texts_and_lists() {
    let text = "325 mL/100 kg";
    // SAFETY: pointers and lengths of what is there.
    let rate = unsafe { ok(|out| hilum_rate_per_mass_read(text.as_ptr().cast(), text.len(), out)) };
    let kilograms = [100.0, 250.0];
    let mut seed = [hilum_mass { kg: 0.0 }; 2];
    let mut needed = [hilum_volume { m3: 0.0 }; 2];
    // SAFETY: as above.
    unsafe {
        assert_eq!(convert::hilum_mass_from_n(kilograms.as_ptr(), 10, seed.as_mut_ptr(), 2, None), 0);
        assert_eq!(dose::hilum_rate_per_mass_needed_n(rate, seed.as_ptr(), needed.as_mut_ptr(), 2, None), 0);
        assert_eq!(dose::hilum_rate_per_mass_needed_n(rate, ptr::null(), ptr::null_mut(), 0, None), 0);
    }
    assert!((needed[1].m3 - 0.8125 * LITER).abs() < 1e-15);
}

#[test]
fn working_memory_holds_what_the_core_takes() {
    let at = |setting: f64, flow: f64| treater::hilum_curve_point {
        setting: treater::hilum_setting { number: setting },
        flow: hilum_flow { m3_per_s: flow },
    };
    let catches = [at(10.0, 1e-6), at(20.0, 2e-6), at(30.0, 3e-6)];
    let mut memory = work(3);
    // SAFETY: pointers and lengths of what is there.
    let curve = unsafe {
        ok(|out| treater::hilum_pump_curve_through(catches.as_ptr(), memory.as_mut_ptr().cast(), 3, out))
    };
    let mut reach = MaybeUninit::uninit();
    let setting = ok(|out| {
        treater::hilum_pump_curve_setting(
            Some(&curve),
            hilum_flow { m3_per_s: 2.5e-6 },
            Some(&mut reach),
            out,
        )
    });
    assert!((setting.number - 25.0).abs() < 1e-9);
    let sample = |day: f64, count: f64| fit::hilum_sample { at: hilum_time { s: day * 86_400.0 }, count };
    let samples = [sample(0.0, 1e6), sample(30.0, 1e4)];
    // SAFETY: as above.
    let fitted =
        unsafe { ok(|out| fit::hilum_fit_log_linear(samples.as_ptr(), memory.as_mut_ptr().cast(), 2, out)) };
    // Adams & Moss, Food Microbiology, eq. 4.5: 30 d / (6 - 4).
    assert!((fitted.reduction.s / 86_400.0 - 15.0).abs() < 1e-9);
    let curve = survival::hilum_survival {
        curve: survival::HILUM_LOG_LINEAR,
        has_reference: 0,
        reduction: fitted.reduction,
        fast: fitted.reduction,
        fraction: hilum_share { one: 0.0 },
        scale: hilum_time { s: 0.0 },
        shape: 0.0,
        reference: hilum_c::quantity::temperature::hilum_temperature { celsius: 0.0 },
        z: hilum_c::quantity::amount::hilum_temperature_difference { kelvin: 0.0 },
    };
    let after = hilum_time { s: 30.0 * 86_400.0 };
    // SAFETY: as above.
    let log10 = unsafe {
        ok(|out| survival::hilum_survival_log10(Some(&curve), ptr::null(), ptr::null_mut(), 0, after, out))
    };
    assert!((log10 + 2.0).abs() < 1e-9);
}

#[test]
fn opaque_structures_are_made_and_read() {
    let setup = monitor::hilum_monitor_setup {
        target: hilum_rate_per_mass { m3_per_kg: 3e-6 },
        tolerance: hilum_share { one: 0.05 },
        seed: monitor::hilum_seed_sensor {
            shows: monitor::HILUM_TOTAL,
            total_resolution: hilum_mass { kg: 1.0 },
            flow_resolution: hilum_seed_flow { kg_per_s: 0.0 },
            most: hilum_seed_flow { kg_per_s: 10.0 },
        },
        liquid: monitor::hilum_liquid_sensor {
            shows: monitor::HILUM_TANK,
            resolution: hilum_volume { m3: 1e-4 },
            most: hilum_flow { m3_per_s: 1e-4 },
        },
    };
    // A structure that nobody filled.
    let mut memory = MaybeUninit::<monitor::hilum_monitor_16>::zeroed();
    // SAFETY: words of a number have no invalid bits.
    let kept = unsafe { memory.assume_init_mut() };
    let at = hilum_time { s: 0.0 };
    let seed = monitor::hilum_seed_reading {
        shows: monitor::HILUM_TOTAL,
        total: hilum_mass { kg: 0.0 },
        flow: hilum_seed_flow { kg_per_s: 0.0 },
    };
    let tank =
        monitor::hilum_liquid_reading { shows: monitor::HILUM_TANK, volume: hilum_volume { m3: 0.05 } };
    let mut report = MaybeUninit::uninit();
    let not_made =
        monitor::hilum_monitor_16_feed(Some(kept), at, Some(&seed), Some(&tank), Some(&mut report));
    assert_eq!(not_made, 7);
    assert_eq!(monitor::hilum_monitor_16_start(Some(&setup), Some(kept)), 0);
    let report = ok(|out| monitor::hilum_monitor_16_feed(Some(kept), at, Some(&seed), Some(&tank), out));
    assert_eq!((report.step, report.window.known), (monitor::HILUM_FIRST, 0));

    let reading = |m3: f64| used::hilum_volume_reading {
        shown: hilum_volume { m3 },
        resolution: hilum_volume { m3: 0.0 },
    };
    let (added, lost, mut slots) = ([reading(0.06)], [reading(0.0025)], work(2));
    // SAFETY: pointers and lengths of what is there.
    let drawn = unsafe {
        ok(|out| {
            used::hilum_used_volume_from(
                Some(&reading(0.18)),
                Some(&reading(0.0425)),
                added.as_ptr(),
                1,
                lost.as_ptr(),
                1,
                slots.as_mut_ptr().cast(),
                out,
            )
        })
    };
    let scale =
        used::hilum_mass_reading { shown: hilum_mass { kg: 41_000.0 }, resolution: hilum_mass { kg: 20.0 } };
    let seed = ok(|out| used::hilum_used_mass_of_reading(Some(&scale), out));
    let achieved = ok(|out| achieved::hilum_achieved_on(Some(&drawn), Some(&seed), out));
    let rate = ok(|out| achieved::hilum_achieved_rate(Some(&achieved), out));
    // By hand: 180 - 42.5 + 60 - 2.5 L on 41000 kg.
    assert!((rate.m3_per_kg - 0.195 / 41_000.0).abs() < 1e-18);
}

fn order() -> input::hilum_batch_order {
    input::hilum_batch_order {
        mass: hilum_mass { kg: 10_000.0 },
        speed: hilum_seed_flow { kg_per_s: 4.0 },
        changeover: hilum_time { s: 0.0 },
    }
}

#[test]
fn the_planner_works_in_the_callers_memory() {
    let set = [input::hilum_batch_set { adds: hilum_volume { m3: 0.01 }, ranks: [1.0, 1.0], stock: 9 }];
    let tanks = [input::hilum_batch_tank {
        capacity: hilum_volume { m3: 0.06 },
        hold_up: hilum_volume { m3: 0.0 },
        mixing: hilum_time { s: 600.0 },
        pot_life: hilum_time { s: 86_400.0 },
        sets: set.as_ptr(),
        n_sets: 1,
        refill: input::HILUM_WHEN_EMPTY,
    }];
    let needs = [input::hilum_batch_need {
        per_mass: hilum_rate_per_mass { m3_per_kg: 5e-6 },
        living: 0.5,
        recipe: 1,
    }];
    let (orders, shifts) = (
        [order()],
        [input::hilum_batch_shift { from: hilum_time { s: 0.0 }, to: hilum_time { s: 36_000.0 } }],
    );
    let job = input::hilum_batch_job {
        orders: orders.as_ptr(),
        n_orders: 1,
        tanks: tanks.as_ptr(),
        n_tanks: 1,
        needs: needs.as_ptr(),
        n_needs: 1,
        shifts: shifts.as_ptr(),
        n_shifts: 1,
    };
    let mut mixes = vec![MaybeUninit::<output::hilum_batch_mix>::uninit(); 4];
    let mut portions = vec![MaybeUninit::<output::hilum_batch_portion>::uninit(); 8];
    let mut firsts = [MaybeUninit::<output::hilum_batch_first>::uninit(); 1];
    let mut memory = work(0);
    let mut room = output::hilum_batch_room {
        work: ptr::null_mut(),
        n_work: 0,
        mixes: mixes.as_mut_ptr().cast(),
        n_mixes: 4,
        portions: portions.as_mut_ptr().cast(),
        n_portions: 8,
        firsts: firsts.as_mut_ptr().cast(),
        // Little, so that Miri is done soon.
        pours: 8,
        labels: 8,
    };
    let mut summary = MaybeUninit::uninit();
    let mut status = 6;
    for _ in 0..4 {
        if status != 6 {
            break;
        }
        memory = work(room.n_work);
        room.work = memory.as_mut_ptr().cast();
        // SAFETY: pointers and lengths of what is there.
        status = unsafe { plan::hilum_batch_plan(Some(&job), Some(&mut room), Some(&mut summary), None) };
    }
    assert_eq!(status, 0);
    assert!(!memory.is_empty());
    // SAFETY: as many were written as the room says.
    let mix = unsafe { mixes.first().unwrap().assume_init() };
    // By hand: 10 t x 5 mL/kg are 50 L, half of it living: 25 L out of sets of 10 L are three.
    assert_eq!((room.n_mixes, mix.sets[0]), (1, 3));
    assert!((mix.applied.m3 - 0.05).abs() < 1e-12);

    // SAFETY: written for every order.
    let first = unsafe { firsts[0].assume_init() };
    assert_eq!((first.known, first.at.s.to_bits()), (1, 600.0_f64.to_bits()));

    let mut slots = work(1);
    let (from, to) = (hilum_time { s: 30_000.0 }, hilum_time { s: 90_000.0 });
    // SAFETY: as above.
    let between = unsafe {
        ok(|out| {
            clock::hilum_batch_work_between(from, to, shifts.as_ptr(), slots.as_mut_ptr().cast(), 1, out)
        })
    };
    assert!((between.s - 6_000.0).abs() < 1e-9);
}
