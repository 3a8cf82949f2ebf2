//! Batch plans: worked cases, invariants on random jobs, and the optimum against a brute force.
mod support;
mod worked;
