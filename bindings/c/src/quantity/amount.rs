//! How much is it? Amounts, times and shares.

use core::ffi::c_char;
use core::mem::MaybeUninit;

use crate::quantity::{checked, number, of, plain, read};

/// Seed or product by mass.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_mass {
    /// Kilograms.
    pub kg: f64,
}
plain!(hilum_mass.kg: Mass);

/// A mass: value x unit. 50 lb: (50, HILUM_LB, &mass).
///
/// Errors: a number that is not finite; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_mass_from(value: f64, unit: i32, out: Option<&mut MaybeUninit<hilum_mass>>) -> i32 {
    of(out, value, unit)
}

/// How many of a unit it is: the quantity / unit. Errors: as for hilum_mass_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_mass_in(mass: hilum_mass, unit: i32, out: Option<&mut MaybeUninit<f64>>) -> i32 {
    number(out, mass, unit)
}

/// As text of length bytes: "50000 lb". Errors: the texts' (200 and up).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_mass_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_mass>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}

/// Liquid.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_volume {
    /// Cubic metres; 1 L is 0.001.
    pub m3: f64,
}
plain!(hilum_volume.m3: Volume);

/// A volume: value x unit. 2.5 gal: (2.5, HILUM_GAL, &volume).
///
/// Errors: a number that is not finite; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_volume_from(
    value: f64,
    unit: i32,
    out: Option<&mut MaybeUninit<hilum_volume>>,
) -> i32 {
    of(out, value, unit)
}

/// How many of a unit it is: the quantity / unit. Errors: as for hilum_volume_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_volume_in(
    volume: hilum_volume,
    unit: i32,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    number(out, volume, unit)
}

/// As text of length bytes: "2.5 gal". Errors: the texts' (200 and up).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_volume_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_volume>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}

/// A number of seeds.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_seeds {
    /// Seeds.
    pub seeds: f64,
}
plain!(hilum_seeds.seeds: Seeds);

/// A number of seeds: value x unit. (140000, HILUM_SEEDS, &seeds).
///
/// Errors: a number that is not finite; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seeds_from(value: f64, unit: i32, out: Option<&mut MaybeUninit<hilum_seeds>>) -> i32 {
    of(out, value, unit)
}

/// How many of a unit it is: the quantity / unit. Errors: as for hilum_seeds_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seeds_in(seeds: hilum_seeds, unit: i32, out: Option<&mut MaybeUninit<f64>>) -> i32 {
    number(out, seeds, unit)
}

/// As text of length bytes: "140000 seeds". Errors: the texts' (200 and up).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_seeds_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_seeds>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}

/// A number of living cells.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_cells {
    /// Colony-forming units.
    pub cfu: f64,
}
plain!(hilum_cells.cfu: Cells);

/// A number of cells: value x unit. (1e9, HILUM_CFU, &cells).
///
/// Errors: a number that is not finite; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_cells_from(value: f64, unit: i32, out: Option<&mut MaybeUninit<hilum_cells>>) -> i32 {
    of(out, value, unit)
}

/// How many of a unit it is: the quantity / unit. Errors: as for hilum_cells_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_cells_in(cells: hilum_cells, unit: i32, out: Option<&mut MaybeUninit<f64>>) -> i32 {
    number(out, cells, unit)
}

/// As text of length bytes. Errors: the texts' (200 and up).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_cells_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_cells>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}

/// Land.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_area {
    /// Square metres; 1 ha is 10000.
    pub m2: f64,
}
plain!(hilum_area.m2: Area);

/// An area: value x unit. 40 ac: (40, HILUM_AC, &area).
///
/// Errors: a number that is not finite; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_area_from(value: f64, unit: i32, out: Option<&mut MaybeUninit<hilum_area>>) -> i32 {
    of(out, value, unit)
}

/// How many of a unit it is: the quantity / unit. Errors: as for hilum_area_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_area_in(area: hilum_area, unit: i32, out: Option<&mut MaybeUninit<f64>>) -> i32 {
    number(out, area, unit)
}

/// As text of length bytes: "80 ac". Errors: the texts' (200 and up).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_area_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_area>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}

/// A time that passes: pot life, storage, a catch; or an instant, since one of your choice.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_time {
    /// Seconds.
    pub s: f64,
}
plain!(hilum_time.s: Time);

/// A time: value x unit. 24 h: (24, HILUM_H, &time).
///
/// Errors: a number that is not finite; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_time_from(value: f64, unit: i32, out: Option<&mut MaybeUninit<hilum_time>>) -> i32 {
    of(out, value, unit)
}

/// How many of a unit it is: the quantity / unit. Errors: as for hilum_time_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_time_in(time: hilum_time, unit: i32, out: Option<&mut MaybeUninit<f64>>) -> i32 {
    number(out, time, unit)
}

/// As text of length bytes: "24 h". Errors: the texts' (200 and up).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_time_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_time>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}

/// A difference of temperatures.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_temperature_difference {
    /// Kelvins.
    pub kelvin: f64,
}
plain!(hilum_temperature_difference.kelvin: TemperatureDifference);

/// A difference of temperatures: value x unit. 18 Fahrenheit degrees: (18, HILUM_DELTA_DEGF, &difference).
///
/// Errors: a number that is not finite; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_temperature_difference_from(
    value: f64,
    unit: i32,
    out: Option<&mut MaybeUninit<hilum_temperature_difference>>,
) -> i32 {
    of(out, value, unit)
}

/// How many of a unit it is: the quantity / unit. Errors: as for hilum_temperature_difference_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_temperature_difference_in(
    difference: hilum_temperature_difference,
    unit: i32,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    number(out, difference, unit)
}

/// As text of length bytes. Errors: the texts' (200 and up).
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_temperature_difference_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_temperature_difference>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}

/// A share: purity, germination, recovery, a tolerance, a content by mass.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_share {
    /// 1 is all of it; 95 % is 0.95.
    pub one: f64,
}
checked!(hilum_share.one: hilum::seed::Share, Ratio);

/// A share: value x unit. 95 %: (95, HILUM_PERCENT, &share).
///
/// Errors: a number that is not finite, or not within 0 to 1; HILUM_NO_SUCH_UNIT; HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_share_from(value: f64, unit: i32, out: Option<&mut MaybeUninit<hilum_share>>) -> i32 {
    of(out, value, unit)
}

/// How many of a unit it is: the quantity / unit. Errors: as for hilum_share_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_share_in(share: hilum_share, unit: i32, out: Option<&mut MaybeUninit<f64>>) -> i32 {
    number(out, share, unit)
}

/// As text of length bytes: "5 %". Errors: the texts' (200 and up); or not within 0 to 1.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_share_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_share>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}
