//! What std would bring: an allocator, and the end of a panic.

use core::panic::PanicInfo;

#[cfg(any(feature = "job", feature = "shed"))]
#[global_allocator]
pub(crate) static MEMORY: crate::arena::Arena = crate::arena::Arena::new();

/// Nothing panics; if it did, the script would see an error.
#[panic_handler]
fn panic(_: &PanicInfo<'_>) -> ! {
    core::arch::wasm32::unreachable()
}
