//! What the script leaves in memory, and finds there: numbers, then what each input is, then text.

use hilum::text::TextError;

/// Where an input lies at the border.
#[repr(C)]
#[derive(Clone, Copy)]
pub(crate) struct Place {
    /// The first byte of its text, and how many there are; none for a plain number.
    text: u32,
    length: u32,
    /// Its first number, and how many lie between those of two rows (0: all rows have the same);
    /// [`u32::MAX`] when the text says it all.
    first: u32,
    step: u32,
}

/// What lies at the border.
pub(crate) struct Border<'a> {
    pub(crate) numbers: &'a mut [f64],
    pub(crate) places: &'a [Place],
    text: &'a str,
}

impl<'a> Border<'a> {
    /// # Safety
    /// From `base`, which is a multiple of 8, on there are so many doubles, places and bytes of UTF-8 that
    /// nothing else uses until the call is over.
    pub(crate) unsafe fn at(base: usize, numbers: usize, places: usize, text: usize) -> Self {
        let start = core::ptr::with_exposed_provenance_mut::<f64>(base);
        // SAFETY: the caller says so.
        unsafe {
            let after = start.add(numbers).cast::<Place>();
            let bytes = core::slice::from_raw_parts(after.add(places).cast::<u8>(), text);
            Self {
                numbers: core::slice::from_raw_parts_mut(start, numbers),
                places: core::slice::from_raw_parts(after, places),
                text: core::str::from_utf8_unchecked(bytes),
            }
        }
    }

    pub(crate) fn text(&self, place: Place) -> Result<&'a str, TextError> {
        let range = |at: u32| usize::try_from(at).ok();
        let end = place.text.saturating_add(place.length);
        let (start, end) = range(place.text).zip(range(end)).ok_or(TextError::Empty)?;
        self.text.get(start..end).ok_or(TextError::Empty)
    }
}

impl Place {
    /// Text at the beginning.
    pub(crate) fn first(length: usize) -> Self {
        Self { text: 0, length: u32::try_from(length).unwrap_or(0), first: u32::MAX, step: 0 }
    }

    /// Whether there are numbers beside the text.
    pub(crate) fn has_numbers(self) -> bool {
        self.first != u32::MAX
    }

    /// The place of a row's number.
    pub(crate) fn of(self, row: usize) -> Option<usize> {
        let step = usize::try_from(self.step).ok()?;
        row.checked_mul(step)?.checked_add(usize::try_from(self.first).ok()?)
    }
}
