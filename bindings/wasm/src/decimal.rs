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
    short(digits).or_else(|| Some(unsafe { number(digits.as_ptr(), digits.len()) }))
}

/// Up to 15 digits and a power of ten up to 1e15 are doubles, and so the quotient is the nearest one. A call of the script takes
/// longer than all else of a short text.
#[cfg(target_arch = "wasm32")]
fn short(digits: &str) -> Option<f64> {
    let (mut whole, mut tenths) = (0.0, 0.0);
    for byte in digits.bytes() {
        match byte {
            b'0'..=b'9' => {
                whole = 10.0 * whole + f64::from(byte - b'0');
                tenths *= 10.0;
            }
            b'.' => tenths = 1.0,
            _ => return None,
        }
    }
    let below = if tenths > 0.0 { tenths } else { 1.0 };
    (digits.len() < 16).then_some(whole / below)
}

#[cfg(not(target_arch = "wasm32"))]
pub(crate) fn decimal(digits: &str) -> Option<f64> {
    digits.parse().ok()
}
