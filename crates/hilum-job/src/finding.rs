//! Findings: what is wrong with a plan, or worth knowing.

use alloc::string::String;
use alloc::vec::Vec;

use crate::document::{Code, Finding, Severity};
use crate::plan::Worked;

/// Where findings gather.
#[derive(Debug, Default)]
pub(crate) struct Found(Vec<Finding>);

impl Found {
    pub(crate) fn add(
        &mut self,
        severity: Severity,
        code: Code,
        at: impl Into<String>,
        message: impl Into<String>,
    ) {
        self.0.push(Finding { severity, code, r#where: at.into(), message: message.into() });
    }

    /// The gravest first, else in the order in which they were found.
    pub(crate) fn sorted(mut self) -> Vec<Finding> {
        self.0.sort_by_key(|finding| finding.severity);
        self.0
    }
}

/// All findings, the gravest first, else in the order of the job.
pub(crate) fn findings(_worked: &Worked<'_, '_>) -> Vec<Finding> {
    let mut found = Found::default();
    found.add(Severity::Note, Code::TreatedSeed, "", crate::plan::CAUTIONS.join(" "));
    found.sorted()
}
