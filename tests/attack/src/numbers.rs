//! Numbers that hurt, and numbers that look like those of a shed.

use arbitrary::{Result, Unstructured};

/// Where arithmetic has its edges, and where the library draws its own.
const EDGES: [f64; 18] = [
    0.0,
    -0.0,
    f64::NAN,
    f64::INFINITY,
    f64::NEG_INFINITY,
    f64::MAX,
    f64::MIN,
    f64::MIN_POSITIVE,
    5e-324,
    1e-30,
    1e30,
    0.999e-30,
    1.001e30,
    -273.15,
    4_294_967_296.0,
    9_007_199_254_740_993.0,
    0.1,
    1.0,
];

/// Any number at all, often a plain one.
pub(crate) fn any(from: &mut Unstructured<'_>) -> Result<f64> {
    Ok(match from.arbitrary::<u8>()? % 8 {
        0 => EDGES[from.choose_index(EDGES.len())?],
        1 => f64::from_bits(from.arbitrary()?),
        2 => f64::from(from.arbitrary::<i16>()?) * 10_f64.powi(from.int_in_range(-33..=33)?),
        3 => f64::from(from.arbitrary::<i8>()?),
        _ => plain(from)?,
    })
}

/// A number of a shed: more than 0, over several magnitudes.
pub(crate) fn plain(from: &mut Unstructured<'_>) -> Result<f64> {
    let scale = [1e-6, 1e-3, 0.01, 0.1, 0.5, 1.0, 10.0, 1000.0][from.choose_index(8)?];
    Ok((f64::from(from.arbitrary::<u16>()?) + 1.0) * scale)
}

/// One of so many equal steps up to a most, and seldom a little more or less than one: well within the slack for counting
/// whole things, 1e-9, or well beyond it.
pub(crate) fn step(from: &mut Unstructured<'_>, steps: u8, most: f64) -> Result<f64> {
    let whole = f64::from(from.int_in_range(0..=steps)?);
    let nudge = match from.arbitrary::<u8>()? {
        0 => 1.0 + 1e-6,
        1 => 1.0 - 1e-6,
        2 => 1.0 + 1e-12,
        3 => 1.01,
        _ => 1.0,
    };
    Ok(most * whole / f64::from(steps) * nudge)
}
