//! How warm is it? A point on the temperature scale.

use core::ffi::c_char;
use core::mem::MaybeUninit;

use hilum::quantity::Temperature;
use hilum::text;

use super::amount::hilum_temperature_difference;
use crate::call::{self, Answer, give};
use crate::number::{Asked, Number, of_one, of_two};

/// A point on the temperature scale. Two points cannot be added; a point minus a point is a difference.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_temperature {
    /// Degrees Celsius, so that 0 degC, 10 degC and 50 degF are exact.
    pub celsius: f64,
}

// SAFETY: it is its degrees Celsius in memory, whatever they are; the calculation looks at them.
unsafe impl Number for hilum_temperature {
    type Core = Temperature;
    const ASKED: Asked = Asked::NOTHING;
    fn number(self) -> f64 {
        self.celsius
    }
}

impl hilum_temperature {
    pub(crate) fn core(self) -> Answer<Temperature> {
        Ok(Temperature::from_celsius(self.celsius).checked()?)
    }
}

impl From<Temperature> for hilum_temperature {
    fn from(at: Temperature) -> Self {
        Self { celsius: at.celsius() }
    }
}

/// From degrees Celsius, looked at. Errors: a number that is not finite; HILUM_BELOW_ABSOLUTE_ZERO.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_temperature_from_celsius(
    celsius: f64,
    out: Option<&mut MaybeUninit<hilum_temperature>>,
) -> i32 {
    of_one(out, celsius, |celsius| Temperature::from_celsius(celsius).checked())
}

/// From degrees Fahrenheit: (F - 32) x 5 / 9. Errors: a number that is not finite; HILUM_BELOW_ABSOLUTE_ZERO.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_temperature_from_fahrenheit(
    fahrenheit: f64,
    out: Option<&mut MaybeUninit<hilum_temperature>>,
) -> i32 {
    of_one(out, fahrenheit, |fahrenheit| Temperature::from_fahrenheit(fahrenheit).checked())
}

/// In degrees Fahrenheit: C x 9 / 5 + 32. Errors: as for hilum_temperature_from_celsius.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_temperature_fahrenheit(
    at: hilum_temperature,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    of_one(out, at, |at| Ok(at.checked()?.fahrenheit()))
}

/// How much warmer one point is than another: at - than. Errors: as for hilum_temperature_from_celsius.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_temperature_minus(
    at: hilum_temperature,
    than: hilum_temperature,
    out: Option<&mut MaybeUninit<hilum_temperature_difference>>,
) -> i32 {
    of_two(out, at, than, |at, than| Ok(at.checked()? - than.checked()?))
}

/// The point so much warmer: at + by. Errors: as for hilum_temperature_from_celsius.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_temperature_plus(
    at: hilum_temperature,
    by: hilum_temperature_difference,
    out: Option<&mut MaybeUninit<hilum_temperature>>,
) -> i32 {
    of_two(out, at, by, |at, by| (at.checked()? + by).checked())
}

/// As text of length bytes: "41 degF". Errors: the texts' (200 and up); HILUM_BELOW_ABSOLUTE_ZERO.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_temperature_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_temperature>>,
) -> i32 {
    // SAFETY: the conventions.
    give(out, || Ok(text::read_temperature(unsafe { call::text(text, length) }?)?.checked()?.into()))
}

/// On the bus; texts and units make no temperature of a difference.
impl crate::quantity::Quantity for hilum_temperature {
    const POWERS: hilum::unit::Powers = hilum::quantity::temperature_difference::POWERS;
    fn base(self) -> f64 {
        self.celsius
    }
    fn checked(base: f64) -> Answer<Self> {
        Self { celsius: base }.core().map(Self::from)
    }
}
