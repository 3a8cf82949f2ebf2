//! How fast does it run?

use core::ffi::c_char;
use core::mem::MaybeUninit;

use crate::quantity::{checked, number_quotient, of_quotient, read};

/// How fast seed runs through the treater.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_seed_flow {
    /// Kilograms per second.
    pub kg_per_s: f64,
}
checked!(hilum_seed_flow.kg_per_s: hilum::treater::SeedFlow, MassFlow);

/// A flow of seed: value x unit / (per x per_unit). 500 lb/min: (500, HILUM_LB, 1, HILUM_MIN, &flow).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_flow_from(
    value: f64,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<hilum_seed_flow>>,
) -> i32 {
    of_quotient(out, value, unit, per, per_unit)
}

/// How many of a unit over per x per_unit it is. Errors: as for hilum_seed_flow_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_flow_in(
    flow: hilum_seed_flow,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    number_quotient(out, flow, unit, per, per_unit)
}

/// As text of length bytes: "500 lb/min". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_seed_flow_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_seed_flow>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}

/// How fast a pump delivers.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_flow {
    /// Cubic metres per second; 1 mL/s is 1e-6.
    pub m3_per_s: f64,
}
checked!(hilum_flow.m3_per_s: hilum::treater::Flow, VolumeFlow);

/// A flow of liquid: value x unit / (per x per_unit). 325 mL/min: (325, HILUM_ML, 1, HILUM_MIN, &flow).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_flow_from(
    value: f64,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<hilum_flow>>,
) -> i32 {
    of_quotient(out, value, unit, per, per_unit)
}

/// How many of a unit over per x per_unit it is. Errors: as for hilum_flow_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_flow_in(
    flow: hilum_flow,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    number_quotient(out, flow, unit, per, per_unit)
}

/// As text of length bytes: "12 fl oz/min". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_flow_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_flow>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}
