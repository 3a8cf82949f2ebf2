//! What is wrong with the plan or worth knowing, the gravest first.

use std::collections::BTreeMap;

use hilum_job::document::{Code, Finding, Job, Plan, Severity};

use super::MARGIN;
use super::words::distinct;
use crate::table::labelled;

/// As many findings of one kind are shown; the plan document has all.
const SHOWN_OF_A_KIND: usize = 8;

/// All findings but the standing cautions and what is merely not given, which have their own places.
pub(super) fn lines(_: &Job, plan: &Plan) -> Vec<String> {
    let mut findings: Vec<&Finding> =
        plan.findings.iter().filter(|f| !matches!(f.code, Code::TreatedSeed | Code::MissingInput)).collect();
    findings.sort_by_key(|finding| finding.severity);
    if findings.is_empty() {
        return vec!["Nothing was found that stands against this plan.".to_owned()];
    }
    let mut lines = Vec::new();
    let mut kinds: BTreeMap<(Severity, Code), usize> = BTreeMap::new();
    for finding in findings {
        let before = kinds.entry((finding.severity, finding.code)).or_default();
        if *before < SHOWN_OF_A_KIND {
            lines.extend(labelled(MARGIN, word(finding.severity), &finding.message));
        }
        *before = before.saturating_add(1);
    }
    for ((severity, code), count) in kinds.into_iter().filter(|(_, count)| *count > SHOWN_OF_A_KIND) {
        let rest = count.saturating_sub(SHOWN_OF_A_KIND);
        lines.extend(labelled(MARGIN, word(severity), &format!("... and {rest} more of {}", name(code))));
    }
    lines
}

/// What the job does not say and what saying it would enable.
pub(super) fn missing(_: &Job, plan: &Plan) -> Vec<String> {
    let missing = plan.findings.iter().filter(|finding| finding.code == Code::MissingInput);
    let messages = distinct(missing.map(|finding| finding.message.as_str()));
    let rest = messages.len().saturating_sub(SHOWN_OF_A_KIND);
    let mut lines: Vec<String> =
        messages.iter().take(SHOWN_OF_A_KIND).flat_map(|message| labelled(MARGIN, "- ", message)).collect();
    if rest > 0 {
        lines.push(format!("... and {rest} more"));
    }
    lines
}

/// A kind of finding as the plan document writes it.
fn name(code: Code) -> String {
    serde_json::to_value(code).ok().and_then(|name| name.as_str().map(str::to_owned)).unwrap_or_default()
}

/// Written so that the gravest stands out without colour.
fn word(severity: Severity) -> &'static str {
    match severity {
        Severity::Stop => "STOP  ",
        Severity::Warn => "Warn  ",
        Severity::Note => "note  ",
    }
}
