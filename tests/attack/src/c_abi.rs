//! Calls of the C library, in any order and with any arguments: lists and texts of exactly the told length, so that a
//! sanitizer sees a byte too many; results of one call are arguments of later ones.

mod by_hand;

use std::collections::BTreeMap;

use arbitrary::{Result, Unstructured};
// The functions are linked by their names.
use hilum_c as _;

use crate::numbers;

/// Calls of one attack.
const MOST: usize = 40;
/// A result before it is written.
const FILL: u8 = 0xA5;

#[allow(
    clippy::all,
    clippy::pedantic,
    non_camel_case_types,
    dead_code,
    missing_docs,
    reason = "written from the header"
)]
mod calls {
    use super::{Result, Source, Value, filled};
    include!(concat!(env!("OUT_DIR"), "/calls.rs"));
}

/// Makes calls until the bytes are used up.
pub fn attack(bytes: &[u8]) {
    let mut from = Unstructured::new(bytes);
    let mut source = Source { from: &mut from, results: BTreeMap::new(), is_null: false, is_refused: false };
    for _ in 0..MOST {
        if source.from.is_empty() || one(&mut source).is_err() {
            break;
        }
    }
}

fn one(source: &mut Source<'_, '_>) -> Result<()> {
    (source.is_null, source.is_refused) = (false, false);
    match usize::from(source.from.arbitrary::<u16>()?) % (calls::CALLS.len() + 12) {
        0..8 => by_hand::batch(source),
        8..10 => by_hand::document(source),
        10 => by_hand::status(source),
        11 => source.forget(),
        call => calls::CALLS[(call - 12).min(calls::CALLS.len() - 1)](source),
    }
}

/// Something that the C library reads or writes.
trait Value: Copy {
    const NAME: &'static str;
    fn made(from: &mut Source<'_, '_>) -> Result<Self>;
    /// As a result it is a number, and one that is finite.
    fn is_sound(&self) -> bool {
        true
    }
}

