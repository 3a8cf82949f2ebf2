//! Puts the header together: each source file is one section, in the order in which a person reads.

use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};

use hilum::ddi::{self, Carried, Controlled, Entry, Held};
use hilum_c::{argument, status};

const CONVENTIONS: &str = include_str!("conventions.txt");

/// Title and source files.
const SECTIONS: &[(&str, &[&str])] = &[
    ("What a function returned, and which version it is", &["status"]),
    ("Working memory", &["call"]),
    ("Units", &["unit"]),
    ("Amounts", &["quantity/amount", "quantity/temperature"]),
    ("Seed size and sowing", &["quantity/sown"]),
    ("Contents", &["quantity/content"]),
    ("Flows", &["quantity/flow"]),
    ("How much seed is it?", &["seed"]),
    ("What does the label mean? Liquid product", &["dose", "dose/liquid"]),
    ("What does the label mean? Product by mass", &["dose/dry"]),
    ("What does the label mean? Active ingredient", &["dose/active", "active"]),
    ("What does the label mean? Living cells", &["dose/cells"]),
    ("Any quantity as text", &["text"]),
    ("What do I open?", &["pack"]),
    ("What goes in the tank?", &["mix"]),
    ("How long is it good? Batches", &["batch/input", "batch/output", "batch/plan", "batch/clock"]),
    ("How fast do I pump?", &["treater"]),
    ("What did I really apply?", &["account/used", "account/achieved"]),
    ("Is the rate right while we run?", &["monitor"]),
    ("Are they still alive? Cells on the seed", &["viability/titre"]),
    ("Are they still alive? Storage and planting", &["viability/survival", "viability/keeping"]),
    ("Are they still alive? Counts of a laboratory", &["viability/fit"]),
    ("Is it allowed?", &["limit"]),
    ("What does the bus say? ISO 11783-11", &["ddi", "ddi/amount", "ddi/dose"]),
    ("Many at once", &["array/convert", "array/dose"]),
    ("Rows of a table", &["rows/text", "rows/seed", "rows/dose", "rows/pack", "rows/season", "rows/living"]),
];

/// Only where the library was built with the feature `job`.
const JOB: (&str, &[&str]) = ("Whole jobs as documents (define HILUM_JOB if the library has them)", &["job"]);

pub(crate) fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// The header as committed.
pub(crate) fn committed() -> String {
    fs::read_to_string(root().join("include/hilum.h")).unwrap()
}

/// The whole header, as the sources say.
pub(crate) fn header() -> String {
    let mut text = format!(
        "{CONVENTIONS}#ifndef HILUM_H_INCLUDED\n#define HILUM_H_INCLUDED\n\n#include <stdbool.h>\n#include <stddef.h>\n#include <stdint.h>\n\n"
    );
    versions(&mut text);
    text.push_str("#ifdef __cplusplus\nextern \"C\" {\n#endif\n\n");
    for (title, files) in SECTIONS {
        section(&mut text, title, files);
    }
    text.push_str("#ifdef HILUM_JOB\n\n");
    section(&mut text, JOB.0, JOB.1);
    text.push_str("#endif /* HILUM_JOB */\n\n#ifdef __cplusplus\n} /* extern \"C\" */\n#endif\n\n#endif /* HILUM_H_INCLUDED */\n");
    text
}

fn section(text: &mut String, title: &str, files: &[&str]) {
    let _ = writeln!(text, "/* ==== {title} {} */\n", "=".repeat(100_usize.saturating_sub(title.len())));
    for file in files {
        match *file {
            "status" => statuses(text),
            "unit" => units(text),
            "ddi" => entries(text),
            _ => {}
        }
        text.push_str(&piece(&root().join("src").join(file).with_extension("rs")));
        text.push('\n');
    }
}

fn versions(text: &mut String) {
    let version = env!("CARGO_PKG_VERSION");
    let number = hilum_c::status::hilum_version_number();
    let _ = writeln!(text, "/* The version of this header; hilum_version() is that of the library. */");
    let _ = writeln!(text, "#define HILUM_VERSION \"{version}\"");
    let _ = writeln!(text, "#define HILUM_VERSION_MAJOR {}", env!("CARGO_PKG_VERSION_MAJOR"));
    let _ = writeln!(text, "#define HILUM_VERSION_MINOR {}", env!("CARGO_PKG_VERSION_MINOR"));
    let _ = writeln!(text, "#define HILUM_VERSION_PATCH {}", env!("CARGO_PKG_VERSION_PATCH"));
    let _ = writeln!(text, "#define HILUM_VERSION_NUMBER {number}\n");
}

fn statuses(text: &mut String) {
    text.push_str(
        "/* The kind of a status: what went wrong. */\n#define HILUM_KIND(status) ((status) % 1000)\n",
    );
    text.push_str("/* Which number it speaks of; 0 when none in particular. */\n#define HILUM_OF(status) ((status) / 1000)\n\n");
    for (number, name, words) in status::KINDS {
        let _ = writeln!(text, "#define HILUM_{name} {number} /* {} */", words.to_str().unwrap());
    }
    text.push('\n');
    for (number, name, words) in argument::VALUES.iter().chain(argument::COUNTS).chain(argument::FIELDS) {
        let _ = writeln!(text, "#define HILUM_OF_{name} {number} /* {} */", words.to_str().unwrap());
    }
    text.push('\n');
}

