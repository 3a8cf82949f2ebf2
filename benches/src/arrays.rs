//! Whole lists.

use std::hint::black_box;
use std::mem::MaybeUninit;

use hilum::many;
use hilum::quantity::{Mass, Measure, Volume, VolumePerMass};
use hilum::rate::{PerMass, RatePerMass};
use hilum_c::array::{convert, dose};
use hilum_c::dose::liquid::{hilum_rate_per_mass, hilum_rate_per_seed};
use hilum_c::quantity::amount::{hilum_mass, hilum_volume};
use hilum_c::quantity::sown::hilum_seed_size;

use crate::Row;
use crate::rival::{loop_quotient, loop_times, loop_under};

const RATE: f64 = 3.25e-6;
const POUND: f64 = 0.453_592_37;
const ML: i32 = 82;
const KG: i32 = 10;
const LB: i32 = 20;

const SIZES: [usize; 3] = [1_000, 1_000_000, 10_000_000];
const RIVAL: &str = "loop in C, unchecked";

/// Kilograms of seed, pounds, or seeds per kilogram.
fn numbers(n: usize) -> Vec<f64> {
    (1_u16..=1000).cycle().map(|n| 4000.0 + f64::from(n)).take(n).collect()
}

/// Long enough for a clock: small lists several times.
fn times(n: usize) -> usize {
    (1_000_000 / n).max(1)
}

fn row(what: &str, n: usize, ours: impl FnMut() + 'static, rival: impl FnMut() + 'static) -> Row {
    beside(what, n, ours, (RIVAL, rival))
}

fn beside(
    what: &str,
    n: usize,
    mut ours: impl FnMut() + 'static,
    (name, mut rival): (&'static str, impl FnMut() + 'static),
) -> Row {
    let repeated = times(n);
    let how = if repeated > 1 { format!(", {repeated} times") } else { String::new() };
    Row::against(
        format!("{what}, {n} of them{how}"),
        move || (0..repeated).for_each(|_| ours()),
        (name, move || (0..repeated).for_each(|_| rival())),
        "1.25",
    )
}

fn times_loop(by: f64, n: usize) -> impl FnMut() {
    let (from, mut to) = (numbers(n), vec![0.0; n]);
    move || {
        loop_times(black_box(by), &from, &mut to);
        black_box(&mut to);
    }
}

fn under_loop(over: f64, n: usize) -> impl FnMut() {
    let (from, mut to) = (numbers(n), vec![0.0; n]);
    move || {
        loop_under(black_box(over), &from, &mut to);
        black_box(&mut to);
    }
}

pub(crate) fn rows() -> Vec<Row> {
    let mut rows = Vec::new();
    for n in SIZES {
        rows.push(rust_needed(n));
        rows.push(c_needed(n));
        rows.push(c_per_seed(n));
        rows.push(c_pounds(n));
        rows.push(c_label(n, "in this order in C", label_loop(n)));
        rows.push(c_label(n, RIVAL, times_loop(1e-8, n)));
    }
    rows
}

#[expect(clippy::expect_used, reason = "the rate is more than 0")]
fn rust_needed(n: usize) -> Row {
    let rate: RatePerMass = PerMass::new(VolumePerMass::from_base(RATE)).expect("a rate");
    let seed: Vec<Mass> = numbers(n).into_iter().map(Mass::from_base).collect();
    let mut out = vec![Volume::from_base(0.0); n];
    let ours = move || {
        if let Ok(needed) = many::needed(black_box(rate), &seed) {
            out.iter_mut().zip(needed).for_each(|(to, volume)| *to = volume);
        }
        black_box(&mut out);
    };
    row("Rust: needs, rate x mass", n, ours, times_loop(RATE, n))
}

/// Calls a function of the C library as C does.
fn called<A: 'static, B: Copy + 'static>(
    from: Vec<A>,
    zero: B,
    call: impl Fn(*const A, *mut B, usize, Option<&mut MaybeUninit<usize>>) -> i32 + 'static,
) -> impl FnMut() {
    let mut out = vec![zero; from.len()];
    move || {
        black_box(call(from.as_ptr(), out.as_mut_ptr(), from.len(), None));
        black_box(&mut out);
    }
}

fn c_needed(n: usize) -> Row {
    let seed = numbers(n).into_iter().map(|kg| hilum_mass { kg }).collect();
    let ours = called(seed, hilum_volume { m3: 0.0 }, |from, to, n, bad| {
        let rate = black_box(hilum_rate_per_mass { m3_per_kg: RATE });
        // SAFETY: both lists have n elements.
        unsafe { dose::hilum_rate_per_mass_needed_n(rate, from, to, n, bad) }
    });
    row("C: needs, rate x mass", n, ours, times_loop(RATE, n))
}

fn c_per_seed(n: usize) -> Row {
    let sizes = numbers(n).into_iter().map(|seeds_per_kg| hilum_seed_size { seeds_per_kg }).collect();
    let ours = called(sizes, hilum_rate_per_seed { m3_per_seed: 0.0 }, |from, to, n, bad| {
        let rate = black_box(hilum_rate_per_mass { m3_per_kg: RATE });
        // SAFETY: both lists have n elements.
        unsafe { dose::hilum_rate_per_mass_to_per_seed_n(rate, from, to, n, bad) }
    });
    row("C: doses per seed, rate / size", n, ours, under_loop(RATE, n))
}

fn c_pounds(n: usize) -> Row {
    let ours = called(numbers(n), hilum_mass { kg: 0.0 }, |from, to, n, bad| {
        // SAFETY: both lists have n elements.
        unsafe { convert::hilum_mass_from_n(from, black_box(LB), to, n, bad) }
    });
    row("C: pounds to kilograms", n, ours, times_loop(POUND, n))
}

/// Another order of the same operations gives other bits.
fn label_loop(n: usize) -> impl FnMut() {
    let (from, mut to) = (numbers(n), vec![0.0; n]);
    move || {
        loop_quotient(black_box(1e-6), black_box(100.0), &from, &mut to);
        black_box(&mut to);
    }
}

fn c_label(n: usize, name: &'static str, rival: impl FnMut() + 'static) -> Row {
    let ours = called(numbers(n), hilum_rate_per_mass { m3_per_kg: 0.0 }, |from, to, n, bad| {
        // SAFETY: both lists have n elements.
        unsafe { convert::hilum_rate_per_mass_from_n(from, black_box(ML), 100.0, KG, to, n, bad) }
    });
    beside("C: mL/100 kg to base units, (v a) / (k b)", n, ours, (name, rival))
}
