//! What is in a product?

use core::ffi::c_char;
use core::mem::MaybeUninit;

use crate::quantity::{checked, number_quotient, of_quotient, read};

/// Mass of a product per its volume.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_density {
    /// Kilograms per cubic metre; 1 kg/L is 1000.
    pub kg_per_m3: f64,
}
checked!(hilum_density.kg_per_m3: hilum::rate::Density, MassPerVolume);

/// A density: value x unit / (per x per_unit). 1.1 kg/L: (1.1, HILUM_KG, 1, HILUM_L, &density).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_density_from(
    value: f64,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<hilum_density>>,
) -> i32 {
    of_quotient(out, value, unit, per, per_unit)
}

/// How many of a unit over per x per_unit it is. Errors: as for hilum_density_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_density_in(
    density: hilum_density,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    number_quotient(out, density, unit, per, per_unit)
}

/// As text of length bytes: "1.04 kg/L". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_density_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_density>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}

/// Active ingredient per volume of product.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_active_content {
    /// Kilograms per cubic metre; 1 g/L is 1.
    pub kg_per_m3: f64,
}
checked!(hilum_active_content.kg_per_m3: hilum::rate::ActiveContent, MassPerVolume);

/// A content: value x unit / (per x per_unit). 600 g/L: (600, HILUM_G, 1, HILUM_L, &content).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_active_content_from(
    value: f64,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<hilum_active_content>>,
) -> i32 {
    of_quotient(out, value, unit, per, per_unit)
}

/// How many of a unit over per x per_unit it is. Errors: as for hilum_active_content_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_active_content_in(
    content: hilum_active_content,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    number_quotient(out, content, unit, per, per_unit)
}

/// As text of length bytes: "3.3 lb/gal". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_active_content_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_active_content>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}

/// Living cells per volume of product.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_titre_per_volume {
    /// Colony-forming units per cubic metre; 1 CFU/mL is 1e6.
    pub cfu_per_m3: f64,
}
checked!(hilum_titre_per_volume.cfu_per_m3: hilum::viability::TitrePerVolume, CellsPerVolume);

/// A titre: value x unit / (per x per_unit). 1e9 CFU/mL: (1e9, HILUM_CFU, 1, HILUM_ML, &titre).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_titre_per_volume_from(
    value: f64,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<hilum_titre_per_volume>>,
) -> i32 {
    of_quotient(out, value, unit, per, per_unit)
}

/// How many of a unit over per x per_unit it is. Errors: as for hilum_titre_per_volume_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_titre_per_volume_in(
    titre: hilum_titre_per_volume,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    number_quotient(out, titre, unit, per, per_unit)
}

/// As text of length bytes: "8e9 CFU/mL". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_titre_per_volume_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_titre_per_volume>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}

/// Living cells per mass of product.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_titre_per_mass {
    /// Colony-forming units per kilogram; 1 CFU/g is 1000.
    pub cfu_per_kg: f64,
}
checked!(hilum_titre_per_mass.cfu_per_kg: hilum::viability::TitrePerMass, CellsPerMass);

/// A titre: value x unit / (per x per_unit). 1e9 CFU/g: (1e9, HILUM_CFU, 1, HILUM_G, &titre).
///
/// Errors: a value or per that is not finite or not more than 0; a result beyond 1e-30 to 1e30; HILUM_NO_SUCH_UNIT;
/// HILUM_WRONG_DIMENSION.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_titre_per_mass_from(
    value: f64,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<hilum_titre_per_mass>>,
) -> i32 {
    of_quotient(out, value, unit, per, per_unit)
}

/// How many of a unit over per x per_unit it is. Errors: as for hilum_titre_per_mass_from.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_titre_per_mass_in(
    titre: hilum_titre_per_mass,
    unit: i32,
    per: f64,
    per_unit: i32,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    number_quotient(out, titre, unit, per, per_unit)
}

/// As text of length bytes: "2e9 CFU/g". Errors: the texts' (200 and up); not more than 0, or beyond 1e-30 to 1e30.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_titre_per_mass_read(
    text: *const c_char,
    length: usize,
    out: Option<&mut MaybeUninit<hilum_titre_per_mass>>,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { read(out, text, length) }
}
