//! A text to a rate, beside general-purpose libraries of units.

use std::path::Path;
use std::process::Command;

use super::measured;
use super::table::{Row, Spread};
use crate::command::{self, cargo, target_folder};
use crate::steps::soak::python;
use crate::steps::soak::rivals::{JAVASCRIPT_UNITS, PYTHON_UNITS};

const ROUNDS: usize = 9;
/// The native row, and how many texts it reads.
const OURS: &str = "text \"2.5 fl oz/cwt\"";
const TEXTS: f64 = 1000.0;

pub(super) fn rows(root: &Path) -> Result<Vec<Row>, String> {
    let folder = target_folder()?;
    let python = python(root, &[PYTHON_UNITS])?;
    let install = ["install", "--silent", "--no-save", "--prefix", ".", JAVASCRIPT_UNITS];
    command::run(Command::new("npm").args(install).current_dir(&folder))?;
    let script = |name: &str| root.join("benches/text").join(name);
    Ok(vec![
        row(root, "pint, of PyPI", || Command::new(&python).arg(script("rate.py")).printed())?,
        row(root, "ucum-lhc, of npm", || {
            Command::new("node").arg(script("rate.mjs")).current_dir(&folder).printed()
        })?,
    ])
}

fn row(root: &Path, rival: &str, seconds: impl Fn() -> Result<f64, String>) -> Result<Row, String> {
    let (mut ratios, mut times) = (Vec::new(), Vec::new());
    for _ in 0..ROUNDS {
        let arguments =
            ["run", "--release", "--quiet", "--package", "hilum-benches", "--bin", "hilum-benches"];
        let rows = measured(cargo(root, &arguments).args(["--", OURS]))?;
        let ours = rows.first().and_then(Row::median).ok_or("The native row was not measured.")? / TEXTS;
        ratios.push(ours / seconds()?);
        times.push(ours);
    }
    Ok(Row {
        what: "one text \"2.5 fl oz/cwt\" to a rate".into(),
        rival: rival.into(),
        reach: "0.05 (20 times faster)".into(),
        ratio: Spread::of(ratios),
        seconds: Spread::of(times),
    })
}

trait Seconds {
    /// The number that the program prints.
    fn printed(&mut self) -> Result<f64, String>;
}

impl Seconds for Command {
    fn printed(&mut self) -> Result<f64, String> {
        let text = command::output(self)?;
        text.trim().parse().map_err(|_| format!("This is no number of seconds: {text}"))
    }
}
