//! One calculation at a time, a thousand times.

use std::hint::black_box;

use hilum::quantity::{CellsPerVolume, Measure, Ratio, SeedsPerMass, VolumePerMass, VolumePerSeed};
use hilum::rate::{CellCount, Liquid, PerMass, PerSeed, RatePerMass, RatePerSeed};
use hilum::seed::{SeedSize, Share};
use hilum::text;
use hilum::viability::TitrePerVolume;

use crate::Row;
use crate::rival::{Calls, formula_cells, formula_per_seed};

const MANY: usize = 1000;
/// 325 mL/100 kg.
const RATE: f64 = 3.25e-6;

/// Kilograms of seed, or seeds per kilogram.
fn numbers() -> Vec<f64> {
    (0_u16..1000).map(|n| 4000.0 + f64::from(n)).collect()
}

#[expect(clippy::expect_used, reason = "the numbers above are more than 0")]
fn rate() -> RatePerMass {
    PerMass::new(VolumePerMass::from_base(RATE)).expect("a rate")
}

#[inline(never)]
fn per_seed(rate: RatePerMass, size: SeedSize) -> RatePerSeed {
    rate.per_seed(size)
}

#[inline(never)]
fn cells(titre: TitrePerVolume, dose: RatePerSeed, recovery: Share) -> PerSeed<CellCount> {
    titre.cells(dose, recovery)
}

pub(crate) fn rows() -> Vec<Row> {
    let mut rows = vec![per_seed_row(), cells_row()];
    rows.extend(c_rows());
    rows.push(Row::alone(
        "text \"2.5 fl oz/cwt\" to a rate, 1000 times",
        || {
            for _ in 0..MANY {
                black_box(text::read::<VolumePerMass>(black_box("2.5 fl oz/cwt")).ok());
            }
        },
        "20 x faster than unit libraries",
    ));
    rows
}

/// The sum of what a calculation gives for each of a list, beside a number that no compiler knows.
fn sum<C: Copy, T: Copy>(beside: C, list: &[T], calculate: impl Fn(C, T) -> f64) {
    let beside = black_box(beside);
    black_box(list.iter().map(|item| calculate(beside, *item)).sum::<f64>());
}

#[expect(clippy::expect_used, reason = "the numbers above are more than 0")]
fn per_seed_row() -> Row {
    let plain = numbers();
    let sizes: Vec<SeedSize> =
        plain.iter().map(|size| SeedSize::new(SeedsPerMass::from_base(*size)).expect("a size")).collect();
    let ours = move || sum(rate(), &sizes, |rate, size| per_seed(rate, size).get().to_base());
    let rival = move || sum(RATE, &plain, formula_per_seed);
    Row::against("Rust: dose per seed, 1000 times", ours, ("the formula in C", rival), "1.05")
}

#[expect(clippy::expect_used, reason = "the numbers above are more than 0")]
fn cells_row() -> Row {
    let plain: Vec<f64> = numbers().iter().map(|n| n * 1e-13).collect();
    let doses: Vec<RatePerSeed> = plain
        .iter()
        .map(|dose| PerSeed::<Liquid>::new(VolumePerSeed::from_base(*dose)).expect("a dose"))
        .collect();
    let titre = TitrePerVolume::new(CellsPerVolume::from_base(1e15)).expect("a titre");
    let recovery = Share::new(Ratio::from_base(0.7)).expect("a share");
    let ours = move || {
        sum((titre, recovery), &doses, |(titre, recovery), dose| {
            cells(titre, dose, recovery).get().to_base()
        });
    };
    let rival = move || {
        sum((1e15, 0.7), &plain, |(titre, recovery), dose| formula_cells(titre, dose, recovery));
    };
    Row::against("Rust: cells per seed, 1000 times", ours, ("the formula in C", rival), "1.05")
}

fn c_rows() -> [Row; 2] {
    let row = |what: &str, ours: Calls, rival: Calls| {
        let (list, same) = (numbers(), numbers());
        Row::against(
            what,
            move || {
                black_box(ours.sum(black_box(RATE), &list));
            },
            ("the same checks by hand in C", move || {
                black_box(rival.sum(black_box(RATE), &same));
            }),
            "1.2",
        )
    };
    [
        row("C: dose per seed, 1000 times", Calls::HilumPerSeed, Calls::ByHandPerSeed),
        row("C: need, 1000 times", Calls::HilumNeeded, Calls::ByHandNeeded),
    ]
}
