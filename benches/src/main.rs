//! Measures the rows in turn and prints one line of tab-separated columns for each, as `cargo xtask bench` reads them:
//! what, rival, reach, ratio (median, 10 %, 90 %), time of ours in seconds (median, 10 %, 90 %).

use hilum_benches::{Row, Work, rows};

/// Each side of a row is measured so often, and for so long in all at most.
const ROUNDS: usize = 41;
const MOST_SECONDS: f64 = 8.0;
/// A measurement shorter than this is repeated until it takes as long.
const LEAST_SECONDS: f64 = 2e-3;

fn main() {
    let wanted: Vec<String> = std::env::args().skip(1).collect();
    for row in rows() {
        if wanted.is_empty() || wanted.iter().any(|word| row.what.contains(word.as_str())) {
            println!("{}", line(row));
        }
    }
}

fn line(row: Row) -> String {
    let Row { what, mut ours, rival, reach } = row;
    let (repeats, once) = repeats(&mut ours);
    let rounds =
        (1..=ROUNDS).rev().step_by(2).find(|rounds| once * as_f64(*rounds) < MOST_SECONDS).unwrap_or(3);
    let (name, times) = match rival {
        None => ("", (0..rounds).map(|_| (seconds(&mut ours, repeats), None)).collect::<Vec<_>>()),
        Some((name, mut rival)) => {
            let rounds = (0..rounds).map(|round| {
                // Whoever comes second finds the processor as the other left it: take turns.
                let first = if round % 2 == 0 { Some(seconds(&mut rival, repeats)) } else { None };
                let ours = seconds(&mut ours, repeats);
                (ours, Some(first.unwrap_or_else(|| seconds(&mut rival, repeats))))
            });
            (name, rounds.collect())
        }
    };
    let ratios: Vec<f64> = times.iter().filter_map(|(ours, rival)| Some(ours / (*rival)?)).collect();
    let ours: Vec<f64> = times.iter().map(|(ours, _)| *ours).collect();
    format!("{what}\t{name}\t{reach}\t{}\t{}", spread(ratios), spread(ours))
}

#[expect(clippy::cast_precision_loss, clippy::as_conversions, reason = "a few dozen")]
fn as_f64(rounds: usize) -> f64 {
    rounds as f64
}

/// How often to repeat a measurement, and how long one then takes.
fn repeats(work: &mut Work) -> (u32, f64) {
    work();
    let once = seconds(work, 1);
    let mut repeats = 1;
    while once * f64::from(repeats) < LEAST_SECONDS {
        repeats *= 2;
    }
    (repeats, once * f64::from(repeats))
}

/// How long one of several repeats takes.
fn seconds(work: &mut Work, repeats: u32) -> f64 {
    let start = hilum_benches::seconds();
    for _ in 0..repeats {
        work();
    }
    (hilum_benches::seconds() - start) / f64::from(repeats)
}

/// Median, 10 % and 90 %; empty columns when there are none.
fn spread(mut values: Vec<f64>) -> String {
    values.sort_by(f64::total_cmp);
    let last = values.len().saturating_sub(1);
    let at =
        |tenths: usize| values.get(last * tenths / 10).map_or(String::new(), |value| format!("{value:.4e}"));
    [at(5), at(1), at(9)].join("\t")
}
