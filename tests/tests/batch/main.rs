//! Batch plans: worked cases, invariants on random jobs, and the optimum against a brute force.
#![allow(clippy::float_cmp, clippy::too_many_lines)]
mod brute;
mod optimum;
mod rules;
mod speed;
mod support;
mod valid;
mod worked;
