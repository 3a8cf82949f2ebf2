//! Many at once: one call for a whole list. The core looks at the list and gives the results.

pub mod convert;
pub mod dose;

use core::mem::MaybeUninit;

use hilum::many::{self, Bad};
use hilum::text::Compound;

use crate::call::{Answer, Out, list, room};
use crate::quantity::{Listed, Quantity, finite, scale};
use crate::status::Status;

/// Writes what a list comes to, or none of it: the first bad element is told.
fn give_each<T, C: From<T>, E: Into<Status>>(
    results: Result<impl Iterator<Item = T>, Bad<E>>,
    room: &mut [MaybeUninit<C>],
    bad: Out<'_, usize>,
) -> Answer<()> {
    match results {
        Ok(results) => {
            for (to, result) in room.iter_mut().zip(results) {
                to.write(result.into());
            }
            Ok(())
        }
        Err(first) => {
            if let Some(bad) = bad {
                bad.write(first.index);
            }
            Err(first.why.into())
        }
    }
}

type Both<'a, A, C> = (&'a [A], &'a mut [MaybeUninit<C>]);

/// A list and the room for its results, as C gives them.
struct Lists<A, C> {
    items: *const A,
    out: *mut C,
    n: usize,
}

impl<A, C> Lists<A, C> {
    /// # Safety
    /// As for [`list`] and [`room`], for `n` elements each.
    unsafe fn all<'a>(self) -> Answer<Both<'a, A, C>> {
        // SAFETY: by the caller.
        unsafe { Ok((list(self.items, self.n)?, room(self.out, self.n)?)) }
    }
}

/// # Safety
/// As for [`Lists::all`].
unsafe fn each<'a, A: 'a, C: From<T> + 'a, T, I: Iterator<Item = T>>(
    lists: Lists<A, C>,
    bad: Out<'_, usize>,
    results: impl FnOnce(&'a [A]) -> Result<I, Bad>,
) -> i32 {
    // SAFETY: by the caller.
    let answer = unsafe { lists.all() }.and_then(|(items, room)| give_each(results(items), room, bad));
    number_of(answer)
}

/// # Safety
/// As for [`Lists::all`], and for `n` elements of the second list.
unsafe fn each_pair<'a, A: 'a, B: 'a, C: From<T> + 'a, T, I: Iterator<Item = T>>(
    lists: Lists<A, C>,
    second: *const B,
    bad: Out<'_, usize>,
    results: impl FnOnce(&'a [A], &'a [B]) -> Result<I, Bad>,
) -> i32 {
    let n = lists.n;
    // SAFETY: by the caller.
    let answer = unsafe { lists.all() }.and_then(|(items, room)| {
        // SAFETY: by the caller.
        give_each(results(items, unsafe { list(second, n) }?), room, bad)
    });
    number_of(answer)
}

fn number_of(answer: Answer<()>) -> i32 {
    answer.map_or_else(Status::number, |()| Status::OK.number())
}

/// # Safety
/// As for [`Lists::all`].
unsafe fn each_of<Q: Listed>(lists: Lists<f64, Q>, unit: Answer<Compound>, bad: Out<'_, usize>) -> i32 {
    // SAFETY: by the caller.
    number_of(unit.and_then(|unit| Ok((unit, unsafe { lists.all() }?))).and_then(|(unit, (values, room))| {
        // A unit of something else is the fault of the first element: a list without elements has none.
        let scale = scale(unit, Q::POWERS);
        let look = |value| Q::checked(scale?.base(finite(value)?)).map(|_| ());
        let number = |value| value;
        match scale {
            Ok(scale) => {
                let base = |value| Q::trusted(scale.base(value));
                give_each(many::each(values, number, look, base), room, bad)
            }
            Err(_) => give_each(many::each(values, number, look, Q::trusted), room, bad),
        }
    }))
}

/// # Safety
/// As for [`Lists::all`].
unsafe fn each_in<Q: Quantity>(lists: Lists<Q, f64>, unit: Answer<Compound>, bad: Out<'_, usize>) -> i32 {
    // SAFETY: by the caller.
    number_of(unit.and_then(|unit| Ok((unit, unsafe { lists.all() }?))).and_then(
        |(unit, (quantities, room))| {
            let scale = scale(unit, Q::POWERS);
            let look = |base| {
                let base = Q::checked(base)?.base();
                finite(scale?.number(base)).map(|_| ())
            };
            let number = |base| scale.map_or(base, |scale| scale.number(base));
            give_each(many::each(quantities, Q::base, look, number), room, bad)
        },
    ))
}
