//! What two steps of `cargo xtask` need libraries for.
//!
//! `inspect api CRATE LIB_RS` prints the public items of a crate; `inspect panics IMAGE` prints the
//! symbols of a linked image from which a panic can start.

mod api;
mod panics;

use std::path::Path;
use std::process::ExitCode;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let lines = match words.as_slice() {
        ["api", name, root] => api::list(name, Path::new(root)),
        ["panics", image] => panics::symbols(Path::new(image)),
        _ => Err("Usage: inspect api CRATE LIB_RS, or inspect panics IMAGE.".into()),
    };
    match lines {
        Ok(lines) => {
            println!("{}", lines.join("\n"));
            ExitCode::SUCCESS
        }
        Err(problem) => {
            eprintln!("{problem}");
            ExitCode::FAILURE
        }
    }
}
