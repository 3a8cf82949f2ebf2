//! Every public function of the core is called by the C library, or there is a reason why not.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use crate::header;

/// What C does without.
const WITHOUT: &[(&str, &str)] = &[
    ("math::", "the door to libm is the core's own; C has its own"),
    ("text::closest", "the names of a document's fields; for units hilum_text_suggestion asks it"),
    (
        "text::read",
        "texts are read by Written::read, which also takes units and bushels; the result is the same",
    ),
    ("error::share", "hilum_share is checked by Share::new"),
    ("Share::number", "the field of hilum_share"),
    ("Temperature::celsius", "the field of hilum_temperature"),
    ("Compound::read_with", "Compound::read does the same with core's own reader of decimals"),
    ("Written::read_with", "Written::read does the same with core's own reader of decimals"),
    ("Error::tell", "hilum_status_message says what a status means, without numbers"),
    ("Survival::needs_temperature", "the field has_reference of hilum_survival"),
    ("Plan::looks", "a measure for those who change the planner"),
    ("Entry::", "an entry is found by its number; Row encodes and decodes the same"),
];

/// `SeedSize::count_in` and `mix::pour`, out of the list of the core's API.
fn functions() -> BTreeSet<String> {
    let api = fs::read_to_string(header::root().join("../../crates/hilum/api.txt")).unwrap();
    let items = api.lines().filter_map(|line| line.split_once(": "));
    let functions = items.filter(|(_, item)| {
        item.split_once("pub ")
            .is_some_and(|(_, item)| item.starts_with("fn ") || item.starts_with("const fn "))
    });
    functions
        .filter_map(|(path, _)| {
            let mut parts = path.rsplit("::");
            let (name, home) = (parts.next()?, parts.next()?);
            (!home.ends_with('!') && !name.ends_with('!')).then(|| format!("{home}::{name}"))
        })
        .collect()
}

fn source(folder: &Path, into: &mut String) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            source(&path, into);
        } else {
            into.push_str(&fs::read_to_string(&path).unwrap());
        }
    }
}

fn is_word(text: &str, word: &str) -> bool {
    let mark = |c: char| c.is_alphanumeric() || c == '_';
    text.match_indices(word).any(|(at, _)| {
        !text[..at].chars().next_back().is_some_and(mark)
            && !text[at + word.len()..].chars().next().is_some_and(mark)
    })
}

/// Whether the source names the type (or the module) and calls the function.
fn is_called(source: &str, function: &str) -> bool {
    let (home, name) = function.split_once("::").unwrap();
    let called = [
        format!(".{name}("),
        format!("::{name}("),
        format!(" {name}("),
        format!("({name}("),
        format!("::{name}}}"),
    ];
    // A plan is never named, only called.
    let named = home.starts_with(char::is_lowercase)
        || is_word(source, home)
        || source.contains(&format!("{}.{name}(", home.to_lowercase()));
    named && called.iter().any(|call| source.contains(call)) || source.contains(&format!("{home}::{name}"))
}

#[test]
fn every_function_of_the_core_is_called_or_has_a_reason_not_to_be() {
    let mut text = String::new();
    source(&header::root().join("src"), &mut text);
    let functions = functions();
    assert!(functions.len() > 120, "{}", functions.len());
    let without = |name: &str| {
        WITHOUT.iter().any(|(of, _)| name == *of || (of.ends_with("::") && name.starts_with(of)))
    };
    let missing: Vec<_> = functions.iter().filter(|name| !is_called(&text, name) && !without(name)).collect();
    assert!(missing.is_empty(), "{missing:#?}");
    for (of, _) in WITHOUT {
        assert!(functions.iter().any(|name| name.starts_with(of)), "the core has no {of}");
    }
}
