//! The steps, in the order in which CI runs them: what fails soonest first.
#![expect(clippy::unnecessary_wraps, reason = "every step has the type of `Step::run`")]

mod api;
mod code;
mod controller;
mod deps;
mod installed;
mod lengths;
mod no_panic;
mod readme;
pub(crate) mod soak;
mod spark;
mod targets;
mod wasm;
mod web;

use crate::step::Step;

/// What `cargo xtask test` runs.
pub(crate) const TEST: &[Step] = &[
    Step { name: "lengths", about: "no source file is longer than 500 lines", run: lengths::lengths },
    Step {
        name: "words",
        about: "the commands that README.md tells are the commands that CI runs",
        run: readme::words,
    },
    Step { name: "fmt", about: "the code is formatted as rustfmt does it", run: code::fmt },
    Step { name: "clippy", about: "no lint warns, in any crate, target or feature", run: code::clippy },
    Step {
        name: "tests",
        about: "unit tests, integration tests and doctests of every crate",
        run: code::tests,
    },
    Step {
        name: "docs",
        about: "the documentation of the published crates builds without a warning",
        run: code::docs,
    },
    Step {
        name: "targets",
        about: "each published crate compiles for each target it promises",
        run: targets::targets,
    },
    Step {
        name: "no-panic",
        about: "no panic is left in an image that calls all of the core, linked for a Cortex-M",
        run: no_panic::no_panic,
    },
    Step {
        name: "deps",
        about: "the published crates depend on nothing but what is allowed",
        run: deps::deps,
    },
    Step {
        name: "installed",
        about: "a program in C builds against an installed copy: plain flags, pkg-config, find_package",
        run: installed::installed,
    },
    Step {
        name: "arrays",
        about: "the functions for rows give numpy's bits and the check values, from Python",
        run: spark::arrays,
    },
    Step {
        name: "controller",
        about: "the firmware in C runs on emulated processors, with every check value, within its budget",
        run: controller::controller,
    },
    Step { name: "api", about: "the public API is the committed list, crates/*/api.txt", run: api::api },
    Step {
        name: "package",
        about: "the published crates build from their packages alone",
        run: code::package,
    },
    Step {
        name: "readme",
        about: "the examples that README.md runs exit 0 and print something",
        run: readme::readme,
    },
    Step {
        name: "wasm",
        about: "the npm package is built, is small enough, and computes in Node what Rust computes",
        run: wasm::wasm,
    },
    Step {
        name: "web",
        about: "the npm package and the dealer's page do in Chromium what they promise",
        run: web::web,
    },
];

/// What `cargo xtask soak` runs.
pub(crate) const SOAK: &[Step] = &[
    Step {
        name: "oracle",
        about: "2000 random jobs, and malformed ones, against the independent oracle in tests/oracle",
        run: soak::oracle,
    },
    Step {
        name: "fuzz",
        about: "a minute of every fuzz target in tests/fuzz (HILUM_FUZZ_SECONDS for longer)",
        run: soak::fuzz,
    },
    Step {
        name: "rivals",
        about: "units, doses, survival and fits against general-purpose libraries, in tests/rivals",
        run: soak::rivals,
    },
    Step {
        name: "parity",
        about: "one table of check values and bits over Rust, C, Node, Chromium, Cortex-M and a big-endian machine",
        run: soak::parity,
    },
    Step {
        name: "supply",
        about: "licences, sources, the oldest compiler and dependencies, bills of materials",
        run: soak::supply,
    },
    Step {
        name: "mutants",
        about: "cargo-mutants over the core in eight shards, and 300 of hilum-job by a seed (HILUM_SHARD=0..7 or job, HILUM_SEED): a day",
        run: soak::mutants,
    },
    Step {
        name: "coverage",
        about: "the lines of hilum and hilum-job that tests run, by cargo-llvm-cov, under target/coverage",
        run: soak::coverage,
    },
    Step {
        name: "miri-c",
        about: "the wrappers of the C library under Miri (rustup component add miri --toolchain nightly)",
        run: soak::miri_c,
    },
    Step {
        name: "spark",
        about: "five million orders on a cluster of processes, an executor killed (HILUM_SPARK_ROWS, HILUM_SPARK_KILL_AT)",
        run: spark::spark,
    },
];
