//! A job in, a plan out.

mod active;
mod batch;
mod cost;
mod dose;
mod draft;
mod order;
mod out;
mod pack;
mod recipe;
mod set;
mod treatment;

use alloc::string::String;
use alloc::vec::Vec;
