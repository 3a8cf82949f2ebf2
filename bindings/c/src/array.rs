//! Many at once: one call for a whole list.

pub mod convert;
pub mod dose;

use core::mem::MaybeUninit;

use hilum::text::Compound;

use crate::call::{Answer, Out, list, room};
use crate::quantity::{Quantity, base_of, finite, number_in};
use crate::status::Status;

/// Calculates each element, or none: the first bad one is told.
fn all<T>(
    calculate: impl Fn(usize) -> Answer<T>,
    room: &mut [MaybeUninit<T>],
    bad: Out<'_, usize>,
) -> Answer<()> {
    for index in 0..room.len() {
        if let Err(status) = calculate(index) {
            if let Some(bad) = bad {
                bad.write(index);
            }
            return Err(status);
        }
    }
    for (index, to) in room.iter_mut().enumerate() {
        to.write(calculate(index)?);
    }
    Ok(())
}

fn number_of(answer: Answer<()>) -> i32 {
    answer.map_or_else(Status::number, |()| Status::OK.number())
}

/// # Safety
/// As for [`list`] and [`room`], for `n` elements each.
unsafe fn each<A: Copy, T>(
    items: *const A,
    out: *mut T,
    n: usize,
    bad: Out<'_, usize>,
    calculate: impl Fn(A) -> Answer<T>,
) -> i32 {
    number_of((|| {
        // SAFETY: by the caller.
        let (items, room) = unsafe { (list(items, n)?, room(out, n)?) };
        let item = |index: usize| items.get(index).copied().ok_or(Status::NO_SUCH_INDEX);
        all(|index| calculate(item(index)?), room, bad)
    })())
}

/// # Safety
/// As for [`each`].
unsafe fn each_pair<A: Copy, B: Copy, T>(
    first: *const A,
    second: *const B,
    out: *mut T,
    n: usize,
    bad: Out<'_, usize>,
    calculate: impl Fn(A, B) -> Answer<T>,
) -> i32 {
    number_of((|| {
        // SAFETY: by the caller.
        let (first, second, room) = unsafe { (list(first, n)?, list(second, n)?, room(out, n)?) };
        let pair = |index: usize| Some((*first.get(index)?, *second.get(index)?));
        all(
            |index| {
                let (first, second) = pair(index).ok_or(Status::NO_SUCH_INDEX)?;
                calculate(first, second)
            },
            room,
            bad,
        )
    })())
}

/// # Safety
/// As for [`each`].
unsafe fn each_of<Q: Quantity>(
    values: *const f64,
    unit: Answer<Compound>,
    out: *mut Q,
    n: usize,
    bad: Out<'_, usize>,
) -> i32 {
    match unit {
        // SAFETY: by the caller.
        Ok(unit) => unsafe {
            each(values, out, n, bad, |value| Q::checked(base_of(finite(value)?, unit, Q::POWERS)?))
        },
        Err(status) => status.number(),
    }
}

/// # Safety
/// As for [`each`].
unsafe fn each_in<Q: Quantity>(
    quantities: *const Q,
    unit: Answer<Compound>,
    out: *mut f64,
    n: usize,
    bad: Out<'_, usize>,
) -> i32 {
    match unit {
        // SAFETY: by the caller.
        Ok(unit) => unsafe {
            each(quantities, out, n, bad, |quantity: Q| {
                number_in(Q::checked(quantity.base())?.base(), unit, Q::POWERS)
            })
        },
        Err(status) => status.number(),
    }
}
