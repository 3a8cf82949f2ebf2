//! One calculation at a time, a thousand times.

use std::hint::black_box;

use hilum::quantity::{CellsPerVolume, Mass, Measure, Ratio, SeedsPerMass, VolumePerMass, VolumePerSeed};
use hilum::rate::{CellCount, Liquid, PerMass, PerSeed, RatePerMass, RatePerSeed};
use hilum::seed::{SeedSize, Share};
use hilum::text;
use hilum::viability::TitrePerVolume;

use crate::Row;
use crate::rival::{Calls, formula_cells, formula_needed, formula_per_seed};

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

#[inline(never)]
fn needed(rate: RatePerMass, seed: Mass) -> Result<hilum::quantity::Volume, hilum::Error> {
    rate.needed(seed)
}

pub(crate) fn rows() -> Vec<Row> {
    let mut rows = vec![per_seed_row(), cells_row(), needed_row()];
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

#[expect(clippy::expect_used, reason = "the numbers above are more than 0")]
fn per_seed_row() -> Row {
    let plain = numbers();
    let sizes: Vec<SeedSize> =
        plain.iter().map(|size| SeedSize::new(SeedsPerMass::from_base(*size)).expect("a size")).collect();
    let rate = rate();
    Row::against(
        "Rust: dose per seed, 1000 times",
        move || {
            black_box(sizes.iter().map(|size| per_seed(black_box(rate), *size).get().to_base()).sum::<f64>());
        },
        ("the formula in C", move || {
            black_box(plain.iter().map(|size| formula_per_seed(black_box(RATE), *size)).sum::<f64>());
        }),
        "1.05",
    )
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
    Row::against(
        "Rust: cells per seed, 1000 times",
        move || {
            black_box(
                doses
                    .iter()
                    .map(|dose| cells(black_box(titre), *dose, recovery).get().to_base())
                    .sum::<f64>(),
            );
        },
        ("the formula in C", move || {
            black_box(plain.iter().map(|dose| formula_cells(black_box(1e15), *dose, 0.7)).sum::<f64>());
        }),
        "1.05",
    )
}

fn needed_row() -> Row {
    let plain = numbers();
    let seed: Vec<Mass> = plain.iter().map(|kg| Mass::from_base(*kg)).collect();
    let rate = rate();
    Row::against(
        "Rust: need, the mass looked at, 1000 times",
        move || {
            black_box(
                seed.iter()
                    .map(|seed| needed(black_box(rate), *seed).map_or(0.0, Measure::to_base))
                    .sum::<f64>(),
            );
        },
        ("the formula in C, unchecked", move || {
            black_box(plain.iter().map(|kg| formula_needed(black_box(RATE), *kg)).sum::<f64>());
        }),
        "",
    )
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
