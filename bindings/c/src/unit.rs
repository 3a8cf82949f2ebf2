//! Which units are there?

use core::ffi::c_char;
use core::mem::MaybeUninit;

use hilum::unit::{self, Powers, Unit};

use crate::call::{Answer, give, need};
use crate::status::Status;

/// A short text: UTF-8, ended by NUL.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct hilum_word {
    /// The text, and NULs.
    pub text: [c_char; 32],
}

impl hilum_word {
    /// Room for 31 bytes and a NUL.
    pub(crate) fn new(text: &str) -> Answer<Self> {
        let mut word = Self { text: [0; 32] };
        if text.len() >= word.text.len() {
            return Err(Status::ROOM_TOO_SMALL);
        }
        for (to, from) in word.text.iter_mut().zip(text.bytes()) {
            *to = c_char::from_ne_bytes([from]);
        }
        Ok(word)
    }
}

/// What something measures, as powers of the base quantities: a dose per seed is 3 of length, -1 of seeds.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct hilum_powers {
    /// Of length (metre).
    pub length: i8,
    /// Of mass (kilogram).
    pub mass: i8,
    /// Of time (second).
    pub time: i8,
    /// Of temperature difference (kelvin).
    pub temperature: i8,
    /// Of number of seeds.
    pub seeds: i8,
    /// Of number of cells (colony-forming unit).
    pub cells: i8,
}

impl From<Powers> for hilum_powers {
    fn from(powers: Powers) -> Self {
        let Powers { length, mass, time, temperature, seeds, cells } = powers;
        Self { length, mass, time, temperature, seeds, cells }
    }
}

impl From<hilum_powers> for Powers {
    fn from(powers: hilum_powers) -> Self {
        let hilum_powers { length, mass, time, temperature, seeds, cells } = powers;
        Self { length, mass, time, temperature, seeds, cells }
    }
}

/// A unit.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_unit {
    /// Base units (kg, m3, s, K, seeds, CFU, m2) in one of it.
    pub factor: f64,
    /// HILUM_LB and so on; never reused.
    pub number: i32,
    /// What it measures.
    pub powers: hilum_powers,
    /// As the trade writes it, and as texts are read: "fl oz".
    pub symbol: hilum_word,
    /// Its UCUM code: "[foz_us]".
    pub ucum: hilum_word,
}

impl hilum_unit {
    fn new(unit: &Unit) -> Answer<Self> {
        Ok(Self {
            factor: unit.factor,
            number: unit.number,
            powers: unit.powers.into(),
            symbol: hilum_word::new(unit.symbol)?,
            ucum: hilum_word::new(unit.ucum)?,
        })
    }
}

/// The unit of a number. Errors: HILUM_NO_SUCH_UNIT.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_unit_by_number(number: i32, out: Option<&mut MaybeUninit<hilum_unit>>) -> i32 {
    give(out, || unit::by_number(number).ok_or(Status::NO_SUCH_UNIT).and_then(hilum_unit::new))
}

/// One unit of all, counted from 0. Errors: HILUM_NO_SUCH_INDEX beyond the last.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_unit_at(index: usize, out: Option<&mut MaybeUninit<hilum_unit>>) -> i32 {
    give(out, || unit::all().nth(index).ok_or(Status::NO_SUCH_INDEX).and_then(hilum_unit::new))
}

/// What something measures, in words: "volume per seed". Errors: NULL; HILUM_WRONG_DIMENSION where the trade
/// has no name for it.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_powers_name(
    powers: Option<&hilum_powers>,
    out: Option<&mut MaybeUninit<hilum_word>>,
) -> i32 {
    give(out, || hilum_word::new(Powers::from(need(powers)?).name().ok_or(Status::WRONG_DIMENSION)?))
}

/// What a quotient of units measures: powers - below. Errors: NULL.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_powers_over(
    powers: Option<&hilum_powers>,
    below: Option<&hilum_powers>,
    out: Option<&mut MaybeUninit<hilum_powers>>,
) -> i32 {
    give(out, || Ok(Powers::from(need(powers)?).over(need(below)?.into()).into()))
}
