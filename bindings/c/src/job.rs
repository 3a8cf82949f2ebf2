//! Whole jobs as documents.

use core::ffi::c_char;
use core::mem::MaybeUninit;

use hilum_job::Problems;
use std::string::String;

use crate::call::{self, Answer, Out};
use crate::status::Status;

/// Writes a document, or says how long it is.
///
/// # Safety
/// `out` is NULL or has room for `capacity` bytes.
unsafe fn answer(
    text: Answer<&str>,
    document: fn(&str) -> Result<String, Problems>,
    out: *mut c_char,
    capacity: usize,
    length: Out<'_, usize>,
) -> i32 {
    let Some(length) = length else { return Status::NULL.number() };
    let (status, written) = match text.map(document) {
        Err(status) => return status.number(),
        Ok(Ok(plan)) => (Status::OK, plan),
        Ok(Err(problems)) => (Status::REFUSED, problems.to_json()),
    };
    // SAFETY: by the caller.
    let room: &mut [MaybeUninit<u8>] = match unsafe { call::room(out.cast(), capacity) } {
        Ok(room) => room,
        Err(status) => return status.number(),
    };
    length.write(written.len());
    match room.get_mut(..written.len()) {
        Some(room) => {
            for (to, from) in room.iter_mut().zip(written.bytes()) {
                to.write(from);
            }
            status.number()
        }
        None => Status::ROOM_TOO_SMALL.number(),
    }
}

/// Plans a job: a JSON document of length bytes in, the plan as a JSON document out, the very bytes that every other
/// language of this library writes. The documents are described in the project's documentation.
///
/// out has room for capacity bytes; how many were written, or (HILUM_ROOM_TOO_SMALL) are needed, goes to out_length. No
/// NUL is written. Ask with a capacity of 0 first, or give a generous one. With HILUM_REFUSED the problems are
/// written instead of the plan: a JSON list of {"pointer": where, "value": what stands there, "message": what is
/// wrong and what would be right}.
///
/// Errors: NULL; HILUM_NOT_UTF8; HILUM_ROOM_TOO_SMALL; HILUM_REFUSED. Memory is allocated while it runs, and given back.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_plan_json(
    job: *const c_char,
    length: usize,
    out: *mut c_char,
    capacity: usize,
    out_length: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { answer(call::text(job, length), hilum_job::plan_json, out, capacity, out_length) }
}

/// Accounts for a run: a JSON document of length bytes in, the account as a JSON document out. As hilum_plan_json in
/// all else.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_account_json(
    run: *const c_char,
    length: usize,
    out: *mut c_char,
    capacity: usize,
    out_length: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { answer(call::text(run, length), hilum_job::account_json, out, capacity, out_length) }
}
