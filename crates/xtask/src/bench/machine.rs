//! What measured it.

use std::fs;
use std::process::Command;

use crate::command;

pub(super) fn described() -> Result<String, String> {
    let version = |program: &str| {
        let text = command::output(Command::new(program).arg("--version"))?;
        Ok::<_, String>(text.lines().next().unwrap_or_default().to_owned())
    };
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    let load = read("/proc/loadavg", |text| text.split(' ').next().map(str::to_owned));
    Ok(format!(
        "- Processor: {}, {cores} of its cores; {}\n- {}\n- {}\n- Load when it began: {load}\n",
        read("/proc/cpuinfo", |text| field(text, "model name")),
        command::output(Command::new("uname").arg("-srm"))?.trim(),
        version("rustc")?,
        version("cc")?,
    ))
}

fn field(text: &str, name: &str) -> Option<String> {
    text.lines()
        .find(|line| line.starts_with(name))?
        .split_once(": ")
        .map(|(_, value)| value.trim().to_owned())
}

/// Part of a file of Linux; elsewhere nobody knows.
fn read(path: &str, part: impl Fn(&str) -> Option<String>) -> String {
    fs::read_to_string(path).ok().and_then(|text| part(&text)).unwrap_or_else(|| "unknown".to_owned())
}
