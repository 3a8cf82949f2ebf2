//! The inputs of entry `hilum/numbers`, which are numbers of whatever is needed.
//!
//! Nothing is kept of a calculation but why the last one was refused, which the script asks at once: so a loop over columns
//! has no memory to write but its results.

use core::sync::atomic::{AtomicU64, Ordering::Relaxed};

use hilum::Error;

use super::{MOST, Slot, look};
use crate::refusal::{Refusal, Refused, count};
use crate::take::{Check, Take, Wanted};

/// Why the last calculation was refused, when it is not for an input alone: 16 × code + the number of the input; 0 is nothing.
static SAID: AtomicU64 = AtomicU64::new(0);

/// What one calculation takes.
pub(crate) struct Slots {
    inputs: [f64; MOST],
    telling: Telling,
}

/// Whether it is told why a calculation is refused. In a column the row is calculated once more to learn that.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Telling {
    Why,
    Nothing,
}

impl Slots {
    #[inline(always)]
    pub(crate) fn of<const N: usize>(telling: Telling, given: [f64; N]) -> Self {
        let mut inputs = [f64::NAN; MOST];
        inputs.iter_mut().zip(given).for_each(|(place, input)| *place = input);
        Self { inputs, telling }
    }

    #[inline(always)]
    pub(crate) fn get(&self, at: usize) -> Slot {
        Slot::Number(self.base(at))
    }

    #[inline(always)]
    pub(crate) fn base(&self, at: usize) -> f64 {
        self.inputs.get(at).copied().unwrap_or(f64::NAN)
    }

    /// An input that is looked at only when the others are known.
    #[inline(always)]
    pub(crate) fn checked(&self, field: usize, wanted: Wanted) -> Result<f64, Refused> {
        look(self.get(field), wanted).map_err(|refusal| self.refuse(field, refusal))
    }

    #[inline(always)]
    pub(crate) fn refuse(&self, field: usize, refusal: Refusal) -> Refused {
        if self.telling == Telling::Why {
            say(field, refusal.code());
        }
        Refused
    }

    #[inline(always)]
    pub(crate) fn blame(&self, field: usize, error: Error) -> Refused {
        if self.telling == Telling::Why {
            blamed(field, error);
        }
        Refused
    }

    #[inline(always)]
    #[allow(clippy::unused_self, reason = "as the inputs that measure something")]
    pub(crate) fn say(&self, result: Slot) -> f64 {
        result.number()
    }
}

#[cold]
#[inline(never)]
fn blamed(field: usize, error: Error) {
    say(field, Refusal::from(error).code());
}

#[cold]
#[inline(never)]
fn say(field: usize, code: f64) {
    SAID.store((16.0 * code + count(field)).to_bits(), Relaxed);
}

/// Why, and no more from then on.
pub(crate) fn said() -> f64 {
    f64::from_bits(SAID.swap(0, Relaxed))
}

/// An input as the calculation takes it; none when it is refused. What must be more than 0 the core looks at itself, as it does
/// at each bare quantity and at what a domain type is made of.
#[inline(always)]
pub(crate) fn looked<T: Take>(value: f64) -> Option<f64> {
    match T::WANTED.check {
        Check::Positive => Some(value),
        _ => look(Slot::Number(value), T::WANTED).ok(),
    }
}
