//! The C library: every calculation of the core behind a plain C function.
//!
//! Nothing is calculated here. Read `include/hilum.h`, which is made from these files, and README.md.
#![no_std]
#![expect(
    clippy::redundant_closure,
    clippy::redundant_closure_for_method_calls,
    reason = "a formula names the numbers that it takes"
)]
#![expect(clippy::missing_safety_doc, reason = "the conventions at the top of the header say it once")]

#[cfg(not(target_os = "none"))]
extern crate std;

pub mod account;
pub mod active;
pub mod argument;
pub mod array;
pub mod batch;
pub mod call;
pub mod ddi;
pub mod dose;
#[cfg(feature = "job")]
pub mod job;
pub mod limit;
pub mod mix;
pub mod monitor;
mod number;
mod opaque;
pub mod pack;
pub mod quantity;
pub mod rows;
pub mod seed;
pub mod status;
pub mod text;
pub mod treater;
pub mod unit;
pub mod viability;

#[cfg(all(target_os = "none", feature = "panic-handler"))]
#[panic_handler]
fn panic(_: &core::panic::PanicInfo) -> ! {
    loop {
        core::hint::spin_loop();
    }
}
