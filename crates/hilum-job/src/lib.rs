//! Whole seed treating jobs as documents.
#![no_std]
#![forbid(unsafe_code)]

extern crate alloc;

pub mod document;
mod json;
pub mod limits;
mod model;
mod problem;
mod read;

pub use problem::{Problem, Problems};
