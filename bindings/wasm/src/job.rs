//! Entry `hilum/job`: whole jobs as JSON text.

use alloc::boxed::Box;
use alloc::string::String;
use alloc::vec;

use hilum_job::Problems;

use crate::decimal::decimal;

/// A text for the script, until its next call.
#[repr(C)]
pub struct Told {
    start: *const u8,
    length: usize,
}

/// Memory for a text of the script's, which has read what it was told before.
#[unsafe(no_mangle)]
#[must_use]
pub extern "C" fn room(length: usize) -> *mut u8 {
    crate::begin();
    vec![0; length].leak().as_mut_ptr()
}

/// The plan of a job, an object: the very bytes that Rust writes; or a list of what is wrong with the job.
///
/// # Safety
/// There are `length` bytes of UTF-8 in what [`room`] gave for so many.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn plan(at: *const u8, length: usize) -> *const Told {
    // SAFETY: the script keeps to it.
    told(hilum_job::plan_json_with(unsafe { text(at, length) }, decimal))
}

/// The account of a run, an object: the very bytes that Rust writes; or a list of what is wrong with the run.
///
/// # Safety
/// As [`plan`].
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn account(at: *const u8, length: usize) -> *const Told {
    // SAFETY: the script keeps to it.
    told(hilum_job::account_json_with(unsafe { text(at, length) }, decimal))
}

unsafe fn text<'a>(at: *const u8, length: usize) -> &'a str {
    // SAFETY: the caller says so.
    unsafe { core::str::from_utf8_unchecked(core::slice::from_raw_parts(at, length)) }
}

/// A document is an object and problems are a list, so the first character tells which of them this is.
fn told(document: Result<String, Problems>) -> *const Told {
    let text = document.unwrap_or_else(|problems| problems.to_json()).leak();
    Box::leak(Box::new(Told { start: text.as_ptr(), length: text.len() }))
}
