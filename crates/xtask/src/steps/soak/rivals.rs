//! General-purpose libraries are asked the same.

use std::process::Command;

use super::python;
use crate::command::{self, cargo, target_folder};
use crate::step::Session;

pub(crate) const PYTHON_UNITS: &str = "pint==0.25.3";
const PYTHON: [&str; 3] = [PYTHON_UNITS, "scipy==1.17.1", "statsmodels==0.15.0"];
pub(crate) const JAVASCRIPT_UNITS: &str = "@lhncbc/ucum-lhc@7.1.10";

pub(in crate::steps) fn rivals(session: &mut Session) -> Result<(), String> {
    let python = python(&session.root, &PYTHON)?;
    command::run(&mut cargo(&session.root, &["build", "--package", "hilum-c"]))?;
    let folder = target_folder()?;
    let library = folder.join("debug/libhilum_c.so");
    let units = folder.join("units.json");
    let mut compare = Command::new(&python);
    compare.arg(session.path("tests/rivals/units.py")).arg(&library).arg(&units);
    session.check("units and doses as pint has them", command::run(&mut compare));
    let mut compare = Command::new(&python);
    compare.arg(session.path("tests/rivals/survival.py")).arg(&library);
    session.check("survival and fits as SciPy and statsmodels have them", command::run(&mut compare));
    let install = ["install", "--silent", "--no-save", "--prefix", ".", JAVASCRIPT_UNITS];
    command::run(Command::new("npm").args(install).current_dir(&folder))?;
    let mut compare = Command::new("node");
    compare.arg(session.path("tests/rivals/ucum.mjs")).arg(&units).current_dir(&folder);
    session.check("units as a UCUM library has them", command::run(&mut compare));
    Ok(())
}
