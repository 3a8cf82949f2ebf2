//! The inputs of one calculation.
//!
//! Nothing is kept of a calculation but why the last one was refused, which the script asks at once: so a loop over columns
//! has no memory to write but its results.

use core::sync::atomic::{AtomicU64, Ordering::Relaxed};

use hilum::Error;

use crate::refusal::{Refusal, Refused, count};
#[cfg(not(feature = "text"))]
use crate::take::Take;
use crate::take::Wanted;
#[cfg(any(feature = "formulas", not(feature = "text")))]
use crate::value::MOST;
#[cfg(not(feature = "text"))]
use crate::value::Of;
use crate::value::{Value, look};

/// Why the last calculation was refused, when it is not for an input alone: 16 × code + the number of the input; 0 is nothing.
static SAID: AtomicU64 = AtomicU64::new(0);

/// What one calculation takes: the numbers that it is called with, or else those that lie on the desk.
pub(crate) struct Slots {
    #[cfg(any(feature = "formulas", not(feature = "text")))]
    inputs: [f64; MOST],
    #[cfg(any(feature = "formulas", not(feature = "text")))]
    telling: Telling,
}

/// Whether it is told why a calculation is refused. In a column the row is calculated once more to learn that.
#[cfg(any(feature = "formulas", not(feature = "text")))]
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Telling {
    Why,
    Nothing,
}

#[cfg(any(feature = "formulas", not(feature = "text")))]
impl Slots {
    #[inline(always)]
    pub(crate) fn of<const N: usize>(telling: Telling, given: [f64; N]) -> Self {
        let mut inputs = [f64::NAN; MOST];
        inputs.iter_mut().zip(given).for_each(|(place, input)| *place = input);
        Self { inputs, telling }
    }

    #[inline(always)]
    pub(crate) fn base(&self, at: usize) -> f64 {
        self.inputs.get(at).copied().unwrap_or(f64::NAN)
    }

    #[inline(always)]
    fn tells(&self) -> bool {
        self.telling == Telling::Why
    }
}

#[cfg(all(feature = "text", not(feature = "formulas")))]
#[allow(clippy::unused_self, reason = "as the inputs that are numbers")]
impl Slots {
    #[inline(always)]
    pub(crate) fn base(&self, at: usize) -> f64 {
        crate::text::input(at)
    }

    #[inline(always)]
    fn tells(&self) -> bool {
        true
    }
}

impl Slots {
    #[inline(always)]
    pub(crate) fn get(&self, at: usize) -> Value {
        #[cfg(feature = "text")]
        let of = crate::text::kind(at);
        #[cfg(not(feature = "text"))]
        let of = Of::NUMBER;
        Value { number: self.base(at), of }
    }

    /// An input that is looked at only when the others are known.
    #[inline(always)]
    pub(crate) fn checked(&self, field: usize, wanted: Wanted) -> Result<f64, Refused> {
        look(self.get(field), wanted).map_err(|refusal| self.refuse(field, refusal))
    }

    #[inline(always)]
    pub(crate) fn refuse(&self, field: usize, refusal: Refusal) -> Refused {
        if self.tells() {
            say(field, refusal.code());
        }
        Refused
    }

    #[inline(always)]
    pub(crate) fn blame(&self, field: usize, error: Error) -> Refused {
        if self.tells() {
            blamed(field, error);
        }
        Refused
    }

    /// A result whose kind the inputs decide; its number.
    #[inline(always)]
    #[allow(clippy::unused_self, reason = "as the inputs that measure something")]
    pub(crate) fn say(&self, result: Value) -> f64 {
        #[cfg(feature = "text")]
        crate::text::said(result.of);
        result.number
    }
}

#[cold]
#[inline(never)]
fn blamed(field: usize, error: Error) {
    say(field, Refusal::from(error).code());
}

#[cold]
#[inline(never)]
pub(crate) fn say(field: usize, code: f64) {
    SAID.store((16.0 * code + count(field)).to_bits(), Relaxed);
}

/// Why, and no more from then on.
pub(crate) fn why() -> f64 {
    f64::from_bits(SAID.swap(0, Relaxed))
}

/// An input as the calculation takes it; none when it is refused. What must be more than 0 the core looks at itself, as it does
/// at each bare quantity and at what a domain type is made of.
#[cfg(not(feature = "text"))]
#[inline(always)]
pub(crate) fn looked<T: Take>(value: f64) -> Option<f64> {
    match T::WANTED.check {
        crate::take::Check::Positive => Some(value),
        _ => look(Value { number: value, of: Of::NUMBER }, T::WANTED).ok(),
    }
}
