//! The check values of `tests/data`: one test per file, and what the files must hold together.

#![expect(clippy::expect_used, reason = "a test may stop at what is not there")]

use std::collections::{BTreeMap, BTreeSet};

use hilum_tests::check::{Case, Kind, Seen, TABLE, TOPICS, Verdict, run, sources, topics, vectors};

fn cases_of(topic: &str) -> Vec<Case> {
    let at = TOPICS.iter().position(|(name, _)| *name == topic).expect("a topic");
    topics().expect("files as their README says").swap_remove(at).cases
}

fn all_cases() -> Vec<Case> {
    TOPICS.iter().flat_map(|(topic, _)| cases_of(topic)).collect()
}

/// Runs a file and tells every case that failed, not the first alone.
fn check(topic: &str) {
    let cases = cases_of(topic);
    assert!(!cases.is_empty());
    let mut wrong = Vec::new();
    for case in cases {
        let id = case.id.clone();
        match run(case).map(|outcome| outcome.verdict) {
            Ok(Verdict::Within(_) | Verdict::Refused(_)) => {}
            Ok(Verdict::Wrong(why)) => wrong.push(format!("{id}: {why}")),
            Err(why) => wrong.push(why.to_string()),
        }
    }
    assert!(wrong.is_empty(), "{} of {topic}.json failed:\n{}", wrong.len(), wrong.join("\n"));
}

macro_rules! files {
    ($($topic:ident)+) => {
        $(#[test] fn $topic() { check(stringify!($topic)); })+

        #[test]
        fn every_file_has_its_test() {
            let tested: BTreeSet<_> = [$(stringify!($topic)),+].into();
            let embedded: BTreeSet<_> = TOPICS.iter().map(|(name, _)| *name).collect();
            assert_eq!(tested, embedded);
            let folder = std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/data")).expect("tests/data");
            let on_disk: BTreeSet<_> = folder
                .map(|entry| entry.expect("an entry").file_name().into_string().expect("a name"))
                .filter_map(|name| name.strip_suffix(".json").map(str::to_owned))
                .filter(|name| name != "sources")
                .collect();
            assert_eq!(on_disk, tested.iter().map(|name| (*name).to_owned()).collect());
        }
    };
}
files! { account active ddi limit mix pack rate seed sowing treater units viability }

#[test]
fn ids_are_unique() {
    let mut seen = BTreeSet::new();
    let twice: Vec<_> =
        all_cases().into_iter().map(|case| case.id).filter(|id| !seen.insert(id.clone())).collect();
    assert_eq!(twice, Vec::<String>::new());
}

#[test]
fn every_source_is_in_the_bibliography_and_used() {
    let sources = sources().expect("sources as their README says");
    let used: BTreeSet<_> = all_cases().into_iter().map(|case| case.source).collect();
    assert_eq!(used, sources.into_keys().collect());
}

// A source of our own arithmetic can carry neither a published nor a standard value; who quotes a source says where.
#[test]
fn what_is_published_or_standard_has_a_source_with_a_locator() {
    let sources = sources().expect("sources as their README says");
    for case in all_cases() {
        let source = &sources[&case.source];
        assert!(!source.title.is_empty() && !source.authors_or_body.is_empty(), "{}", case.source);
        if matches!(case.kind, Kind::Published | Kind::Standard) {
            assert_eq!(source.seen, Seen::Read, "{}", case.id);
            assert!(!source.place.is_empty(), "{}", case.source);
            assert!(!case.locator.is_empty(), "{}", case.id);
        }
    }
}

#[test]
fn what_was_worked_out_says_how() {
    let silent = all_cases().into_iter().filter(|case| {
        case.kind == Kind::Worked && case.expect.is_some() && case.how.as_deref().unwrap_or("").is_empty()
    });
    assert_eq!(silent.map(|case| case.id).collect::<Vec<_>>(), Vec::<String>::new());
}

// What we worked out ourselves, or what is true by algebra, is no evidence.
#[test]
fn every_function_has_outside_evidence_and_a_refusal() {
    let mut evidence: BTreeMap<_, (u32, u32)> =
        TABLE.iter().map(|function| (function.name.to_owned(), (0, 0))).collect();
    for case in all_cases() {
        let (held, refused) = evidence.get_mut(&case.function).expect("a function of the table");
        match case.kind {
            _ if case.error.is_some() => *refused += 1,
            Kind::Published | Kind::Standard | Kind::Practice => *held += 1,
            Kind::Worked | Kind::Identity => {}
        }
    }
    evidence.retain(|_, (held, refused)| *held == 0 || *refused == 0);
    assert_eq!(evidence, BTreeMap::new(), "functions without outside evidence or without a refusal");
}

#[test]
fn there_are_enough() {
    let cases = all_cases();
    let outside = cases.iter().filter(|case| matches!(case.kind, Kind::Published | Kind::Standard));
    let (outside, sources) = outside.fold((0, BTreeSet::new()), |(n, mut s), case| {
        (n + 1, {
            s.insert(&case.source);
            s
        })
    });
    assert!(cases.len() >= 200, "{} cases", cases.len());
    assert!(outside >= 80, "{outside} published or standard");
    assert!(sources.len() >= 20, "{} sources of published or standard values", sources.len());
}

/// `HILUM_WRITE_VECTORS=1` writes the file anew.
#[test]
fn the_vectors_are_those_of_the_cases() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/data/vectors.tsv");
    let now = vectors::text().expect("files as their README says");
    if std::env::var_os("HILUM_WRITE_VECTORS").is_some() {
        std::fs::write(path, &now).expect("tests/data/vectors.tsv written");
    }
    let kept = std::fs::read_to_string(path).expect("tests/data/vectors.tsv");
    for (now, kept) in now.lines().zip(kept.lines()) {
        assert_eq!(now, kept);
    }
    assert_eq!(now.lines().count(), kept.lines().count());
}
