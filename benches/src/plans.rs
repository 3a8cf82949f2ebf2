//! Whole plans, and the searches in them.

use std::hint::black_box;

use hilum::pack::{Coverage, Objective, PackSize, Price, choose};
use hilum::quantity::{Mass, Measure};

use crate::Row;
use crate::rival::least_leftover;

mod batches;
mod job;

/// What is planned: what it is, what is wanted of it, and the job.
pub(crate) fn jobs() -> impl Iterator<Item = (String, &'static str, job::Shed)> {
    let small = ("plan of 3 orders, 4 treatments, 2 tanks, 1 shift".to_owned(), "200 us", job::Shed::SMALL);
    let large = [10, 100, 1_000, 10_000].into_iter().map(|orders| {
        let what = format!("plan of {orders} orders, 12 treatments, 3 tanks, 14 shifts");
        let reach = if orders == 1_000 { "50 ms; grows at most linearly x 1.2" } else { "" };
        (what, reach, job::Shed { orders, treatments: 12, tanks: 3, shifts: 14 })
    });
    std::iter::once(small).chain(large)
}

pub(crate) fn rows() -> Vec<Row> {
    let mut rows: Vec<Row> = jobs().map(|(what, reach, shed)| plan(&what, &shed, reach)).collect();
    rows.extend([packs_row(), brute_row(), batches::row()]);
    rows
}

#[expect(clippy::expect_used, reason = "a job that has no plan would measure nothing")]
fn plan(what: &str, shed: &job::Shed, reach: &'static str) -> Row {
    let text = shed.text();
    drop(hilum_job::plan_json(&text).expect("a plan"));
    Row::alone(
        what,
        move || {
            black_box(hilum_job::plan_json(black_box(&text)).ok());
        },
        reach,
    )
}

#[expect(clippy::expect_used, reason = "coverages and prices are more than 0")]
fn sizes(of: &[(f64, f64)]) -> Vec<PackSize> {
    of.iter()
        .map(|(kg, price)| PackSize {
            covers: Coverage::new(Mass::from_base(*kg)).expect("a coverage"),
            stock: None,
            price: Some(Price::new(*price).expect("a price")),
        })
        .collect()
}

/// Some 10,000 sets of eight sizes.
fn packs_row() -> Row {
    let sizes = sizes(&[
        (4000.0, 410.0),
        (2500.0, 262.0),
        (1600.0, 170.0),
        (1000.0, 108.0),
        (630.0, 69.0),
        (400.0, 45.0),
        (250.0, 29.0),
        (160.0, 19.0),
    ]);
    let need = Mass::from_base(40_000_000.0 + 137.0);
    Row::alone(
        "choice among 8 sizes of pack, 10,000 sets",
        move || {
            black_box(choose(black_box(need), &sizes, Objective::LeastLeftover).ok());
        },
        "5 ms",
    )
}

fn brute_row() -> Row {
    const COVERS: [f64; 4] = [4000.0, 2500.0, 1600.0, 1000.0];
    const NEED: f64 = 60_137.0;
    let sizes = sizes(&COVERS.map(|kg| (kg, kg / 10.0)));
    Row::against(
        "choice among 4 sizes of pack, 15 sets",
        move || {
            black_box(choose(black_box(Mass::from_base(NEED)), &sizes, Objective::LeastLeftover).ok());
        },
        ("every choice in Rust", move || {
            black_box(least_leftover(black_box(NEED), &COVERS));
        }),
        "1",
    )
}
