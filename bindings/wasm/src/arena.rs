//! Memory for one call of the script's: given out from front to back, and free again at the next call, all at once.
//!
//! A call lasts milliseconds and keeps nothing, so nothing is freed piece by piece. That is less than half an allocator, and where
//! freeing does nothing, the compiler leaves out all code that only frees: an eighth of `hilum/job`.

use core::alloc::{GlobalAlloc, Layout};
use core::arch::wasm32::{memory_grow, memory_size};
use core::cell::Cell;
use core::ptr;

/// Bytes of a page of wasm memory.
const PAGE: usize = 1 << 16;

pub(crate) struct Arena {
    /// Where the next piece may begin; 0 before the first call.
    next: Cell<usize>,
}

// SAFETY: the wasm has one thread.
unsafe impl Sync for Arena {}

impl Arena {
    pub(crate) const fn new() -> Self {
        Self { next: Cell::new(0) }
    }

    /// Frees whatever was given out.
    ///
    /// # Safety
    /// Nothing that was allocated is used any more.
    pub(crate) unsafe fn clear(&self) {
        self.next.set(0);
    }

    fn next(&self) -> usize {
        unsafe extern "C" {
            /// Where the linker's own data end.
            static __heap_base: u8;
        }
        self.next.get().max((&raw const __heap_base).addr())
    }

    /// Gives out what lies between two places, growing the memory when it ends before.
    fn take(&self, start: usize, size: usize) -> Option<*mut u8> {
        let end = start.checked_add(size)?;
        let missing = end.div_ceil(PAGE).saturating_sub(memory_size(0));
        if missing > 0 && memory_grow(0, missing) == usize::MAX {
            return None;
        }
        self.next.set(end);
        Some(ptr::with_exposed_provenance_mut(start))
    }
}

// SAFETY: pieces lie one behind the other, aligned, in memory that is there.
unsafe impl GlobalAlloc for Arena {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        let start = self.next().checked_next_multiple_of(layout.align());
        start.and_then(|start| self.take(start, layout.size())).unwrap_or(ptr::null_mut())
    }

    #[inline(always)]
    unsafe fn dealloc(&self, _: *mut u8, _: Layout) {}

    /// The last piece grows where it is.
    unsafe fn realloc(&self, piece: *mut u8, layout: Layout, size: usize) -> *mut u8 {
        if piece.addr().checked_add(layout.size()) == Some(self.next.get()) {
            return self.take(piece.addr(), size).unwrap_or(ptr::null_mut());
        }
        // SAFETY: the caller keeps to the alignment's conditions, and both pieces hold what is copied.
        unsafe {
            let new = self.alloc(Layout::from_size_align_unchecked(size, layout.align()));
            if !new.is_null() {
                ptr::copy_nonoverlapping(piece, new, layout.size().min(size));
            }
            new
        }
    }
}
