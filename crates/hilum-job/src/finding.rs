//! Findings: what is wrong with a plan, or worth knowing.
//!
//! What counts as too much stands in the core, beside the calculation; what it is called, how grave it is
//! and what to do about it stand here.

mod active;
mod compatibility;
mod label;
mod liquid;
mod living;
mod missing;
mod seed;
mod supply;
mod tank;
pub(crate) mod words;

use alloc::string::String;
use alloc::vec::Vec;

use crate::document::{Code, Finding, Severity};
use crate::plan::Worked;

/// Where findings gather, by severity.
#[derive(Debug, Default)]
pub(crate) struct Found {
    stops: Vec<Finding>,
    warnings: Vec<Finding>,
    notes: Vec<Finding>,
}

impl Found {
    pub(crate) fn add(
        &mut self,
        severity: Severity,
        code: Code,
        at: impl Into<String>,
        message: impl Into<String>,
    ) {
        let list = match severity {
            Severity::Stop => &mut self.stops,
            Severity::Warn => &mut self.warnings,
            Severity::Note => &mut self.notes,
        };
        list.push(Finding { severity, code, r#where: at.into(), message: message.into() });
    }

    /// The gravest first, else in the order in which they were found.
    pub(crate) fn sorted(mut self) -> Vec<Finding> {
        self.stops.append(&mut self.warnings);
        self.stops.append(&mut self.notes);
        self.stops
    }
}

/// All findings, the gravest first, else in the order of the questions below and of the job.
pub(crate) fn findings(worked: &Worked<'_, '_>) -> Vec<Finding> {
    let mut found = Found::default();
    let questions = [
        seed::findings,
        compatibility::findings,
        living::findings,
        label::findings,
        active::findings,
        liquid::findings,
        supply::findings,
        tank::findings,
        missing::findings,
    ];
    for question in questions {
        question(worked, &mut found);
    }
    found.add(Severity::Note, Code::TreatedSeed, "", crate::plan::CAUTIONS.join(" "));
    found.sorted()
}

/// Orders with one and the same fault, and the worst of them.
#[derive(Debug)]
struct Group<T> {
    orders: Vec<usize>,
    worst: Option<(f64, T)>,
}

impl<T> Default for Group<T> {
    fn default() -> Self {
        Self { orders: Vec::new(), worst: None }
    }
}

impl<T> Group<T> {
    /// An order, how bad it is, and what to say of it if none is worse.
    fn add(&mut self, order: usize, bad: f64, say: T) {
        self.orders.push(order);
        if self.worst.as_ref().is_none_or(|(worst, _)| bad > *worst) {
            self.worst = Some((bad, say));
        }
    }

    /// The orders, and what is to be said of the worst; nothing where there is no fault.
    fn told(self) -> Option<(Vec<usize>, T)> {
        self.worst.map(|(_, say)| (self.orders, say))
    }
}
