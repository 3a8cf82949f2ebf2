//! What is measured: rows of a calculation and its rival.
//!
//! `cargo xtask bench` measures both sides of a row in turn and tells their ratio; `cargo bench -p hilum-benches` has
//! criterion measure each side by itself.
#![expect(missing_docs, reason = "read by two programs beside it")]

mod arrays;
mod plans;
mod rival;
mod scalar;

/// One side of a row.
pub type Work = Box<dyn FnMut()>;

/// A calculation, what it is measured against, and what is wanted of it.
pub struct Row {
    pub what: String,
    pub ours: Work,
    pub rival: Option<(&'static str, Work)>,
    /// As the issue on speed asks: a ratio, or a time.
    pub reach: &'static str,
}

impl Row {
    fn against(
        what: impl Into<String>,
        ours: impl FnMut() + 'static,
        (name, rival): (&'static str, impl FnMut() + 'static),
        reach: &'static str,
    ) -> Self {
        Self { what: what.into(), ours: Box::new(ours), rival: Some((name, Box::new(rival))), reach }
    }

    fn alone(what: impl Into<String>, ours: impl FnMut() + 'static, reach: &'static str) -> Self {
        Self { what: what.into(), ours: Box::new(ours), rival: None, reach }
    }
}

/// The processor's time that this thread has used: what other programs take of the machine does not count.
#[must_use]
pub fn seconds() -> f64 {
    rival::thread_seconds()
}

/// The jobs that are planned, and what they are.
#[must_use]
pub fn jobs() -> Vec<(String, String)> {
    plans::jobs().map(|(what, _, shed)| (what, shed.text())).collect()
}

/// All rows, in the order of the table.
#[must_use]
pub fn rows() -> Vec<Row> {
    let mut rows = scalar::rows();
    rows.extend(arrays::rows());
    rows.extend(plans::rows());
    rows
}
