//! Rows of a table: each on its own, with a status of its own, columns in and columns out.

pub mod dose;
pub mod living;
pub mod pack;
pub mod season;
pub mod seed;
pub mod text;

use core::mem::MaybeUninit;

use crate::call::{Answer, list, room};
use crate::status::Status;

/// Where the results of rows go, and their statuses.
struct Room<'a, T> {
    out: &'a mut [MaybeUninit<T>],
    codes: &'a mut [MaybeUninit<i32>],
}

impl<T> Room<'_, T> {
    /// # Safety
    /// As for [`room`], for `n` values each.
    unsafe fn new(out: *mut T, codes: *mut i32, n: usize) -> Answer<Self> {
        // SAFETY: by the caller.
        unsafe { Ok(Self { out: room(out, n)?, codes: room(codes, n)? }) }
    }

    fn fill(self, rows: impl Iterator<Item = Answer<T>>) {
        for ((out, code), row) in self.out.iter_mut().zip(self.codes).zip(rows) {
            code.write(match row {
                Ok(result) => {
                    out.write(result);
                    Status::OK.number()
                }
                Err(status) => {
                    // Not what was there before: a table shows it.
                    *out = MaybeUninit::zeroed();
                    status.number()
                }
            });
        }
    }
}

/// 0, or why no row was looked at.
fn looked_at(answer: Answer<()>) -> i32 {
    answer.map_or_else(Status::number, |()| Status::OK.number())
}

/// A column that need not be there.
///
/// # Safety
/// As for [`list`].
unsafe fn perhaps<'a, T>(items: *const T, n: usize) -> Answer<Option<&'a [T]>> {
    // SAFETY: by the caller.
    if items.is_null() { Ok(None) } else { unsafe { list(items, n) }.map(Some) }
}

/// # Safety
/// As for [`list`] and [`room`], for `n` values each.
unsafe fn singles<A: Copy, T>(
    column: *const A,
    out: *mut T,
    codes: *mut i32,
    n: usize,
    calculate: impl Fn(A) -> Answer<T>,
) -> i32 {
    looked_at((|| {
        // SAFETY: by the caller.
        let (column, room) = unsafe { (list(column, n)?, Room::new(out, codes, n)?) };
        room.fill(column.iter().map(|value| calculate(*value)));
        Ok(())
    })())
}

/// # Safety
/// As for [`singles`].
unsafe fn pairs<A: Copy, B: Copy, T>(
    first: *const A,
    second: *const B,
    out: *mut T,
    codes: *mut i32,
    n: usize,
    calculate: impl Fn(A, B) -> Answer<T>,
) -> i32 {
    looked_at((|| {
        // SAFETY: by the caller.
        let (first, second, room) = unsafe { (list(first, n)?, list(second, n)?, Room::new(out, codes, n)?) };
        room.fill(first.iter().zip(second).map(|(first, second)| calculate(*first, *second)));
        Ok(())
    })())
}

/// # Safety
/// As for [`singles`].
unsafe fn triples<A: Copy, B: Copy, C: Copy, T>(
    columns: (*const A, *const B, *const C),
    out: *mut T,
    codes: *mut i32,
    n: usize,
    calculate: impl Fn(A, B, C) -> Answer<T>,
) -> i32 {
    looked_at((|| {
        // SAFETY: by the caller.
        let (first, second, third, room) = unsafe {
            (list(columns.0, n)?, list(columns.1, n)?, list(columns.2, n)?, Room::new(out, codes, n)?)
        };
        let rows = first.iter().zip(second).zip(third);
        room.fill(rows.map(|((first, second), third)| calculate(*first, *second, *third)));
        Ok(())
    })())
}
