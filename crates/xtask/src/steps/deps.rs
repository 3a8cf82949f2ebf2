//! What do the published crates depend on?

use std::collections::BTreeSet;

use crate::command::{self, cargo};
use crate::step::Session;

const CORE: &[&str] = &[
    "hilum",
    "uom",
    "num-traits",
    "typenum",
    "libm",
    "thiserror",
    "thiserror-impl",
    "proc-macro2",
    "quote",
    "syn",
    "unicode-ident",
];

/// Besides the core and what it depends on.
const JOB: &[&str] = &[
    "hilum-job",
    "serde",
    "serde_core",
    "serde_derive",
    "serde_json",
    "hifijson",
    "itoa",
    "memchr",
    "zmij",
    "chrono",
    "schemars",
    "schemars_derive",
    "serde_derive_internals",
    "dyn-clone",
    "ref-cast",
    "ref-cast-impl",
];

/// Besides those of hilum-job: an allocator; the check values are read by the description of the package, which is not shipped.
const WASM: &[&str] = &["hilum-wasm", "hilum-check"];

pub(super) fn deps(session: &mut Session) -> Result<(), String> {
    let job = [CORE, JOB].concat();
    let c = [&job, &["hilum-c"][..]].concat();
    let wasm = [&job, WASM].concat();
    for (package, allowed) in [("hilum", CORE), ("hilum-job", &job), ("hilum-c", &c), ("hilum-wasm", &wasm)] {
        let tree = ["tree", "--package", package, "--all-features", "--edges", "normal", "--target", "all"];
        let tree = command::output(cargo(&session.root, &tree).args(["--prefix", "none", "--format", "{p}"]));
        let outcome = tree.and_then(|tree| match strangers(&tree, allowed) {
            names if names.is_empty() => Ok(()),
            names => Err(format!(
                "{package} may not depend on {}; leave it out, or allow it in crates/xtask/src/steps/deps.rs.",
                names.into_iter().collect::<Vec<_>>().join(", ")
            )),
        });
        session.check(format_args!("dependencies of {package}"), outcome);
    }
    Ok(())
}

/// The packages of a `cargo tree` that are not allowed.
fn strangers<'a>(tree: &'a str, allowed: &[&str]) -> BTreeSet<&'a str> {
    tree.lines()
        .filter_map(|line| line.split_whitespace().next())
        .filter(|name| !allowed.contains(name))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn strangers_are_named_once() {
        let tree = "hilum v0.1.0 (/somewhere/hilum)\nlibm v0.2.16\nrand v0.9.0\nuom v0.38.0\nlibm v0.2.16 (*)\nrand v0.9.0 (*)\n";
        assert_eq!(strangers(tree, CORE).into_iter().collect::<Vec<_>>(), ["rand"]);
        assert!(strangers("hilum v0.1.0\nthiserror-impl v2.0.0 (proc-macro)\n", CORE).is_empty());
    }
}
