//! Do columns of a table get the same bits, from Python and on a cluster?

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::command::{self, cargo, target_folder};
use crate::dist;
use crate::step::Session;
use crate::tools::needed;

const HOME: &str = "examples/spark";

/// Without Spark: numpy over the arrays that Spark would bring.
pub(super) fn arrays(session: &mut Session) -> Result<(), String> {
    let library = library(session)?;
    let python = environment(session, &["test/requirements.txt"])?;
    let mut tests = Command::new(python);
    tests.args(["-m", "unittest", "-v", "test_rows"]).env("HILUM_LIBRARY", library);
    session.check_command(tests.current_dir(session.path(HOME).join("test")));
    Ok(())
}

/// A cluster of processes on this machine, five million orders.
pub(super) fn spark(session: &mut Session) -> Result<(), String> {
    needed(&[("java", "default-jre-headless")])?;
    let library = library(session)?;
    let python = environment(session, &["soak/requirements.txt", "requirements.txt"])?;
    let example = ["build", "--release", "--package", "hilum-examples", "--example", "season_check"];
    command::run(&mut cargo(&session.root, &example))?;
    let target = target_folder()?;
    let mut season = Command::new(python);
    season.arg(session.path(HOME).join("soak/run.py")).arg("--work").arg(target.join("spark"));
    season.arg("--check").arg(target.join("release/examples/season_check"));
    for (option, variable) in [("--rows", "HILUM_SPARK_ROWS"), ("--kill-at", "HILUM_SPARK_KILL_AT")] {
        if let Some(value) = std::env::var_os(variable) {
            season.arg(option).arg(value);
        }
    }
    session.check_command(season.env("HILUM_LIBRARY", library));
    Ok(())
}

/// The shared library, as a cluster gets it.
fn library(session: &Session) -> Result<PathBuf, String> {
    let prefix = target_folder()?.join("spark/prefix");
    dist::c(&session.root, &prefix)?;
    Ok(prefix.join("lib/libhilum.so"))
}

/// A Python with the packages of lists, the first of which may name the others; made again when they change.
fn environment(session: &Session, lists: &[&str]) -> Result<PathBuf, String> {
    needed(&[("python3", "python3 python3-venv")])?;
    let lists: Vec<PathBuf> = lists.iter().map(|list| session.path(HOME).join(list)).collect();
    let wanted = lists.iter().map(|list| read(list)).collect::<Result<String, String>>()?;
    let first = lists.first().ok_or("No list of packages is given.")?;
    let name = first.parent().and_then(Path::file_name).unwrap_or_default();
    let folder = target_folder()?.join("python").join(name);
    let (python, made) = (folder.join("bin/python"), folder.join("requirements.txt"));
    if fs::read_to_string(&made).is_ok_and(|had| had == wanted) {
        return Ok(python);
    }
    let _ = fs::remove_dir_all(&folder);
    command::run(Command::new("python3").args(["-m", "venv"]).arg(&folder))?;
    let pip = ["-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--requirement"];
    command::run(Command::new(&python).args(pip).arg(first)).map_err(|why| missing(&wanted, &why))?;
    fs::write(&made, wanted).map_err(|why| format!("{} cannot be written: {why}.", made.display()))?;
    Ok(python)
}

/// One sentence for who has no network.
fn missing(wanted: &str, why: &str) -> String {
    let packages: Vec<&str> = wanted.lines().filter(|line| line.contains("==")).collect();
    format!("This needs {} from PyPI, which pip could not install: {why}", packages.join(", "))
}

fn read(path: &Path) -> Result<String, String> {
    fs::read_to_string(path).map_err(|why| format!("{} cannot be read: {why}.", path.display()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_missing_is_named() {
        let told = missing("# Why.\nnumpy==2.4.6\n-r other.txt\n", "`pip` ended with exit status: 1.");
        assert_eq!(
            told,
            "This needs numpy==2.4.6 from PyPI, which pip could not install: `pip` ended with exit status: 1."
        );
    }
}
