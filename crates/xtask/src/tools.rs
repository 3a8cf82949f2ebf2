//! Programs that a step needs from the system.

use std::process::{Command, Stdio};

use crate::command;

/// Makes sure that programs are there: each with the Debian packages that have it, which root installs.
pub(crate) fn needed(programs: &[(&str, &str)]) -> Result<(), String> {
    let missing = || programs.iter().filter(|(program, _)| !is_there(program)).copied().collect::<Vec<_>>();
    let first = missing();
    if first.is_empty() {
        return Ok(());
    }
    if is_root() {
        let packages: Vec<&str> = first.iter().flat_map(|(_, packages)| packages.split(' ')).collect();
        // A failure shows below, by what is still missing.
        let _ = command::run(Command::new("apt-get").arg("update"));
        let mut install = Command::new("apt-get");
        let _ = command::run(install.args(["install", "--yes", "--no-install-recommends"]).args(packages));
    }
    let still: Vec<String> =
        missing().iter().map(|(program, package)| format!("{program} (Debian package {package})")).collect();
    if still.is_empty() { Ok(()) } else { Err(format!("This needs {}, which is missing.", still.join(", "))) }
}

fn is_there(program: &str) -> bool {
    let asked = Command::new(program).arg("--version").stdout(Stdio::null()).stderr(Stdio::null()).status();
    asked.is_ok_and(|status| status.success())
}

fn is_root() -> bool {
    command::output(Command::new("id").arg("-u")).is_ok_and(|id| id.trim() == "0")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_there_is_not_asked_for() {
        assert!(is_there("cargo") && !is_there("hilum-no-such-program"));
        needed(&[("cargo", "cargo")]).unwrap();
    }
}
