//! Is a panic left in a linked image?

use std::fs;

use crate::command::{self, cargo, inspector, target_folder};
use crate::step::Session;
use crate::steps::api::listed;
use crate::steps::lengths::sources;
use crate::steps::targets::{CORTEX_M, installed};

const PACKAGE: &str = "hilum-no-panic";
const CALLS: &str = "tests/no_panic/src";

pub(super) fn no_panic(session: &mut Session) -> Result<(), String> {
    let uncalled = uncalled(session)?;
    let outcome = if uncalled.is_empty() {
        Ok(())
    } else {
        Err(format!("{CALLS} does not name {}.", uncalled.join(", ")))
    };
    session.check(format_args!("{CALLS} names every public function of hilum"), outcome);

    installed(CORTEX_M)?;
    // A check that cannot fail is none: a panic put there on purpose must be seen.
    let planted = panics(session, &["--features", "panics"])?;
    let outcome =
        if planted.is_empty() { Err("The panic put there on purpose was not seen.".into()) } else { Ok(()) };
    session.check("a panic put there on purpose is seen", outcome);

    let left = panics(session, &[])?;
    let outcome = if left.is_empty() { Ok(()) } else { Err(explained(session, &left)) };
    session.check("no panic is left in the image", outcome);
    Ok(())
}

/// The symbols that can panic in the image. The linker that comes with Rust drops what nothing calls.
fn panics(session: &Session, features: &[&str]) -> Result<Vec<String>, String> {
    command::run(cargo(&session.root, &build("build")).args(features))?;
    let image = target_folder()?.join(CORTEX_M).join("release").join(PACKAGE);
    let symbols = command::output(&mut inspector(&session.root, &["panics", &image.to_string_lossy()]))?;
    Ok(symbols.lines().filter(|line| !line.is_empty()).map(str::to_owned).collect())
}

fn build(how: &'static str) -> [&'static str; 6] {
    [how, "--release", "--package", PACKAGE, "--target", CORTEX_M]
}

/// Lets the linker print the chain of calls that keeps each panic.
fn explained(session: &Session, symbols: &[String]) -> String {
    let mut link = cargo(&session.root, &build("rustc"));
    link.args(["--", "-W", "linker-messages"]);
    for symbol in symbols {
        link.args(["-C", &format!("link-arg=--why-live={symbol}")]);
    }
    let chains = match command::run(&mut link) {
        Ok(()) => "The chains of calls are printed above.".to_owned(),
        Err(why) => format!("The chains of calls could not be printed: {why}"),
    };
    format!("The image can panic: it holds {}. {chains}", symbols.join(", "))
}

/// The public functions of the core that the image leaves out without saying so.
fn uncalled(session: &Session) -> Result<Vec<String>, String> {
    let api = listed(session, "hilum")?;
    let mut files = Vec::new();
    sources(&session.path(CALLS), &mut files)?;
    let mut calls = String::new();
    for file in files {
        calls +=
            &fs::read_to_string(&file).map_err(|why| format!("{} cannot be read: {why}.", file.display()))?;
    }
    Ok(unnamed(&functions(&api), &calls))
}

/// `SeedSize::count_in` and `math::exp10`, out of the list of the public API.
fn functions(api: &str) -> Vec<String> {
    let lines = api.lines().filter_map(|line| line.split_once(": "));
    let functions = lines.filter(|(_, item)| {
        // Behind `impl<…>` where the type has arguments.
        item.split_once("pub ")
            .is_some_and(|(_, item)| item.starts_with("fn ") || item.starts_with("const fn "))
    });
    let mut names: Vec<String> = functions
        .filter_map(|(path, _)| {
            let mut parts = path.rsplit("::");
            let name = parts.next()?;
            // A macro's own functions belong to the types that it makes.
            parts.next().filter(|home| !home.ends_with('!')).map(|home| format!("{home}::{name}"))
        })
        .filter(|name| !name.ends_with('!'))
        .collect();
    names.dedup();
    names
}

fn unnamed(functions: &[String], source: &str) -> Vec<String> {
    let source = without_arguments(source);
    let is_named = |name: &str| {
        source.match_indices(name).any(|(at, _)| {
            let after = source.get(at + name.len()..).and_then(|rest| rest.chars().next());
            !after.is_some_and(|mark| mark.is_alphanumeric() || mark == '_')
        })
    };
    functions.iter().filter(|name| !is_named(name)).cloned().collect()
}

/// `PerMass::<Liquid>::new` as `PerMass::new`.
fn without_arguments(source: &str) -> String {
    let mut parts = source.split("::<");
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |text, part| text + part.split_once('>').map_or(part, |(_, rest)| rest))
}

#[cfg(test)]
mod tests {
    use super::*;

    const API: &str = "\
hilum::checked!: pub fn new(value: $quantity) -> Result<Self, $crate::Error>
hilum::math: pub mod math
hilum::math::exp10: pub fn exp10(x: f64) -> f64
hilum::rate::PerMass::active: impl PerMass<Dry> pub fn active(self, content: Share) -> PerMass<Active>
hilum::rate::PerMass::active: impl PerMass<Liquid> pub fn active(self, content: ActiveContent) -> PerMass<Active>
hilum::seed::Share::number: #[cfg(any())] pub const fn number(self) -> f64
hilum::seed::Share::WHOLE: pub const WHOLE: Self
hilum::unit::Unit::factor: pub factor: f64
";

    #[test]
    fn functions_of_the_list() {
        assert_eq!(functions(API), ["math::exp10", "PerMass::active", "Share::number"]);
    }

    #[test]
    fn a_function_is_named_whole() {
        let names = functions(API);
        let source = "one(math::exp10); two(PerMass::<Liquid>::active); one(Share::numbers);";
        assert_eq!(unnamed(&names, source), ["Share::number"]);
        assert_eq!(unnamed(&names, "one(exp10)"), names);
    }
}
