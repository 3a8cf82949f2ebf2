//! Flash and RAM of linked images, against the committed budget.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::Command;

use super::{FIRMWARE, Processor, build};
use crate::command::{self, target_folder};
use crate::step::{Lists, Session};

const BUDGET: &str = "examples/controller/budget.txt";
/// A figure may grow by this much before it counts: compilers differ a little.
const SLACK: f64 = 0.05;

const HEAD: &str = "\
# Flash and RAM of linked images, in bytes: text + data, and data + bss, with --gc-sections. An image holds the
# functions that it names and what they need, and no code that calls them.
# image processor flash ram; `cargo xtask controller --bless` rewrites it.
#   empty         startup and board alone; part of every other image
#   dose          one conversion: a rate per mass to a dose per seed
#   from-unit     one conversion out of any unit
#   calculators   every calculation, in base units: no texts, units, words, lists, typed bus, no batch planner
#   part-...      one part of them alone. Each holds the arithmetic of doubles that it needs (3 kB; powers, logarithms
#                 and roots 4 kB more), so the parts add up to more than the whole
#   planner       the batch planner alone
#   no-words      all but texts, units and words
#   all           every function of the header
#   controller    the firmware in this folder
";

/// What the whole library holds, by image.
fn images(exports: &[&str]) -> Vec<(&'static str, Vec<String>)> {
    let words = |name: &str| {
        name.ends_with("_read")
            || ["status", "version", "text", "unit", "powers"]
                .iter()
                .any(|of| name.starts_with(&format!("hilum_{of}_")))
            || ["hilum_version", "hilum_is_metal"].contains(&name)
    };
    let converts = |name: &str| {
        ["_from", "_in", "_n", "_rows", "_bus"].iter().any(|end| name.ends_with(end)) && !is_made(name)
    };
    let of = |keep: &dyn Fn(&str) -> bool| {
        exports.iter().filter(|name| keep(name)).map(|name| (*name).to_owned()).collect::<Vec<_>>()
    };
    let calculates = |name: &str| !words(name) && !converts(name) && name != "hilum_batch_plan";
    let mut images = vec![
        ("empty", Vec::new()),
        ("dose", vec!["hilum_rate_per_mass_to_per_seed".into()]),
        ("from-unit", vec!["hilum_rate_per_mass_from".into()]),
        ("calculators", of(&calculates)),
        ("planner", vec!["hilum_batch_plan".into()]),
        ("no-words", of(&|name| !words(name))),
        ("all", of(&|_| true)),
    ];
    images.extend(
        PARTS.iter().map(|(part, _)| (*part, of(&|name| calculates(name) && part_of(name) == *part))),
    );
    images
}

/// What the calculators are made of, by how the names of functions begin behind `hilum_`.
const PARTS: [(&str, &[&str]); 11] = [
    ("part-account", &["used_", "achieved_"]),
    ("part-batch", &["batch_"]),
    ("part-ddi", &["ddi_"]),
    ("part-limit", &["season_limit_"]),
    ("part-mix", &["slurry_", "mix_", "hold_up_", "min_fill_"]),
    ("part-pack", &["coverage_", "sets_needed_", "pack_"]),
    ("part-rate", &["rate_per_", "dry_per_", "cells_per_", "active_", "content_"]),
    ("part-seed", &["seed_size_", "seed_unit_", "bushel_", "sown_", "pure_"]),
    ("part-temperature", &["temperature_"]),
    (
        "part-treater",
        &["seed_flow_", "flow_", "batch_treater_", "dumps_", "catch_", "pump_", "setting_", "monitor_"],
    ),
    ("part-viability", &["titre_", "survival_", "plant_by_", "storage_", "fit_", "crossing_"]),
];

/// The part with the longest beginning of a name; empty when a function belongs to none.
fn part_of(function: &str) -> &'static str {
    let name = function.trim_start_matches("hilum_");
    let beginnings = PARTS.iter().flat_map(|(part, begin)| begin.iter().map(move |begin| (*part, *begin)));
    let fitting = beginnings.filter(|(_, begin)| name.starts_with(begin));
    fitting.max_by_key(|(_, begin)| begin.len()).map_or("", |(part, _)| part)
}

/// Calculations that happen to be called as a conversion is.
fn is_made(name: &str) -> bool {
    ["hilum_used_volume_from", "hilum_used_mass_from", "hilum_seed_size_count_in", "hilum_bushel_bushels_in"]
        .contains(&name)
        || name.ends_with("_units_in")
        || name.ends_with("_in_set")
}

/// Flash and RAM, by image and processor.
type Figures = BTreeMap<(String, String), (u64, u64)>;

fn measured(session: &Session, processors: &[Processor]) -> Result<Figures, String> {
    let exports = fs::read_to_string(session.path("bindings/c/exports.txt"));
    let exports = exports.map_err(|why| format!("exports.txt cannot be read: {why}."))?;
    let exports: Vec<&str> = exports.lines().collect();
    let source = target_folder()?.join("controller/empty.c");
    build::write(&source, "int main(void) { return 0; }\n")?;
    let source = source.to_string_lossy().into_owned();
    let mut figures = Figures::new();
    for processor in processors {
        for (name, functions) in images(&exports) {
            let kept: Vec<String> = functions.iter().map(|name| format!("-Wl,--undefined={name}")).collect();
            let kept: Vec<&str> = kept.iter().map(String::as_str).chain([build::SMALL]).collect();
            let image = build::image(session, processor, name, &["startup.c", "board.c", &source], &kept)?;
            figures.insert((name.into(), processor.name.into()), size(&image)?);
        }
        let image = build::image(session, processor, "controller", FIRMWARE, &[build::SMALL])?;
        figures.insert(("controller".into(), processor.name.into()), size(&image)?);
    }
    Ok(figures)
}

