//! Checks that span the crates.

pub use hilum_check as check;
