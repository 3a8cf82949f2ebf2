//! Batch plans: worked cases, invariants on random jobs, and the optimum against a brute force.
#![allow(
    clippy::float_cmp,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test stops at the first thing that is wrong; whole numbers are compared as such"
)]
mod brute;
mod effort;
mod even;
mod moved;
mod optimum;
mod rules;
mod speed;
mod support;
mod toys;
mod valid;
mod worked;
