//! The inputs of entry `hilum`, which measure something.

use core::cell::Cell;

use hilum::Error;

use super::{MOST, NONE, Slot, look};
use crate::refusal::{Refusal, Refused};
use crate::take::Wanted;

/// One calculation: its inputs, what was looked at of them, and why it was refused.
pub(crate) struct Slots {
    inputs: [Slot; MOST],
    looked_at: Cell<[f64; MOST]>,
    /// A result whose kind the inputs decide.
    said: Cell<Slot>,
    refusal: Cell<Refusal>,
}

impl Slots {
    pub(crate) const fn new() -> Self {
        Self {
            inputs: [NONE; MOST],
            looked_at: Cell::new([f64::NAN; MOST]),
            said: Cell::new(NONE),
            refusal: Cell::new(Refusal::NONE),
        }
    }

    pub(crate) fn set(&mut self, at: usize, slot: Slot) {
        if let Some(place) = self.inputs.get_mut(at) {
            *place = slot;
        }
    }

    pub(crate) fn get(&self, at: usize) -> Slot {
        self.inputs.get(at).copied().unwrap_or(NONE)
    }

    /// Looks at each input, once; the first to be refused counts.
    pub(crate) fn look(&self, wanted: &[Wanted]) -> Result<(), Refused> {
        let mut bases = [f64::NAN; MOST];
        for (field, (base, wanted)) in bases.iter_mut().zip(wanted).enumerate() {
            *base = self.checked(field, *wanted)?;
        }
        self.looked_at.set(bases);
        Ok(())
    }

    /// An input in base units, if it is what is wanted.
    #[inline(never)]
    pub(crate) fn checked(&self, field: usize, wanted: Wanted) -> Result<f64, Refused> {
        look(self.get(field), wanted).map_err(|refusal| self.refuse(field, refusal))
    }

    /// An input that was looked at.
    #[inline(always)]
    pub(crate) fn base(&self, field: usize) -> f64 {
        self.looked_at.get().get(field).copied().unwrap_or(f64::NAN)
    }

    /// Refuses an input; the first to be refused counts.
    #[inline(never)]
    pub(crate) fn refuse(&self, field: usize, refusal: Refusal) -> Refused {
        self.refusal.set(refusal.said_of(field));
        Refused
    }

    #[inline(never)]
    pub(crate) fn blame(&self, field: usize, error: Error) -> Refused {
        self.refuse(field, error.into())
    }

    pub(crate) fn refusal(&self) -> Refusal {
        self.refusal.get()
    }

    /// A result whose kind the inputs decide; its number.
    pub(crate) fn say(&self, result: Slot) -> f64 {
        self.said.set(result);
        result.number()
    }

    pub(crate) fn said(&self) -> Slot {
        self.said.get()
    }
}
