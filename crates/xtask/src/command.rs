//! Children: where they run, what they print, how they end.

use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// The root of the repository.
pub(crate) fn repository() -> Result<PathBuf, String> {
    let here = std::env::var_os("CARGO_MANIFEST_DIR")
        .map_or_else(|| env!("CARGO_MANIFEST_DIR").into(), PathBuf::from);
    match here.ancestors().nth(2) {
        Some(root) if root.join("crates/xtask").is_dir() => Ok(root.to_path_buf()),
        _ => Err(format!(
            "{} is not a folder of this repository; call `cargo xtask` inside it.",
            here.display()
        )),
    }
}

/// The folder of what cargo builds: this program lies in its `debug`.
pub(crate) fn target_folder() -> Result<PathBuf, String> {
    let program =
        std::env::current_exe().map_err(|why| format!("This program cannot find itself: {why}."))?;
    let folder = program.ancestors().nth(2);
    folder.map(Path::to_path_buf).ok_or_else(|| format!("{} lies in no target folder.", program.display()))
}

/// The folder of what cargo fetches.
pub(crate) fn cargo_home() -> Option<PathBuf> {
    let home = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    home.or_else(|| Some(std::env::home_dir()?.join(".cargo")))
}

/// A call of the cargo that runs this program.
pub(crate) fn cargo(root: &Path, arguments: &[&str]) -> Command {
    let mut command = Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    command.args(arguments).current_dir(root);
    command
}

/// The inspector, a program of this package that needs libraries.
pub(crate) fn inspector(root: &Path, arguments: &[&str]) -> Command {
    let mut command = cargo(
        root,
        &["run", "--quiet", "--package", "xtask", "--features", "inspect", "--bin", "inspect", "--"],
    );
    command.args(arguments);
    command
}

/// What a person would type to do the same.
pub(crate) fn shown(command: &Command) -> String {
    let program = Path::new(command.get_program()).file_name().unwrap_or_default();
    let words = std::iter::once(program).chain(command.get_args());
    words.map(|word| word.to_string_lossy()).collect::<Vec<_>>().join(" ")
}

/// Runs a child, passes on what it prints as it comes, and shows each line of its standard output to `each`.
pub(crate) fn stream(command: &mut Command, mut each: impl FnMut(&str)) -> Result<(), String> {
    let name = shown(command);
    println!("$ {name}");
    let lost = |why: std::io::Error| format!("`{name}` cannot be run: {why}.");
    let mut child = command.stdin(Stdio::null()).stdout(Stdio::piped()).spawn().map_err(lost)?;
    if let Some(pipe) = child.stdout.take() {
        let mut reader = BufReader::new(pipe);
        let mut line = Vec::new();
        while reader.read_until(b'\n', &mut line).map_err(lost)? > 0 {
            let text = String::from_utf8_lossy(&line);
            print!("{text}");
            each(&text);
            line.clear();
        }
    }
    let status = child.wait().map_err(lost)?;
    if status.success() { Ok(()) } else { Err(format!("`{name}` ended with {status}.")) }
}

/// Runs a child and passes on what it prints.
pub(crate) fn run(command: &mut Command) -> Result<(), String> {
    stream(command, |_| {})
}

/// Runs a child and takes its standard output, which is not shown.
pub(crate) fn output(command: &mut Command) -> Result<String, String> {
    let name = shown(command);
    let output = command
        .stdin(Stdio::null())
        .stderr(Stdio::inherit())
        .output()
        .map_err(|why| format!("`{name}` cannot be run: {why}."))?;
    if output.status.success() {
        Ok(String::from_utf8_lossy(&output.stdout).into_owned())
    } else {
        Err(format!("`{name}` ended with {}.", output.status))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_child_that_fails_or_is_missing_is_named() {
        let cargo = cargo(Path::new("."), &["no-such-command"]);
        assert!(shown(&cargo).ends_with("cargo no-such-command"));
        let missing = run(&mut Command::new("hilum-no-such-program")).err().unwrap();
        assert!(missing.starts_with("`hilum-no-such-program` cannot be run: "), "{missing}");
    }

    #[test]
    fn each_line_is_seen() {
        let mut lines = Vec::new();
        let mut version = cargo(Path::new("."), &["--version", "--verbose"]);
        stream(&mut version, |line| lines.push(line.trim_end().to_owned())).unwrap();
        assert!(lines.len() > 1 && lines.iter().any(|line| line.starts_with("host: ")), "{lines:?}");
    }
}