fn size(image: &Path) -> Result<(u64, u64), String> {
    let text = command::output(Command::new("arm-none-eabi-size").arg(image))?;
    let figures: Vec<u64> = text
        .lines()
        .nth(1)
        .unwrap_or_default()
        .split_whitespace()
        .map_while(|word| word.parse().ok())
        .collect();
    match figures.as_slice() {
        [text, data, bss, ..] => Ok((text + data, data + bss)),
        _ => Err(format!("arm-none-eabi-size says:\n{text}")),
    }
}

/// The symbols of an image that can panic.
fn panics(image: &Path) -> Result<(), String> {
    let symbols = command::output(Command::new("arm-none-eabi-nm").arg("--demangle").arg(image))?;
    let panicking: Vec<&str> = symbols.lines().filter(|line| line.contains("core::panicking")).collect();
    if panicking.is_empty() { Ok(()) } else { Err(format!("It holds {}.", panicking.join(", "))) }
}

fn written(figures: &Figures) -> String {
    let lines = figures.iter().map(|((image, on), (flash, ram))| format!("{image} {on} {flash} {ram}\n"));
    HEAD.to_owned() + &lines.collect::<Vec<_>>().concat()
}

fn read(text: &str) -> Figures {
    let lines = text.lines().filter(|line| !line.starts_with('#'));
    lines
        .filter_map(|line| {
            let mut words = line.split(' ');
            let key = (words.next()?.to_owned(), words.next()?.to_owned());
            Some((key, (words.next()?.parse().ok()?, words.next()?.parse().ok()?)))
        })
        .collect()
}

#[expect(clippy::cast_precision_loss, clippy::as_conversions, reason = "a few hundred kilobytes")]
fn over(now: u64, budget: u64) -> bool {
    now as f64 > budget as f64 * (1.0 + SLACK)
}

pub(super) fn check(session: &mut Session, processors: &[Processor]) -> Result<(), String> {
    let now = measured(session, processors)?;
    let path = session.path(BUDGET);
    if session.lists == Lists::Rewrite {
        build::write(&path, &written(&now))?;
    }
    let budget = read(&fs::read_to_string(&path).map_err(|why| format!("{BUDGET} cannot be read: {why}."))?);
    for ((image, on), (flash, ram)) in &now {
        let outcome = match budget.get(&(image.clone(), on.clone())) {
            None => Err(format!("{BUDGET} has no line for {image} on {on}.")),
            Some((most, most_ram)) if over(*flash, *most) || over(*ram, *most_ram) => Err(format!(
                "{image} on {on} takes {flash} and {ram} bytes, more than {most} and {most_ram}."
            )),
            Some(_) => Ok(()),
        };
        session.check(format_args!("{image} on {on}: {flash} bytes of flash, {ram} of RAM"), outcome);
    }
    for processor in processors {
        // Reading texts keeps checks of bounds in Rust's own reader of decimals.
        for name in ["no-words", "controller"] {
            let image = target_folder()?.join(format!("controller/{name}-{}.elf", processor.name));
            session.check(format_args!("no panic is left in {name} on {}", processor.name), panics(&image));
        }
    }
    let softfp = now.get(&("calculators".to_owned(), "m4f-softfp".to_owned())).map_or(0, |(flash, _)| *flash);
    let outcome =
        if (1..40_000).contains(&softfp) { Ok(()) } else { Err(format!("They take {softfp} bytes.")) };
    session.check(format_args!("all calculators take less than 40 kB on the M4F with softfp"), outcome);
    let net = |image: &str| now.get(&(image.to_owned(), "m4f".to_owned())).map_or(0, |(flash, _)| *flash);
    let dose = net("dose").saturating_sub(net("empty"));
    let outcome = if (1..2048).contains(&dose) { Ok(()) } else { Err(format!("It takes {dose} bytes.")) };
    session.check(format_args!("a conversion alone takes less than 2 kB on the M4F: {dose} bytes"), outcome);
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_budget_is_read_as_it_is_written() {
        let figures: Figures = [(("all".to_owned(), "m0".to_owned()), (5, 6))].into();
        assert_eq!(read(&written(&figures)), figures);
    }

    #[test]
    fn every_calculator_belongs_to_a_part() {
        let exports = include_str!("../../../../../bindings/c/exports.txt").lines().collect::<Vec<_>>();
        let images: BTreeMap<_, _> = images(&exports).into_iter().collect();
        let apart: usize = PARTS.iter().map(|(part, _)| images[part].len()).sum();
        assert_eq!(apart, images["calculators"].len());
        assert!(images["calculators"].iter().all(|name| !part_of(name).is_empty()));
    }

    #[test]
    fn images_hold_what_they_say() {
        let exports = [
            "hilum_mass_from",
            "hilum_mass_read",
            "hilum_used_mass_from",
            "hilum_batch_plan",
            "hilum_version",
        ];
        let images: BTreeMap<_, _> = images(&exports).into_iter().collect();
        assert_eq!(images["calculators"], ["hilum_used_mass_from"]);
        assert_eq!(images["no-words"], ["hilum_mass_from", "hilum_used_mass_from", "hilum_batch_plan"]);
        assert_eq!(images["all"].len(), 5);
        assert_eq!(images["part-account"], ["hilum_used_mass_from"]);
    }
}
