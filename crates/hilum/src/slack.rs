//! When is a difference only the noise of floating point?
//!
//! Limits, ceilings and choices look away from differences below [`SLACK`], so that 3.0000000001 sets are
//! three sets, and a dose of exactly the maximum is allowed however its units were converted.

use crate::math;

/// Relative differences up to this do not count.
pub(crate) const SLACK: f64 = 1e-9;

/// More than, beyond the slack. Neither may be negative.
pub(crate) fn above(value: f64, most: f64) -> bool {
    value > most * (1.0 + SLACK)
}

/// Less than, beyond the slack. Neither may be negative.
pub(crate) fn below(value: f64, least: f64) -> bool {
    value < least * (1.0 - SLACK)
}

/// The whole number at or above, but for the slack.
pub(crate) fn ceil(value: f64) -> f64 {
    math::ceil(value * (1.0 - SLACK))
}