/// `HILUM_FL_OZ` for `fl oz`.
pub(crate) fn unit_name(symbol: &str) -> String {
    match symbol {
        "" => "HILUM_ONE".into(),
        "%" => "HILUM_PERCENT".into(),
        _ => format!("HILUM_{}", symbol.replace('µ', "U").replace(' ', "_").to_uppercase()),
    }
}

fn units(text: &mut String) {
    for unit in hilum::unit::all() {
        let name = unit_name(unit.symbol);
        let words = unit.powers.name().unwrap();
        let of_one = |base: &&hilum::unit::Unit| {
            base.powers == unit.powers && base.factor.to_bits() == 1.0_f64.to_bits()
        };
        let base = hilum::unit::all().find(of_one).unwrap().symbol;
        let _ = writeln!(text, "#define {name} {} /* {words}: {:?} {base} */", unit.number, unit.factor);
    }
    text.push('\n');
}

/// Names and numbers of the data dictionary entries.
pub(crate) fn ddis() -> Vec<(String, u16)> {
    fn one<Q: Carried>(name: &str, entry: Entry<Q>) -> Vec<(String, u16)> {
        vec![(name.into(), entry.number())]
    }
    fn controlled<Q: Carried>(name: &str, of: &Controlled<Q>) -> Vec<(String, u16)> {
        let five = [("SETPOINT", of.setpoint), ("ACTUAL", of.actual), ("DEFAULT", of.default)];
        let five = five.into_iter().chain([("MINIMUM", of.minimum), ("MAXIMUM", of.maximum)]);
        five.map(|(what, entry)| (format!("{name}_{what}"), entry.number())).collect()
    }
    fn held<Q: Carried>(name: &str, of: &Held<Q>) -> Vec<(String, u16)> {
        let three = [("SETPOINT", of.setpoint), ("ACTUAL", of.actual), ("MAXIMUM", of.maximum)];
        three.map(|(what, entry)| (format!("{name}_{what}"), entry.number())).into()
    }
    [
        controlled("VOLUME_PER_AREA", &ddi::VOLUME_PER_AREA),
        controlled("MASS_PER_AREA", &ddi::MASS_PER_AREA),
        controlled("SEEDS_PER_AREA", &ddi::SEEDS_PER_AREA),
        controlled("MASS_PER_MASS", &ddi::MASS_PER_MASS),
        controlled("VOLUME_PER_MASS", &ddi::VOLUME_PER_MASS),
        controlled("VOLUME_FLOW", &ddi::VOLUME_FLOW),
        controlled("MASS_FLOW", &ddi::MASS_FLOW),
        held("VOLUME_HELD", &ddi::VOLUME_HELD),
        held("MASS_HELD", &ddi::MASS_HELD),
        held("SEEDS_HELD", &ddi::SEEDS_HELD),
        one("TOTAL_VOLUME", ddi::TOTAL_VOLUME),
        one("TOTAL_MASS", ddi::TOTAL_MASS),
        one("TOTAL_SEEDS", ddi::TOTAL_SEEDS),
        one("TOTAL_AREA", ddi::TOTAL_AREA),
        one("DENSITY", ddi::DENSITY),
        one("THOUSAND_SEED_MASS", ddi::THOUSAND_SEED_MASS),
        one("THOUSAND_SEED_VOLUME", ddi::THOUSAND_SEED_VOLUME),
        one("SETPOINT_SHARE", ddi::SETPOINT_SHARE),
        one("AMBIENT_TEMPERATURE", ddi::AMBIENT_TEMPERATURE),
        one("ACTUAL_SHARE", ddi::ACTUAL_SHARE),
        controlled("TEMPERATURE", &ddi::TEMPERATURE),
    ]
    .concat()
}

fn entries(text: &mut String) {
    for (name, number) in ddis() {
        let words = hilum::ddi::find(number).unwrap().powers.name().unwrap();
        let _ = writeln!(text, "#define HILUM_DDI_{name} {number} /* {words} */");
    }
    text.push('\n');
}

/// One source file as cbindgen writes it.
fn piece(file: &Path) -> String {
    // Without its submodules, which are sections of their own.
    let source = fs::read_to_string(file).unwrap();
    let source: Vec<&str> = source.lines().filter(|line| !line.contains("pub mod ")).collect();
    let source = source.join(
        "
",
    );
    let alone = Path::new(env!("CARGO_TARGET_TMPDIR")).join("section.rs");
    fs::write(&alone, &source).unwrap();
    let words = source.split_whitespace().zip(source.split_whitespace().skip(1));
    let structs = words.filter(|(word, name)| *word == "struct" && name.starts_with("hilum_"));
    let config = cbindgen::Config {
        language: cbindgen::Language::C,
        no_includes: true,
        style: cbindgen::Style::Type,
        documentation_style: cbindgen::DocumentationStyle::Cxx,
        usize_is_size_t: true,
        tab_width: 4,
        line_length: 110,
        function: cbindgen::FunctionConfig { sort_by: None, ..Default::default() },
        export: cbindgen::ExportConfig {
            include: structs.map(|(_, name)| name.to_owned()).collect(),
            ..Default::default()
        },
        ..Default::default()
    };
    let mut text = Vec::new();
    cbindgen::Builder::new().with_config(config).with_src(&alone).generate().unwrap().write(&mut text);
    String::from_utf8(text).unwrap()
}