macro_rules! plain {
    ($($is:ty: $made:expr, $sound:expr;)+) => {
        $(impl Value for $is {
            const NAME: &'static str = stringify!($is);
            fn made(from: &mut Source<'_, '_>) -> Result<Self> {
                let made: fn(&mut Unstructured<'_>) -> Result<Self> = $made;
                made(from.from)
            }
            fn is_sound(&self) -> bool {
                let sound: fn(&Self) -> bool = $sound;
                sound(self)
            }
        })+
    };
}

plain! {
    f64: numbers::any, |value| value.is_finite();
    i32: number, |_| true;
    u32: |from| Ok(if from.arbitrary()? { from.int_in_range(0..=9)? } else { from.arbitrary()? }), |_| true;
    u64: |from| Ok(if from.arbitrary()? { from.int_in_range(0..=99)? } else { from.arbitrary()? }), |_| true;
    i8: |from| from.arbitrary(), |_| true;
    u8: |from| from.arbitrary(), |_| true;
    usize: |from| from.arbitrary(), |_| true;
}

impl<T: Value, const N: usize> Value for [T; N] {
    const NAME: &'static str = "list";
    fn made(from: &mut Source<'_, '_>) -> Result<Self> {
        let mut made = [T::made(from)?; N];
        for item in &mut made[1..] {
            *item = T::made(from)?;
        }
        Ok(made)
    }
    fn is_sound(&self) -> bool {
        self.iter().all(T::is_sound)
    }
}

/// Choices, units, entries of the bus.
fn number(from: &mut Unstructured<'_>) -> Result<i32> {
    Ok(match from.arbitrary::<u8>()? % 8 {
        0 => from.arbitrary()?,
        1 | 2 => from.int_in_range(1..=4)?,
        3 => from.int_in_range(-2..=700)?,
        _ => [10, 12, 20, 21, 33, 40, 50, 60, 70, 73, 80, 82, 90, 93, 100, 101][from.choose_index(16)?],
    })
}

/// Where arguments come from.
struct Source<'f, 'b> {
    from: &'f mut Unstructured<'b>,
    /// By type, as bytes.
    results: BTreeMap<&'static str, Vec<Vec<u8>>>,
    /// Whether this call was given a NULL.
    is_null: bool,
    is_refused: bool,
}

impl Source<'_, '_> {
    fn count(&mut self) -> Result<usize> {
        self.from.int_in_range(0..=5)
    }

    fn index(&mut self) -> Result<usize> {
        Ok(if self.from.arbitrary()? { self.from.int_in_range(0..=60)? } else { self.from.arbitrary()? })
    }

    fn value<T: Value>(&mut self) -> Result<T> {
        let known = self.results.get(T::NAME).map_or(0, Vec::len);
        if known > 0 && self.from.arbitrary::<u8>()? < 170 {
            let at = self.from.choose_index(known)?;
            let bytes = &self.results[T::NAME][at];
            assert_eq!(bytes.len(), size_of::<T>());
            // SAFETY: these are the bytes of such a value, which may hold anything.
            return Ok(unsafe { bytes.as_ptr().cast::<T>().read_unaligned() });
        }
        T::made(self)
    }

    fn values<T: Value>(&mut self, n: usize) -> Result<Box<[T]>> {
        (0..n).map(|_| self.value()).collect()
    }

    /// A text: a quantity, or anything.
    fn text(&mut self) -> Result<Box<[u8]>> {
        const WORDS: [&str; 10] = [
            "lb",
            "kg",
            "fl oz/cwt",
            "CFU/mL",
            "seeds/lb",
            "°C",
            "% ",
            "units",
            "mL/(100.kg)",
            "zinc sulphate",
        ];
        Ok(if self.from.arbitrary()? {
            let number = numbers::any(self.from)?;
            format!("{number:?} {}", WORDS[self.from.choose_index(WORDS.len())?]).into_bytes().into()
        } else {
            let length = self.from.int_in_range(0..=40)?;
            let length = length.min(self.from.len());
            self.from.bytes(length)?.into()
        })
    }

    fn lent<T>(&mut self, to: *const T) -> Result<*const T> {
        if self.from.arbitrary::<u8>()? == 0 {
            self.is_null = true;
            return Ok(core::ptr::null());
        }
        Ok(to)
    }

    fn lent_mut<T>(&mut self, to: *mut T) -> Result<*mut T> {
        self.lent(to).map(<*const T>::cast_mut)
    }

    /// A status is a known one, with a message.
    fn told(&mut self, status: i32) {
        self.is_refused = status != 0;
        assert!(status >= 0, "status {status}");
        by_hand::messages(status);
    }

    /// Results are whole and finite, or as they were.
    fn written<T: Value>(&mut self, results: &[T], status: i32) {
        // SAFETY: bytes of values that are all written, by the pattern or by the library.
        let bytes =
            unsafe { core::slice::from_raw_parts(results.as_ptr().cast::<u8>(), size_of_val(results)) };
        if status != 0 {
            assert!(bytes.iter().all(|byte| *byte == FILL), "status {status}, but {} was written", T::NAME);
            return;
        }
        if self.is_null {
            return;
        }
        assert!(results.iter().all(T::is_sound), "{} is not a finite number", T::NAME);
        self.keep(results, status);
    }

    fn keep<T: Value>(&mut self, results: &[T], status: i32) {
        if status != 0 || self.is_null {
            return;
        }
        let known = self.results.entry(T::NAME).or_default();
        for result in results {
            // SAFETY: as above.
            let bytes = unsafe {
                core::slice::from_raw_parts(core::ptr::from_ref(result).cast::<u8>(), size_of::<T>())
            };
            if known.len() < 8 {
                known.push(bytes.to_vec());
            }
        }
    }

    /// The first bad element is one of the list.
    fn bad(status: i32, bad: usize, n: usize) {
        let untouched = usize::from_ne_bytes([FILL; size_of::<usize>()]);
        assert!(bad == untouched || (status != 0 && bad < n), "status {status}: element {bad} of {n}");
    }

    /// Old results make room for new ones.
    fn forget(&mut self) -> Result<()> {
        self.results.clear();
        self.from.arbitrary::<u8>().map(drop)
    }
}

/// Room for results, with a pattern in it.
fn filled<T: Value>(n: usize) -> Box<[T]> {
    let mut room = Vec::<T>::with_capacity(n);
    // SAFETY: room for `n` values of a type that any bytes are.
    unsafe {
        core::ptr::write_bytes(room.as_mut_ptr(), FILL, n);
        room.set_len(n);
    }
    room.into()
}
