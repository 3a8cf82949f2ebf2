//! What every function shares: pointers that may be NULL, lists, choices by number, working memory.
//!
//! All `unsafe` of this crate is here, in `number.rs` and in `opaque.rs`. What a C caller must hold to, the conventions
//! at the top of `hilum.h` say: a pointer that is not NULL points to as many values as stated, which nothing else
//! writes meanwhile.

use core::ffi::c_char;
use core::mem::MaybeUninit;

use crate::status::Status;

pub(crate) type Answer<T> = Result<T, Status>;

/// Where a function writes its result.
pub(crate) type Out<'a, T> = Option<&'a mut MaybeUninit<T>>;

/// Writes what a calculation gives and returns 0, or returns why there is nothing to write.
pub(crate) fn give<T>(out: Out<'_, T>, work: impl FnOnce() -> Answer<T>) -> i32 {
    let Some(out) = out else { return Status::NULL.number() };
    match work() {
        Ok(result) => {
            out.write(result);
            Status::OK.number()
        }
        Err(status) => status.number(),
    }
}

/// As [`give`], for two results.
pub(crate) fn give_both<A, B>(
    first: Out<'_, A>,
    second: Out<'_, B>,
    work: impl FnOnce() -> Answer<(A, B)>,
) -> i32 {
    let (Some(first), Some(second)) = (first, second) else { return Status::NULL.number() };
    match work() {
        Ok((a, b)) => {
            first.write(a);
            second.write(b);
            Status::OK.number()
        }
        Err(status) => status.number(),
    }
}

/// What a pointer that must not be NULL points to.
pub(crate) fn need<T: Copy>(pointer: Option<&T>) -> Answer<T> {
    pointer.copied().ok_or(Status::NULL)
}

/// Bytes of `n` values, if so many can be in memory.
fn fits<T>(n: usize) -> Answer<()> {
    let bytes = n.checked_mul(size_of::<T>()).ok_or(Status::TOO_LONG)?;
    isize::try_from(bytes).map(|_| ()).map_err(|_| Status::TOO_LONG)
}

/// A list of `n` values; NULL will do when there are none.
///
/// # Safety
/// `items` is NULL or points to `n` values, which nothing writes while the list is in use.
pub(crate) unsafe fn list<'a, T>(items: *const T, n: usize) -> Answer<&'a [T]> {
    fits::<T>(n)?;
    match (n, items.is_null()) {
        (0, _) => Ok(&[]),
        (_, true) => Err(Status::NULL),
        // SAFETY: `n` values that fit, by the caller.
        _ => Ok(unsafe { core::slice::from_raw_parts(items, n) }),
    }
}

/// Room for `n` values; NULL will do when there are none.
///
/// # Safety
/// `items` is NULL or points to room for `n` values, which nothing else uses meanwhile.
pub(crate) unsafe fn room<'a, T>(items: *mut T, n: usize) -> Answer<&'a mut [MaybeUninit<T>]> {
    fits::<T>(n)?;
    match (n, items.is_null()) {
        (0, _) => Ok(&mut []),
        (_, true) => Err(Status::NULL),
        // SAFETY: room for `n` values that fit, by the caller; `MaybeUninit` asks nothing of what is there.
        _ => Ok(unsafe { core::slice::from_raw_parts_mut(items.cast(), n) }),
    }
}

/// A text of `length` bytes, which need not end in NUL.
///
/// # Safety
/// As for [`list`].
pub(crate) unsafe fn text<'a>(text: *const c_char, length: usize) -> Answer<&'a str> {
    // SAFETY: by the caller.
    let bytes: &[u8] = unsafe { list(text.cast(), length) }?;
    core::str::from_utf8(bytes).map_err(|_| Status::NOT_UTF8)
}

/// Working memory for one item of a list. Its contents mean nothing before and after a call.
#[repr(C)]
#[derive(Clone, Copy)]
pub struct hilum_work {
    pub(crate) opaque: [MaybeUninit<u64>; 3],
}

/// Words in one item of working memory.
const WORDS: usize = 3;

/// Words that `n` values of a type take.
fn words<T>(n: usize) -> Answer<usize> {
    const { assert!(align_of::<T>() <= align_of::<u64>(), "words are aligned for it") };
    Ok(n.checked_mul(size_of::<T>()).ok_or(Status::TOO_LONG)?.div_ceil(size_of::<u64>()))
}

/// How much working memory lists will take.
#[derive(Clone, Copy, Default)]
pub(crate) struct Needed {
    words: usize,
}

impl Needed {
    pub(crate) fn add<T>(&mut self, n: usize) -> Answer<()> {
        self.words = self.words.checked_add(words::<T>(n)?).ok_or(Status::TOO_LONG)?;
        Ok(())
    }

    /// Items of working memory.
    pub(crate) const fn items(self) -> usize {
        self.words.div_ceil(WORDS)
    }
}

/// Cuts working memory into lists of what the core takes.
pub(crate) struct Work<'a> {
    left: &'a mut [MaybeUninit<u64>],
}

impl<'a> Work<'a> {
    /// # Safety
    /// As for [`room`].
    pub(crate) unsafe fn new(work: *mut hilum_work, n: usize) -> Answer<Self> {
        // SAFETY: by the caller.
        let items = unsafe { room(work, n) }?;
        let words = items.as_mut_ptr().cast::<MaybeUninit<u64>>();
        // SAFETY: each item is so many words, which need not be initialised.
        Ok(Self { left: unsafe { core::slice::from_raw_parts_mut(words, n * WORDS) } })
    }

    /// A part of the memory, for `n` values of a type.
    pub(crate) fn part<T>(&mut self, n: usize) -> Answer<Self> {
        let left = core::mem::take(&mut self.left);
        let (mine, rest) = left.split_at_mut_checked(words::<T>(n)?).ok_or(Status::ROOM_TOO_SMALL)?;
        self.left = rest;
        Ok(Self { left: mine })
    }

    /// A list of `n` values, as `make` gives them.
    pub(crate) fn list<T: Copy>(
        &mut self,
        n: usize,
        mut make: impl FnMut(usize) -> Answer<T>,
    ) -> Answer<&'a mut [T]> {
        let first = self.part::<T>(n)?.left.as_mut_ptr().cast::<T>();
        for index in 0..n {
            let value = make(index)?;
            // SAFETY: `index` lies below `n`, and the part has room for `n` values, aligned.
            unsafe { first.add(index).write(value) };
        }
        // SAFETY: all `n` were written.
        Ok(unsafe { core::slice::from_raw_parts_mut(first, n) })
    }

    /// The items of a C list, as the core takes them.
    pub(crate) fn made<C: Copy, T: Copy>(
        &mut self,
        items: &[C],
        make: impl Fn(C) -> Answer<T>,
    ) -> Answer<&'a [T]> {
        let mut items = items.iter();
        let list = self
            .list(items.len(), |_| items.next().ok_or(Status::NO_SUCH_INDEX).and_then(|item| make(*item)))?;
        Ok(list)
    }
}

/// A field that is 1 or 0.
pub(crate) const fn yes_or_no(number: i32) -> Answer<bool> {
    match number {
        0 => Ok(false),
        1 => Ok(true),
        _ => Err(Status::NO_SUCH_CHOICE),
    }
}
