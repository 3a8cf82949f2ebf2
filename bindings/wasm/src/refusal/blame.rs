//! Of which input a refusal speaks.

use hilum::Error;

use crate::slots::Slots;

/// A calculation that its [`Slots`] say more about.
#[derive(Clone, Copy)]
pub(crate) struct Refused;

/// Says of which input a refusal speaks.
pub(crate) trait Blame<T> {
    /// Nothing to say: each input was looked at when it was taken, so that this does not happen.
    fn looked_at(self) -> Result<T, Refused>;
    fn of(self, slots: &Slots, field: usize) -> Result<T, Refused>;
}
impl<T> Blame<T> for Result<T, Error> {
    #[inline(always)]
    fn looked_at(self) -> Result<T, Refused> {
        self.map_err(|_| Refused)
    }
    #[inline(always)]
    fn of(self, slots: &Slots, field: usize) -> Result<T, Refused> {
        self.map_err(|error| slots.blame(field, error))
    }
}

/// More than 0, for a share or a count that may be 0 elsewhere.
pub(crate) fn positive(slots: &Slots, field: usize, value: f64) -> Result<(), Refused> {
    hilum::error::positive(hilum::Argument::Share, value).map(|_| ()).of(slots, field)
}
