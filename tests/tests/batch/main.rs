//! Batch plans: worked cases, invariants on random jobs, and the optimum against a brute force.
#![allow(
    clippy::float_cmp,
    clippy::too_many_lines,
    clippy::indexing_slicing,
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::as_conversions,
    reason = "a test stops at the first surprise"
)]
mod brute;
mod optimum;
mod rules;
mod speed;
mod support;
mod valid;
mod worked;
