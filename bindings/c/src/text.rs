//! "2.5 fl oz/cwt" → a quantity whose kind is known only when it is read.

use core::ffi::c_char;
use core::mem::MaybeUninit;

use hilum::text::{Bases, Compound, Measured, TextError, Written};

use crate::call::{self, Answer, give};
use crate::quantity::{finite, in_range};
use crate::seed::{hilum_bushel, hilum_seed_unit};
use crate::status::Status;
use crate::unit::{hilum_powers, hilum_word};

/// An amount, in base units of what it measures.
pub const HILUM_AMOUNT: i32 = 1;
/// A point on the temperature scale, in degrees Celsius.
pub const HILUM_TEMPERATURE: i32 = 2;

/// What a text says.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_measured {
    /// In base units (kg, m3, s, K, seeds, CFU, m2 and their quotients), or degrees Celsius.
    pub value: f64,
    /// HILUM_AMOUNT or HILUM_TEMPERATURE.
    pub is: i32,
    /// What an amount measures; that of a difference for a temperature.
    pub powers: hilum_powers,
}

impl From<Measured> for hilum_measured {
    fn from(measured: Measured) -> Self {
        match measured {
            Measured::Quantity { value, powers } => Self { value, is: HILUM_AMOUNT, powers: powers.into() },
            Measured::Temperature(at) => Self {
                value: at.celsius(),
                is: HILUM_TEMPERATURE,
                powers: hilum::quantity::temperature_difference::POWERS.into(),
            },
        }
    }
}

fn bases(unit: Option<&hilum_seed_unit>, bushel: Option<&hilum_bushel>) -> Answer<Bases> {
    Ok(Bases {
        unit: unit.map(|unit| unit.core()).transpose()?,
        bushel: bushel.map(|bushel| bushel.core()).transpose()?,
    })
}

/// Any quantity as text of length bytes: (number x unit) / (count x unit).
///
/// A number as in JSON (digits may be grouped by _), a space, and a unit with at most one /, below which
/// a number may stand: "2.5 fl oz/cwt", "325 mL/100 kg", "95 %", "41 degF". Units as the trade writes them or
/// as UCUM does. unit says what "unit" means here, bushel what "bu" means; NULL where nothing does.
///
/// Errors: the texts' (200 and up); what is wrong with unit or bushel.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_text_read(
    text: *const c_char,
    length: usize,
    unit: Option<&hilum_seed_unit>,
    bushel: Option<&hilum_bushel>,
    out: Option<&mut MaybeUninit<hilum_measured>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let text = unsafe { call::text(text, length) }?;
        let mut measured: hilum_measured = Written::read(text)?.measured(&bases(unit, bushel)?)?.into();
        measured.value = finite(measured.value)?;
        Ok(measured)
    })
}

/// How many of a unit, given as text of length bytes without a number ("fl oz/cwt"), a number of base units
/// is: value x (count x unit below) / unit above.
///
/// Errors: a value that is not finite; the texts' (200 and up); what is wrong with unit or bushel.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_text_count_in(
    value: f64,
    text: *const c_char,
    length: usize,
    unit: Option<&hilum_seed_unit>,
    bushel: Option<&hilum_bushel>,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let text = unsafe { call::text(text, length) }?;
        finite(Compound::read(text)?.count_in(in_range(value)?, &bases(unit, bushel)?)?)
    })
}

/// What may have been meant by a text whose unit is unknown: "lb" for "5 pounds".
///
/// Errors: HILUM_NO_SUCH_INDEX when nothing is near, or the text has no unknown unit.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_text_suggestion(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_word>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        match Written::read(unsafe { call::text(text, length) }?) {
            Err(TextError::UnknownUnit { suggestion: Some(unit) }) => hilum_word::new(unit),
            _ => Err(Status::NO_SUCH_INDEX),
        }
    })
}
