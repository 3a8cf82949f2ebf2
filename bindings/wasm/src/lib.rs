//! The calculations and the planner for JavaScript.
//!
//! No arithmetic is here: numbers and texts come in, the core calculates, numbers and texts go out. What is
//! refused goes out as numbers too (a code, which input, its value); the messages are composed in JavaScript.
#![cfg_attr(target_arch = "wasm32", no_std)]
// What JavaScript calls is shaped by its boundary: numbers one by one, values owned.
#![allow(
    clippy::many_single_char_names,
    clippy::trivially_copy_pass_by_ref,
    clippy::needless_pass_by_value,
    clippy::type_complexity,
    clippy::unnecessary_wraps,
    clippy::match_same_arms,
    clippy::inline_always,
    reason = "shaped by the boundary to JavaScript"
)]
#![cfg_attr(
    any(feature = "formulas", not(feature = "text")),
    allow(dead_code, unused_imports, reason = "each entry needs some of what all share")
)]

#[cfg(any(feature = "job", feature = "shed"))]
extern crate alloc;

#[cfg(all(target_arch = "wasm32", any(feature = "job", feature = "shed")))]
mod arena;
#[cfg(target_arch = "wasm32")]
mod bare;
#[cfg(any(feature = "text", feature = "job"))]
mod decimal;
#[cfg(any(feature = "text", feature = "numbers"))]
mod give;
#[cfg(feature = "job")]
pub mod job;
#[cfg(all(feature = "numbers", not(feature = "text")))]
pub mod numbers;
#[cfg(any(feature = "text", feature = "numbers", feature = "shed"))]
mod refusal;
#[cfg(feature = "shed")]
pub mod shed;
#[cfg(any(feature = "text", feature = "numbers"))]
mod slots;
#[cfg(any(feature = "text", feature = "numbers"))]
mod table;
#[cfg(any(feature = "text", feature = "numbers"))]
mod take;
#[cfg(feature = "text")]
pub mod text;

#[cfg(feature = "describe")]
pub use refusal::CODES;
#[cfg(feature = "describe")]
pub use table::{CALCULATORS, Calculator, Input};
#[cfg(feature = "describe")]
pub use take::Kind;
#[cfg(feature = "describe")]
pub use text::{TEXT_CODES, measures};

/// A call of the script's begins, and nothing of the one before is used any more.
#[cfg(any(feature = "job", feature = "shed"))]
fn begin() {
    // SAFETY: the script has read what it was told, and nothing is kept between calls.
    #[cfg(target_arch = "wasm32")]
    unsafe {
        bare::MEMORY.clear();
    }
}

/// What cannot come is no case to go on with: the script sees an error.
#[cfg(feature = "text")]
#[cold]
fn never() -> ! {
    #[cfg(target_arch = "wasm32")]
    core::arch::wasm32::unreachable();
    #[cfg(not(target_arch = "wasm32"))]
    std::process::abort();
}
#[cfg(any(feature = "text", feature = "numbers"))]
mod value;
