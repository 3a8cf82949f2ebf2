//! Does README.md tell the truth about its commands?

use std::fs;

use crate::command::{self, cargo};
use crate::step::Session;
use crate::steps::{SOAK, TEST};

/// What README.md must say at least, beside what .ci/run calls.
const DEMO: &str = "cargo run --release --example plan_day";

pub(super) fn words(session: &mut Session) -> Result<(), String> {
    let readme = read(session, "README.md")?;
    let ci = read(session, ".ci/run")?;
    let told = commands(&readme);
    for command in ci_commands(&ci).chain([DEMO]) {
        let outcome = if told.contains(&command) {
            Ok(())
        } else {
            Err(format!("README.md has no code block with the line `{command}`."))
        };
        session.check(format_args!("README.md tells `{command}`"), outcome);
    }
    session.check("every command in README.md is run by a step", run_by_steps("README.md", &told));
    let developers = read(session, "DEVELOPERS.md")?;
    let steps: Vec<&str> =
        commands(&developers).into_iter().filter(|command| command.starts_with("cargo xtask")).collect();
    session.check("every step in DEVELOPERS.md exists", run_by_steps("DEVELOPERS.md", &steps));
    Ok(())
}

fn run_by_steps(file: &str, told: &[&str]) -> Result<(), String> {
    let unknown: Vec<&str> = told.iter().copied().filter(|command| !is_run(command)).collect();
    if unknown.is_empty() {
        return Ok(());
    }
    Err(format!("No step runs what {file} tells: `{}`.", unknown.join("`, `")))
}

pub(super) fn readme(session: &mut Session) -> Result<(), String> {
    let readme = read(session, "README.md")?;
    let examples: Vec<&str> = commands(&readme).into_iter().filter(|command| is_example(command)).collect();
    if examples.is_empty() {
        return Err(format!("README.md runs no example; it should tell `{DEMO}`."));
    }
    for example in examples {
        let words: Vec<&str> = example.split_whitespace().skip(1).collect();
        let mut printed = false;
        let outcome =
            command::stream(&mut cargo(&session.root, &words), |line| printed |= !line.trim().is_empty());
        let outcome = outcome
            .and_then(|()| if printed { Ok(()) } else { Err(format!("`{example}` printed nothing.")) });
        session.check(example, outcome);
    }
    Ok(())
}

fn read(session: &Session, name: &str) -> Result<String, String> {
    fs::read_to_string(session.path(name)).map_err(|why| format!("{name} cannot be read: {why}."))
}

/// The calls of cargo in the code blocks, without prompt and comment.
fn commands(markdown: &str) -> Vec<&str> {
    let mut in_block = false;
    let mut commands = Vec::new();
    for line in markdown.lines().map(str::trim) {
        if line.starts_with("```") {
            in_block = !in_block;
        }
        let command = line.split(" #").next().unwrap_or_default().trim_end();
        let command = command.strip_prefix("$ ").unwrap_or(command);
        if in_block && command.starts_with("cargo ") {
            commands.push(command);
        }
    }
    commands
}

fn ci_commands(script: &str) -> impl Iterator<Item = &str> {
    let lines = script.lines().map(str::trim).filter(|line| !line.is_empty() && !line.starts_with('#'));
    lines.map(|line| line.strip_prefix("exec ").unwrap_or(line))
}

fn is_example(command: &str) -> bool {
    command.starts_with("cargo run ") && command.contains(" --example ")
}

/// Whether a step runs it, or it changes only the caller's own project.
fn is_run(command: &str) -> bool {
    let known = |word: &str| TEST.iter().any(|step| step.name == word);
    let soaked = |word: &str| SOAK.iter().any(|step| step.name == word);
    match command.split_whitespace().skip(1).collect::<Vec<_>>().as_slice() {
        ["add", ..]
        | ["xtask", "test" | "soak" | "spark" | "--help"]
        | ["xtask", "soak", "--help"]
        | ["xtask", "api", "--bless"] => true,
        ["xtask", "soak", names @ ..] => names.iter().all(|name| soaked(name)),
        ["xtask", names @ ..] => !names.is_empty() && names.iter().all(|name| known(name)),
        _ => is_example(command),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn commands_stand_in_code_blocks() {
        let readme = "cargo prose\n```sh\n$ cargo run --release --example plan_day\ncargo xtask test   # as CI does\nls\n```\ncargo prose\n```rust\nlet x = 1;\n```\n";
        assert_eq!(commands(readme), [DEMO, "cargo xtask test"]);
    }

    #[test]
    fn ci_calls_are_read_without_exec() {
        let script = "#!/usr/bin/env bash\n# Why.\nexec cargo xtask test\n";
        assert_eq!(ci_commands(script).collect::<Vec<_>>(), ["cargo xtask test"]);
    }

    #[test]
    fn only_what_a_step_runs_may_be_told() {
        for command in
            [DEMO, "cargo xtask test", "cargo xtask fmt clippy", "cargo xtask soak oracle", "cargo add hilum"]
        {
            assert!(is_run(command), "{command}");
        }
        for command in ["cargo xtask frobnicate", "cargo bench", "cargo xtask", "cargo xtask oracle"] {
            assert!(!is_run(command), "{command}");
        }
    }
}
