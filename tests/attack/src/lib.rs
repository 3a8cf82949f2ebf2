//! Attacks: bytes in, and a panic when the library breaks a promise. tests/fuzz finds the bytes; what broke something
//! once, and seeds that reach far, are in `corpus/` and are replayed by the tests.
#![allow(
    clippy::expect_used,
    clippy::disallowed_methods,
    clippy::float_cmp,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::unwrap_used,
    clippy::missing_panics_doc,
    clippy::semicolon_if_nothing_returned,
    reason = "an attack stops at the first thing that is wrong"
)]

pub mod batch;
pub mod c_abi;
pub mod documents;
mod edits;
pub mod monitor;
mod numbers;
mod promises;
#[path = "../../tests/batch/support.rs"]
#[allow(dead_code, reason = "the batch tests use the rest")]
mod support;
pub mod text;
#[path = "../../tests/batch/valid.rs"]
mod valid;

/// An attack by its name.
pub type Attack = (&'static str, fn(&[u8]));

/// All of them.
pub const ALL: &[Attack] = &[
    ("text", text::attack),
    ("job", documents::job),
    ("run", documents::run),
    ("c_abi", c_abi::attack),
    ("batch", batch::attack),
    ("monitor", monitor::attack),
];
