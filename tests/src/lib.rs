//! Checks that span the crates.

pub use hilum_check as check;

#[cfg(doctest)]
#[doc = include_str!("../../README.md")]
struct Readme;
