#![doc = include_str!("../README.md")]
#![no_std]
#![forbid(unsafe_code)]

// uom's `system!` and `quantity!` call each other by name.
#[macro_use]
extern crate uom;

#[macro_use]
mod checked;
#[macro_use]
pub mod unit;
pub mod account;
pub mod batch;
pub mod ddi;
pub mod error;
pub mod limit;
pub mod many;
pub mod math;
pub mod mix;
pub mod pack;
pub mod quantity;
pub mod rate;
pub mod seed;
mod slack;
pub mod text;
pub mod treater;
pub mod viability;

pub use error::{Argument, Error};
