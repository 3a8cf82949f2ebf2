//! The best plan.

/// A plan up to a stop.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Label {
    pub(super) position: f64,
}
