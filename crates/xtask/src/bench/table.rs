//! Rows, as programs print them and as people read them.

/// Median, and the borders that a tenth of the measurements lie below and above.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Spread {
    pub(super) median: f64,
    low: f64,
    high: f64,
}

/// One line of the table.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Row {
    pub(super) what: String,
    pub(super) rival: String,
    pub(super) reach: String,
    pub(super) ratio: Option<Spread>,
    pub(super) seconds: Option<Spread>,
}

impl Spread {
    fn read(columns: &[&str]) -> Option<Self> {
        let [median, low, high] = columns else { return None };
        Some(Self { median: median.parse().ok()?, low: low.parse().ok()?, high: high.parse().ok()? })
    }

    /// Of some measurements; nothing of none.
    pub(super) fn of(mut values: Vec<f64>) -> Option<Self> {
        values.sort_by(f64::total_cmp);
        let last = values.len().checked_sub(1)?;
        let at = |tenths: usize| values.get(last * tenths / 10).copied();
        Some(Self { median: at(5)?, low: at(1)?, high: at(9)? })
    }
}

impl Row {
    /// Out of what a program prints; nothing out of a line of another kind.
    pub(super) fn read(line: &str) -> Option<Self> {
        let columns: Vec<&str> = line.split('\t').collect();
        let [what, rival, reach, numbers @ ..] = columns.as_slice() else { return None };
        let (ratio, seconds) = numbers.split_at_checked(3)?;
        Some(Self {
            what: (*what).to_owned(),
            rival: (*rival).to_owned(),
            reach: (*reach).to_owned(),
            ratio: Spread::read(ratio),
            seconds: Spread::read(seconds),
        })
    }

    /// The middle of the times.
    pub(super) fn median(&self) -> Option<f64> {
        self.seconds.map(|of| of.median)
    }

    fn written(&self) -> String {
        let ratio = self.ratio.map_or_else(
            || " | ".to_owned(),
            |of| format!("**{}** | {} to {}", ratio(of.median), ratio(of.low), ratio(of.high)),
        );
        let seconds = self.seconds.map_or_else(String::new, |of| time(of.median));
        format!("| {} | {} | {ratio} | {} | {seconds} |\n", self.what, self.rival, self.reach)
    }
}

fn ratio(value: f64) -> String {
    if value < 0.1 { format!("{value:.4}") } else { format!("{value:.2}") }
}

fn time(seconds: f64) -> String {
    let units = [(1.0, "s"), (1e-3, "ms"), (1e-6, "us")];
    let (size, unit) = units.into_iter().find(|(size, _)| seconds >= *size).unwrap_or((1e-9, "ns"));
    format!("{:.3} {unit}", seconds / size)
}

pub(super) fn heading(machine: &str) -> String {
    format!(
        "# What costs what

Written by `cargo xtask bench`. A ratio is the time of Hilum over that of its rival, both measured in turn in one run:
the median, and the range that holds four fifths of the measurements. Below 1 is faster. Times are those of the
processor, of this machine, and say nothing about another. A season on Spark is in RESULTS-spark.md.

{machine}
"
    )
}

pub(super) fn of(about: &str, rows: &[Row]) -> String {
    let lines: Vec<String> = rows.iter().map(Row::written).collect();
    format!(
        "\n## {about}\n\n| what | rival | ratio | four fifths | reach | time |\n|---|---|---|---|---|---|\n{}",
        lines.concat()
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_row_is_read_as_programs_print_it() {
        let row = Row::read("a plan\tby hand\t1.05\t1.0e0\t9e-1\t1.1\t2.5e-3\t2e-3\t3e-3").unwrap();
        assert_eq!(row.written(), "| a plan | by hand | **1.00** | 0.90 to 1.10 | 1.05 | 2.500 ms |\n");
        let alone = Row::read("a plan\t\t50 ms\t\t\t\t2.5e-7\t2e-7\t3e-7").unwrap();
        assert_eq!(alone.written(), "| a plan |  |  |  | 50 ms | 250.000 ns |\n");
        assert_eq!(Row::read("warning: something"), None);
    }
}
