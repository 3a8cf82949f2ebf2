//! `cargo run -p hilum-attack -- batch FILE...` makes the attack of a file again; `HILUM_SHOW=1` prints the job first.

use std::process::ExitCode;

fn main() -> ExitCode {
    let mut words = std::env::args().skip(1);
    let name = words.next().unwrap_or_default();
    let Some((_, attack)) = hilum_attack::ALL.iter().find(|(known, _)| *known == name) else {
        let known: Vec<&str> = hilum_attack::ALL.iter().map(|(known, _)| *known).collect();
        eprintln!("Usage: hilum-attack NAME FILE..., NAME one of {}.", known.join(", "));
        return ExitCode::from(2);
    };
    for file in words {
        match std::fs::read(&file) {
            Ok(bytes) => attack(&bytes),
            Err(why) => eprintln!("{file} cannot be read: {why}."),
        }
    }
    ExitCode::SUCCESS
}
