//! Checks that span the crates.
