//! Amounts, flows and temperatures on the bus.

use core::mem::MaybeUninit;

use super::{from_bus, to_bus};
use crate::quantity::amount::{hilum_area, hilum_mass, hilum_seeds, hilum_share, hilum_volume};
use crate::quantity::content::hilum_density;
use crate::quantity::flow::{hilum_flow, hilum_seed_flow};
use crate::quantity::sown::{hilum_mass_per_area, hilum_mass_per_seed, hilum_sown};
use crate::quantity::temperature::hilum_temperature;

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_mass_to_bus(value: hilum_mass, ddi: i32, out: Option<&mut MaybeUninit<i32>>) -> i32 {
    to_bus(out, value, ddi)
}

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_mass_from_bus(
    steps: i32,
    ddi: i32,
    out: Option<&mut MaybeUninit<hilum_mass>>,
) -> i32 {
    from_bus(out, steps, ddi, |kg| hilum_mass { kg })
}

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_volume_to_bus(
    value: hilum_volume,
    ddi: i32,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    to_bus(out, value, ddi)
}

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_volume_from_bus(
    steps: i32,
    ddi: i32,
    out: Option<&mut MaybeUninit<hilum_volume>>,
) -> i32 {
    from_bus(out, steps, ddi, |m3| hilum_volume { m3 })
}

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seeds_to_bus(
    value: hilum_seeds,
    ddi: i32,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    to_bus(out, value, ddi)
}

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seeds_from_bus(
    steps: i32,
    ddi: i32,
    out: Option<&mut MaybeUninit<hilum_seeds>>,
) -> i32 {
    from_bus(out, steps, ddi, |seeds| hilum_seeds { seeds })
}

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_area_to_bus(value: hilum_area, ddi: i32, out: Option<&mut MaybeUninit<i32>>) -> i32 {
    to_bus(out, value, ddi)
}

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_area_from_bus(
    steps: i32,
    ddi: i32,
    out: Option<&mut MaybeUninit<hilum_area>>,
) -> i32 {
    from_bus(out, steps, ddi, |m2| hilum_area { m2 })
}

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_share_to_bus(
    value: hilum_share,
    ddi: i32,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    to_bus(out, value, ddi)
}

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_share_from_bus(
    steps: i32,
    ddi: i32,
    out: Option<&mut MaybeUninit<hilum_share>>,
) -> i32 {
    from_bus(out, steps, ddi, |one| hilum_share { one })
}

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_temperature_to_bus(
    value: hilum_temperature,
    ddi: i32,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    to_bus(out, value, ddi)
}

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_temperature_from_bus(
    steps: i32,
    ddi: i32,
    out: Option<&mut MaybeUninit<hilum_temperature>>,
) -> i32 {
    from_bus(out, steps, ddi, |celsius| hilum_temperature { celsius })
}

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_density_to_bus(
    value: hilum_density,
    ddi: i32,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    to_bus(out, value, ddi)
}

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_density_from_bus(
    steps: i32,
    ddi: i32,
    out: Option<&mut MaybeUninit<hilum_density>>,
) -> i32 {
    from_bus(out, steps, ddi, |kg_per_m3| hilum_density { kg_per_m3 })
}

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_flow_to_bus(
    value: hilum_seed_flow,
    ddi: i32,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    to_bus(out, value, ddi)
}

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_flow_from_bus(
    steps: i32,
    ddi: i32,
    out: Option<&mut MaybeUninit<hilum_seed_flow>>,
) -> i32 {
    from_bus(out, steps, ddi, |kg_per_s| hilum_seed_flow { kg_per_s })
}

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_flow_to_bus(value: hilum_flow, ddi: i32, out: Option<&mut MaybeUninit<i32>>) -> i32 {
    to_bus(out, value, ddi)
}

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_flow_from_bus(
    steps: i32,
    ddi: i32,
    out: Option<&mut MaybeUninit<hilum_flow>>,
) -> i32 {
    from_bus(out, steps, ddi, |m3_per_s| hilum_flow { m3_per_s })
}

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_mass_per_seed_to_bus(
    value: hilum_mass_per_seed,
    ddi: i32,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    to_bus(out, value, ddi)
}

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_mass_per_seed_from_bus(
    steps: i32,
    ddi: i32,
    out: Option<&mut MaybeUninit<hilum_mass_per_seed>>,
) -> i32 {
    from_bus(out, steps, ddi, |kg_per_seed| hilum_mass_per_seed { kg_per_seed })
}

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_mass_per_area_to_bus(
    value: hilum_mass_per_area,
    ddi: i32,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    to_bus(out, value, ddi)
}

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_mass_per_area_from_bus(
    steps: i32,
    ddi: i32,
    out: Option<&mut MaybeUninit<hilum_mass_per_area>>,
) -> i32 {
    from_bus(out, steps, ddi, |kg_per_m2| hilum_mass_per_area { kg_per_m2 })
}

/// The integer for the bus: value / resolution of the entry, rounded. Errors: as for hilum_ddi_encode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_sown_to_bus(value: hilum_sown, ddi: i32, out: Option<&mut MaybeUninit<i32>>) -> i32 {
    to_bus(out, value, ddi)
}

/// From an integer of the bus: integer x resolution of the entry; may be 0. Errors: as for hilum_ddi_decode;
/// HILUM_WRONG_DIMENSION when the entry measures something else.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_sown_from_bus(
    steps: i32,
    ddi: i32,
    out: Option<&mut MaybeUninit<hilum_sown>>,
) -> i32 {
    from_bus(out, steps, ddi, |seeds_per_m2| hilum_sown { seeds_per_m2 })
}
