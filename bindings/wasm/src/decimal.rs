//! Decimals are read by the script: core's reader is 13 kB of the package.

#[cfg(target_arch = "wasm32")]
#[link(wasm_import_module = "script")]
unsafe extern "C" {
    /// The nearest double to digits in the form that the core checked (ECMA-262, StringToNumber).
    fn number(digits: *const u8, length: usize) -> f64;
}

#[cfg(target_arch = "wasm32")]
pub(crate) fn decimal(digits: &str) -> Option<f64> {
    // SAFETY: the script reads these bytes and no others.
    Some(unsafe { number(digits.as_ptr(), digits.len()) })
}

#[cfg(not(target_arch = "wasm32"))]
pub(crate) fn decimal(digits: &str) -> Option<f64> {
    digits.parse().ok()
}
