#![doc = include_str!("../README.md")]
#![no_std]
#![forbid(unsafe_code)]

extern crate alloc;

mod account;
#[cfg(test)]
mod dice;
mod digits;
pub mod document;
mod finding;
mod instant;
mod json;
pub mod limits;
mod list;
mod model;
mod places;
mod plan;
mod problem;
mod read;
#[cfg(feature = "schema")]
pub mod schema;

pub use account::{account, account_json, account_json_with};
pub use document::{Account, Job, Plan, Run};
pub use plan::{plan, plan_json, plan_json_with};
pub use problem::{Problem, Problems};

/// The version of this library.
pub const VERSION: &str = env!("CARGO_PKG_VERSION");
