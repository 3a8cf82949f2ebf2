//! Values of the core inside structures of C that only this library reads.
//!
//! A mark in front keeps a structure that nobody made (all zero, or whatever lay there) from being taken
//! for a value. It is no proof against one whose bytes were written on purpose.

use core::mem::MaybeUninit;

use crate::call::Answer;
use crate::status::Status;

const MARK: u64 = 0x6d75_6c69_685f_0001;

/// Puts a value into words.
pub(crate) const fn store<T: Copy, const N: usize>(value: T) -> [MaybeUninit<u64>; N] {
    let mut words = [MaybeUninit::uninit(); N];
    fill(&mut words, value);
    words
}

/// Puts a value into the words that a caller has room for.
pub(crate) const fn fill<T, const N: usize>(words: &mut [MaybeUninit<u64>; N], value: T) {
    const { assert!(size_of::<T>() + size_of::<u64>() <= N * size_of::<u64>(), "the words hold the value") };
    const { assert!(align_of::<T>() <= align_of::<u64>(), "the words are aligned for the value") };
    let first = words.as_mut_ptr();
    // SAFETY: word 0 is the mark's, the others hold the value, aligned, as asserted.
    unsafe {
        first.write(MaybeUninit::new(MARK));
        first.add(1).cast::<T>().write(value);
    }
}

/// The value in words.
pub(crate) fn open<T, const N: usize>(words: &[MaybeUninit<u64>; N]) -> Answer<&T> {
    const { assert!(size_of::<T>() + size_of::<u64>() <= N * size_of::<u64>(), "the words hold the value") };
    let first = words.as_ptr();
    // SAFETY: a word of the caller's memory; any bits are a number.
    let mark = unsafe { first.cast::<u64>().read() };
    // SAFETY: behind the mark lies a `T`: `fill` alone writes the mark.
    if mark == MARK { Ok(unsafe { &*first.add(1).cast::<T>() }) } else { Err(Status::NOT_MADE) }
}

/// The value in words, to change.
pub(crate) fn open_mut<T, const N: usize>(words: &mut [MaybeUninit<u64>; N]) -> Answer<&mut T> {
    open::<T, N>(words)?;
    // SAFETY: as in `open`, and nothing else refers to the words.
    Ok(unsafe { &mut *words.as_mut_ptr().add(1).cast::<T>() })
}
