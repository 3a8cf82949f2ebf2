//! What the script leaves in memory, and finds there: what each input is, then text.

use hilum::text::TextError;

/// Where an input lies at the border.
#[repr(C)]
#[derive(Clone, Copy)]
pub(crate) struct Place {
    /// The first byte of its text, and how many there are; none for a plain number.
    text: u32,
    length: u32,
    /// [`NONE`] when the text says it all; [`MANY`] when each row has its number, and else all have the same.
    numbers: u32,
}

const NONE: u32 = 0;
const MANY: u32 = 2;

/// What lies at the border.
pub(crate) struct Border<'a> {
    pub(crate) places: &'a [Place],
    text: &'a str,
}

impl<'a> Border<'a> {
    /// # Safety
    /// From `base`, which is a multiple of 8, on there are so many places and bytes of UTF-8 that nothing else uses until the call
    /// is over.
    pub(crate) unsafe fn at(base: usize, places: usize, text: usize) -> Self {
        let start = core::ptr::with_exposed_provenance::<Place>(base);
        // SAFETY: the caller says so.
        unsafe {
            let bytes = core::slice::from_raw_parts(start.add(places).cast::<u8>(), text);
            Self {
                places: core::slice::from_raw_parts(start, places),
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
        Self { text: 0, length: u32::try_from(length).unwrap_or(0), numbers: NONE }
    }

    /// Whether there are numbers beside the text.
    pub(crate) fn has_numbers(self) -> bool {
        self.numbers != NONE
    }

    /// Whether each row has its number.
    pub(crate) fn is_column(self) -> bool {
        self.numbers == MANY
    }
}
