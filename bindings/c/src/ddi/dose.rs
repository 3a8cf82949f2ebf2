//! Doses on the bus.

use core::mem::MaybeUninit;

use super::{from_bus, to_bus};
use crate::dose::active::hilum_active_per_mass;
use crate::dose::dry::hilum_dry_per_mass;
use crate::dose::liquid::{hilum_rate_per_area, hilum_rate_per_mass, hilum_rate_per_seed};

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_mass_to_bus(
    value: hilum_rate_per_mass,
    ddi: i32,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    to_bus(out, value, ddi)
}

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_mass_from_bus(
    steps: i32,
    ddi: i32,
    out: Option<&mut MaybeUninit<hilum_rate_per_mass>>,
) -> i32 {
    from_bus(out, steps, ddi, |m3_per_kg| hilum_rate_per_mass { m3_per_kg })
}

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_seed_to_bus(
    value: hilum_rate_per_seed,
    ddi: i32,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    to_bus(out, value, ddi)
}

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_seed_from_bus(
    steps: i32,
    ddi: i32,
    out: Option<&mut MaybeUninit<hilum_rate_per_seed>>,
) -> i32 {
    from_bus(out, steps, ddi, |m3_per_seed| hilum_rate_per_seed { m3_per_seed })
}

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_area_to_bus(
    value: hilum_rate_per_area,
    ddi: i32,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    to_bus(out, value, ddi)
}

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_rate_per_area_from_bus(
    steps: i32,
    ddi: i32,
    out: Option<&mut MaybeUninit<hilum_rate_per_area>>,
) -> i32 {
    from_bus(out, steps, ddi, |m3_per_m2| hilum_rate_per_area { m3_per_m2 })
}

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_dry_per_mass_to_bus(
    value: hilum_dry_per_mass,
    ddi: i32,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    to_bus(out, value, ddi)
}

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_dry_per_mass_from_bus(
    steps: i32,
    ddi: i32,
    out: Option<&mut MaybeUninit<hilum_dry_per_mass>>,
) -> i32 {
    from_bus(out, steps, ddi, |kg_per_kg| hilum_dry_per_mass { kg_per_kg })
}

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_active_per_mass_to_bus(
    value: hilum_active_per_mass,
    ddi: i32,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    to_bus(out, value, ddi)
}

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_active_per_mass_from_bus(
    steps: i32,
    ddi: i32,
    out: Option<&mut MaybeUninit<hilum_active_per_mass>>,
) -> i32 {
    from_bus(out, steps, ddi, |kg_per_kg| hilum_active_per_mass { kg_per_kg })
}
