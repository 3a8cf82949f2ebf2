//! Entry `hilum/job`: whole jobs as JSON text.

use alloc::boxed::Box;
use alloc::string::String;

use hilum_job::Problems;

use crate::decimal::decimal;

/// A text for the script, until it releases it.
#[repr(C)]
pub struct Told {
    start: *const u8,
    length: usize,
    text: String,
}

/// Memory for a text of the script's.
#[unsafe(no_mangle)]
#[must_use]
pub extern "C" fn room(length: usize) -> *mut u8 {
    Box::leak(alloc::vec![0_u8; length].into_boxed_slice()).as_mut_ptr()
}

/// The plan of a job, an object: the very bytes that Rust writes; or a list of what is wrong with the job.
///
/// # Safety
/// There are `length` bytes of UTF-8 in what [`room`] gave for so many.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn plan(at: *mut u8, length: usize) -> *mut Told {
    // SAFETY: the script keeps to it.
    told(hilum_job::plan_json_with(&unsafe { text(at, length) }, decimal))
}

/// The account of a run, an object: the very bytes that Rust writes; or a list of what is wrong with the run.
///
/// # Safety
/// As [`plan`].
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn account(at: *mut u8, length: usize) -> *mut Told {
    // SAFETY: the script keeps to it.
    told(hilum_job::account_json_with(&unsafe { text(at, length) }, decimal))
}

/// Frees a text that was read.
///
/// # Safety
/// [`plan`] or [`account`] gave it, and nothing reads it any more.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn release(told: *mut Told) {
    // SAFETY: the script keeps to it.
    drop(unsafe { Box::from_raw(told) });
}

unsafe fn text(at: *mut u8, length: usize) -> String {
    // SAFETY: the caller says so.
    unsafe {
        let bytes = Box::from_raw(core::ptr::slice_from_raw_parts_mut(at, length));
        String::from_utf8_unchecked(bytes.into_vec())
    }
}

/// A document is an object and problems are a list, so the first character tells which of them this is.
fn told(document: Result<String, Problems>) -> *mut Told {
    let text = document.unwrap_or_else(|problems| problems.to_json());
    Box::into_raw(Box::new(Told { start: text.as_ptr(), length: text.len(), text }))
}
