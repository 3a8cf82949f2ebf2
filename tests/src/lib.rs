//! Checks that span the crates.

#[cfg(doctest)]
#[doc = include_str!("../../README.md")]
struct Readme;
