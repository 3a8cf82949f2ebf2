//! The command line as people and programs meet it.

use std::ffi::OsString;
use std::io::{self, ErrorKind, Write};

use hilum_job::document::{Account, Code, Job, Severity, Verdict};
use textwrap::core::display_width;

use super::{DEMO, DONE, STOP, run};
use crate::table::PAGE;

/// Exit code and what is printed.
fn printed(words: &[&str]) -> Result<(u8, String), String> {
    let mut to = Vec::new();
    let code = run(words.iter().map(OsString::from), &mut to)?;
    Ok((code, String::from_utf8(to).unwrap()))
}

/// What is printed of a run in a file of its own.
fn of_text(name: &str, text: &str, options: &[&str]) -> Result<(u8, String), String> {
    let path = std::env::temp_dir().join(format!("hilum-run-{}-{name}.json", std::process::id()));
    std::fs::write(&path, text).unwrap();
    let words: Vec<&str> = [path.to_str().unwrap()].into_iter().chain(options.iter().copied()).collect();
    let outcome = printed(&words);
    std::fs::remove_file(&path).unwrap();
    outcome
}

fn demo() -> Account {
    serde_json::from_str(&printed(&["--json"]).unwrap().1).unwrap()
}

#[test]
fn the_demo_gives_a_sheet_that_fits_a_page() {
    let (code, sheet) = printed(&[]).unwrap();
    assert_eq!(code, DONE);
    for line in sheet.lines() {
        assert!(display_width(line) <= PAGE, "{line}");
        assert_eq!(line.trim_end(), line);
    }
    assert!(!sheet.replace('\n', "").contains(char::is_control));
    for section in ["See to this first", "What each tank gave", "For the record", "Cautions"] {
        assert!(sheet.contains(section), "{section}");
    }
    assert!(!sheet.contains("What went on dry"), "{sheet}");
}

// By hand, 4.5 fl oz/cwt being asked for: Q-311 gave 7.9 gal less 50 fl oz, 961.2 fl oz on 213.8 cwt.
#[test]
fn the_demo_shows_every_verdict() {
    let account = demo();
    let verdicts: Vec<Verdict> =
        account.orders.iter().flat_map(|order| &order.tanks).map(|tank| tank.verdict).collect();
    for verdict in [Verdict::Low, Verdict::OnTarget, Verdict::High, Verdict::CannotTell] {
        assert!(verdicts.contains(&verdict), "{verdict:?}");
    }
    let coat = &account.orders[0].tanks[1];
    assert_eq!(coat.tank, "Coat");
    assert!((coat.achieved.value - 961.2 / 213.8).abs() < 1e-9, "{}", coat.achieved.value);
    assert_eq!(coat.verdict, Verdict::OnTarget);
}

#[test]
fn the_demo_closes_the_dealers_day() {
    let job = Job::from_json(include_str!("../jobs/dealer_day.json")).unwrap();
    let account = demo();
    assert_eq!(account.title, job.title);
    let orders: Vec<&str> = account.orders.iter().map(|order| order.order.as_str()).collect();
    assert_eq!(orders, job.orders.iter().map(|order| order.order.as_str()).collect::<Vec<_>>());
}

#[test]
fn strict_exits_3_only_at_a_stop() {
    let stops = |account: &Account| -> Vec<Code> {
        let stops = account.findings.iter().filter(|finding| finding.severity == Severity::Stop);
        stops.map(|finding| finding.code).collect()
    };
    assert_eq!(stops(&demo()), [Code::AppliedAboveMax]);
    assert_eq!(printed(&["--strict"]).unwrap().0, STOP);
    let allowed = DEMO.replace("\"max_rate\": \"1.8 fl oz/cwt\"", "\"max_rate\": \"2 fl oz/cwt\"");
    let (code, sheet) = of_text("allowed", &allowed, &["--strict"]).unwrap();
    assert_eq!(code, DONE, "{sheet}");
}

#[test]
fn bad_input_gives_one_message_that_names_the_field() {
    for (name, good, bad, field) in [
        ("job", "\"size\": \"2815 seeds/lb\"", "\"size\": \"2815 seeds\"", "/job/orders/0/size"),
        ("reading", "\"start\": \"8.8 gal\"", "\"start\": \"8.8 lb/gal\"", "/orders/0/tanks/0/start"),
        ("field", "\"operator\"", "\"operater\"", "/orders/0/operater"),
    ] {
        let message = of_text(name, &DEMO.replacen(good, bad, 1), &[]).unwrap_err();
        assert!(message.lines().next().unwrap().contains(field), "{message}");
        assert!(message.chars().count() <= 1500, "{message}");
    }
    assert!(printed(&["no/such/run.json"]).unwrap_err().contains("no/such/run.json"));
}

#[test]
fn help_names_this_program() {
    let (code, help) = printed(&["--help"]).unwrap();
    assert_eq!(code, DONE);
    assert!(help.starts_with("close_day") && !help.contains("plan_day"), "{help}");
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
