//! How long the first build takes of whoever adds the core to a program, in time of the processor.

use super::table::{Row, Spread};
use crate::command::{self, cargo, target_folder};
use std::fs;
use std::path::Path;

const ROUNDS: u32 = 3;
/// A program that takes its units from uom's own table.
const MANIFEST: &str = "[package]\nname = \"units\"\nversion = \"0.0.0\"\nedition = \"2024\"\n[workspace]\n\
    [dependencies]\nuom = { version = \"0.38\", default-features = false, features = [\"f64\", \"si\"] }\n";

pub(super) fn rows(root: &Path) -> Result<Vec<Row>, String> {
    let folder = target_folder()?.join("bench/units");
    let write = |name: &str, text: &str| {
        let path = folder.join(name);
        let made = path.parent().map_or(Ok(()), fs::create_dir_all);
        made.and_then(|()| fs::write(&path, text)).map_err(|why| format!("{}: {why}.", path.display()))
    };
    write("Cargo.toml", MANIFEST)?;
    write("src/lib.rs", "pub use uom::si::f64::Mass;\n")?;
    let (mut ratios, mut times) = (Vec::new(), Vec::new());
    for _ in 0..ROUNDS {
        let ours = built(root, &["--package", "hilum"])?;
        let rival = built(&folder, &[])?;
        ratios.push(ours / rival);
        times.push(ours);
    }
    Ok(vec![Row {
        what: "cold build of crates/hilum, release".into(),
        rival: "uom with its SI table".into(),
        reach: "5 s".into(),
        ratio: Spread::of(ratios),
        seconds: Spread::of(times),
    }])
}

/// Seconds that processors spend to build a package, and all it needs, out of what is downloaded.
fn built(at: &Path, more: &[&str]) -> Result<f64, String> {
    let target = target_folder()?.join("bench/cold");
    match fs::remove_dir_all(&target) {
        Err(why) if target.exists() => return Err(format!("{}: {why}.", target.display())),
        _ => {}
    }
    command::run(&mut cargo(at, &["fetch", "--quiet"]))?;
    let before = spent()?;
    command::run(cargo(at, &["build", "--release", "--quiet"]).args(more).env("CARGO_TARGET_DIR", target))?;
    Ok(spent()? - before)
}

/// Seconds that ended children have spent, theirs and the system's: columns 16 and 17 of Linux's own account, in
/// hundredths.
fn spent() -> Result<f64, String> {
    let text = fs::read_to_string("/proc/self/stat").map_err(|why| format!("/proc/self/stat: {why}."))?;
    let behind_the_name = text.rsplit(')').next().unwrap_or_default();
    let ticks = behind_the_name.split_whitespace().skip(13).take(2);
    let ticks: Option<Vec<f64>> = ticks.map(|word| word.parse().ok()).collect();
    ticks
        .map(|ticks| ticks.iter().sum::<f64>() / 100.0)
        .ok_or_else(|| "/proc/self/stat is of another form.".into())
}
