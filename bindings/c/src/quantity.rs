//! How a number of C becomes a quantity of the core and back.

pub mod amount;
pub mod content;
pub mod flow;
pub mod sown;
pub mod temperature;

use core::ffi::c_char;

use hilum::error::{LARGEST, SMALLEST};
use hilum::text::{Atom, Bases, Compound, Scale, Written};
use hilum::unit::{self, Powers};

use crate::call::{self, Answer, Out, give};
use crate::status::Status;

/// A one-field structure of the header.
pub(crate) trait Quantity: Copy {
    /// What it measures.
    const POWERS: Powers;
    /// The number of base units.
    fn base(self) -> f64;
    /// From a number of base units, looked at.
    fn checked(base: f64) -> Answer<Self>;
}

/// A quantity of which there are lists.
pub(crate) trait Listed: Quantity {
    /// From a number of base units that was looked at.
    fn trusted(base: f64) -> Self;
}

/// A plain quantity, which may be negative: a difference, or a scale that shows less than nothing.
macro_rules! plain {
    ($name:ident.$field:ident: $core:ident) => {
        impl From<$name> for hilum::quantity::$core {
            fn from(value: $name) -> Self {
                hilum::quantity::Measure::from_base(value.$field)
            }
        }
        // SAFETY: a quantity is its number, and the calculation looks at it.
        unsafe impl $crate::number::Number for $name {
            type Core = hilum::quantity::$core;
            const ASKED: $crate::number::Asked = $crate::number::Asked::NOTHING;
            fn number(self) -> f64 {
                self.$field
            }
        }
        impl From<hilum::quantity::$core> for $name {
            fn from(value: hilum::quantity::$core) -> Self {
                Self { $field: hilum::quantity::Measure::to_base(value) }
            }
        }
        impl $crate::quantity::Quantity for $name {
            const POWERS: hilum::unit::Powers = <hilum::quantity::$core as hilum::quantity::Measure>::POWERS;
            fn base(self) -> f64 {
                self.$field
            }
            fn checked(base: f64) -> $crate::call::Answer<Self> {
                $crate::quantity::in_range(base).map(|$field| Self { $field })
            }
        }
        impl $crate::quantity::Listed for $name {
            fn trusted($field: f64) -> Self {
                Self { $field }
            }
        }
    };
}
pub(crate) use plain;

/// A quantity that the core looks at.
macro_rules! checked {
    ($name:ident.$field:ident: $core:ty, $quantity:ident) => {
        $crate::number::number!($name: $field, $core);
        impl From<$name> for hilum::quantity::$quantity {
            fn from(value: $name) -> Self {
                hilum::quantity::Measure::from_base(value.$field)
            }
        }
        impl From<$core> for $name {
            fn from(value: $core) -> Self {
                Self { $field: hilum::quantity::Measure::to_base(value.get()) }
            }
        }
        impl $crate::quantity::Quantity for $name {
            const POWERS: hilum::unit::Powers =
                <hilum::quantity::$quantity as hilum::quantity::Measure>::POWERS;
            fn base(self) -> f64 {
                self.$field
            }
            fn checked(base: f64) -> $crate::call::Answer<Self> {
                Self { $field: base }.core().map(Self::from)
            }
        }
        impl $crate::quantity::Listed for $name {
            fn trusted($field: f64) -> Self {
                Self { $field }
            }
        }
    };
}
pub(crate) use checked;

pub(crate) fn finite(number: f64) -> Answer<f64> {
    if number.is_finite() { Ok(number) } else { Err(Status::NOT_FINITE) }
}

/// A finite number, 0 or within what the core calculates with.
pub(crate) fn in_range(number: f64) -> Answer<f64> {
    if finite(number)? == 0.0 || (SMALLEST..=LARGEST).contains(&number.abs()) {
        Ok(number)
    } else {
        Err(Status::OUT_OF_RANGE)
    }
}

/// A unit of the table, or one over a number of others.
pub(crate) fn compound(above: i32, below: Option<(f64, i32)>) -> Answer<Compound> {
    let atom = |number| unit::by_number(number).map(Atom::Unit).ok_or(Status::NO_SUCH_UNIT);
    let below = match below {
        Some((count, unit)) => {
            if finite(count)? <= 0.0 {
                return Err(Status::BELOW_THE_LINE);
            }
            Some((in_range(count)?, atom(unit)?))
        }
        None => None,
    };
    Ok(Compound { above: atom(above)?, below })
}

/// What a unit comes to, if it measures what is wanted.
pub(crate) fn scale(unit: Compound, wanted: Powers) -> Answer<Scale> {
    let scale = unit.scale(&Bases::default())?;
    if scale.powers == wanted { Ok(scale) } else { Err(Status::WRONG_DIMENSION) }
}

/// What a number of a unit comes to in base units.
pub(crate) fn base_of(number: f64, unit: Compound, wanted: Powers) -> Answer<f64> {
    Ok(scale(unit, wanted)?.base(number))
}

/// How many of a unit a number of base units is.
pub(crate) fn number_in(base: f64, unit: Compound, wanted: Powers) -> Answer<f64> {
    finite(scale(unit, wanted)?.number(base))
}

/// `value` of a unit.
pub(crate) fn of<Q: Quantity>(out: Out<'_, Q>, value: f64, unit: i32) -> i32 {
    give(out, || Q::checked(base_of(finite(value)?, compound(unit, None)?, Q::POWERS)?))
}

/// `value` of a unit over `count` of another.
pub(crate) fn of_quotient<Q: Quantity>(
    out: Out<'_, Q>,
    value: f64,
    above: i32,
    count: f64,
    below: i32,
) -> i32 {
    give(out, || {
        let unit = compound(above, Some((count, below)))?;
        Q::checked(base_of(finite(value)?, unit, Q::POWERS)?)
    })
}

/// How many of a unit a quantity is.
pub(crate) fn number<Q: Quantity>(out: Out<'_, f64>, quantity: Q, unit: i32) -> i32 {
    give(out, || number_in(Q::checked(quantity.base())?.base(), compound(unit, None)?, Q::POWERS))
}

/// How many of a unit a quantity is, over `count` of another.
pub(crate) fn number_quotient<Q: Quantity>(
    out: Out<'_, f64>,
    quantity: Q,
    above: i32,
    count: f64,
    below: i32,
) -> i32 {
    give(out, || {
        let unit = compound(above, Some((count, below)))?;
        number_in(Q::checked(quantity.base())?.base(), unit, Q::POWERS)
    })
}

/// A quantity as text.
///
/// # Safety
/// As for [`call::text`].
pub(crate) unsafe fn read<Q: Quantity>(out: Out<'_, Q>, text: *const c_char, length: usize) -> i32 {
    // SAFETY: by the caller.
    give(out, || Q::checked(base_read(unsafe { call::text(text, length) }?, Q::POWERS)?))
}

fn base_read(text: &str, wanted: Powers) -> Answer<f64> {
    let written = Written::read(text)?;
    base_of(written.number, written.unit, wanted)
}
