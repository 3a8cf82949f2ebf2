//! An image for a Cortex-M that calls the core, to see that no panic is left in it.
//!
//! `cargo xtask no-panic` links it and reads its symbols. It is never run on a controller; on the
//! host it only runs the same calls.
#![cfg_attr(target_os = "none", no_std, no_main)]

mod calls;

#[cfg(not(target_os = "none"))]
fn main() {
    calls::all();
}

#[cfg(target_os = "none")]
mod image {
    /// Where the linker starts to look for what is needed.
    #[unsafe(no_mangle)]
    extern "C" fn _start() -> ! {
        crate::calls::all();
        halt()
    }

    /// Kept by the linker only when something can panic.
    #[panic_handler]
    fn panic(_: &core::panic::PanicInfo) -> ! {
        halt()
    }

    fn halt() -> ! {
        loop {
            core::hint::spin_loop();
        }
    }
}
