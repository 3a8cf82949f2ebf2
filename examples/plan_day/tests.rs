//! The command line as people and programs meet it, over all demo jobs.

use std::ffi::OsString;
use std::io::{self, ErrorKind, Write};
use std::path::PathBuf;

use hilum_job::document::{Plan, Severity};
use textwrap::core::display_width;

use super::{DONE, STOP, run};
use crate::table::PAGE;

const DEMOS: [&str; 4] = ["dealer_day", "plant_week", "inoculant_on_top", "small_farm"];

fn demo(name: &str) -> String {
    format!("{}/jobs/{name}.json", env!("CARGO_MANIFEST_DIR"))
}

/// Exit code and what is printed.
fn printed(words: &[&str]) -> Result<(u8, String), String> {
    let mut to = Vec::new();
    let code = run(words.iter().map(OsString::from), &mut to)?;
    Ok((code, String::from_utf8(to).unwrap()))
}

/// A job of a name and a text in a file of its own.
fn job(name: &str, text: &[u8]) -> String {
    let path: PathBuf = std::env::temp_dir().join(format!("hilum-{}-{name}.json", std::process::id()));
    std::fs::write(&path, text).unwrap();
    path.to_str().unwrap().to_owned()
}

#[test]
fn every_demo_gives_a_sheet_that_fits_a_page() {
    for name in DEMOS {
        let (code, sheet) = printed(&[&demo(name)]).unwrap();
        assert_eq!(code, DONE, "{name}");
        for line in sheet.lines() {
            assert!(display_width(line) <= PAGE, "{name}: {line}");
            assert_eq!(line.trim_end(), line, "{name}");
        }
        assert!(!sheet.replace('\n', "").contains(char::is_control), "{name}");
        for section in ["See to this first", "How much seed", "What to open", "Cautions"] {
            assert!(sheet.contains(section), "{name} lacks {section}");
        }
    }
}

#[test]
fn no_demo_has_a_finding_to_stop_at() {
    for name in DEMOS {
        let (code, json) = printed(&["--json", "--strict", &demo(name)]).unwrap();
        let plan: Plan = serde_json::from_str(&json).unwrap();
        let stops: Vec<_> = plan.findings.iter().filter(|f| f.severity == Severity::Stop).collect();
        assert!(stops.is_empty(), "{name}: {stops:?}");
        assert_eq!(code, DONE, "{name}");
    }
}

#[test]
fn the_built_in_demo_is_the_dealers_day() {
    assert_eq!(printed(&[]).unwrap(), printed(&[&demo("dealer_day")]).unwrap());
}

#[test]
fn sections_without_content_are_left_out() {
    let (_, sheet) = printed(&[&demo("small_farm")]).unwrap();
    for section in ["What to pour", "How fast to pump", "When", "How much is alive", "What it costs"] {
        assert!(!sheet.contains(section), "{section}:\n{sheet}");
    }
    // On the sheet of a small farm: what to weigh out, 240 g for each 100 kg of 4200 kg, by hand 10.08 kg.
    assert!(sheet.contains("10.08 kg"), "{sheet}");
    assert!(sheet.lines().count() < 50, "{sheet}");
}

#[test]
fn strict_exits_3_only_at_a_stop() {
    let text = std::fs::read_to_string(demo("dealer_day")).unwrap().replace("44 degF", "30 degF");
    let frozen = job("frozen", text.as_bytes());
    let (code, sheet) = printed(&[&frozen, "--strict"]).unwrap();
    assert_eq!(code, STOP);
    assert!(sheet.contains("STOP"), "{sheet}");
    assert_eq!(printed(&[&frozen]).unwrap().0, DONE);
    std::fs::remove_file(frozen).unwrap();
}

#[test]
fn bad_input_gives_one_message_that_names_the_field() {
    let text = std::fs::read_to_string(demo("small_farm")).unwrap();
    for (name, good, bad, field) in [
        ("unit", "4200 kg", "4200 lbs per kg", "/orders/0/amount"),
        ("field", "\"lot\"", "\"lott\"", "/orders/0/lott"),
        ("dimension", "172 g/1000 seeds", "172 mL/1000 seeds", "/orders/0/size"),
    ] {
        let path = job(name, text.replace(good, bad).as_bytes());
        let message = printed(&[&path]).unwrap_err();
        std::fs::remove_file(&path).unwrap();
        assert!(message.lines().next().unwrap().contains(field), "{message}");
        assert!(message.chars().count() <= 1500, "{message}");
    }
}

#[test]
fn a_file_that_cannot_be_read_is_named() {
    let message = printed(&["no/such/job.json"]).unwrap_err();
    assert!(message.contains("no/such/job.json"), "{message}");
    let path = job("latin", b"{\"title\": \"Bj\xf8rn\"}");
    let message = printed(&[&path]).unwrap_err();
    std::fs::remove_file(&path).unwrap();
    assert!(message.contains("offset 13"), "{message}");
}

/// A reader that has gone away, or a full disk.
struct Broken(ErrorKind);

impl Write for Broken {
    fn write(&mut self, _: &[u8]) -> io::Result<usize> {
        Err(self.0.into())
    }
    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

#[test]
fn a_reader_that_stops_listening_is_no_error_and_a_full_disk_is() {
    assert_eq!(run([], &mut Broken(ErrorKind::BrokenPipe)), Ok(DONE));
    assert!(run([], &mut Broken(ErrorKind::StorageFull)).unwrap_err().contains("cannot be printed"));
}
