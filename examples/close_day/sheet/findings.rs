//! What is wrong with what was applied or worth knowing, the gravest first.

use hilum_job::document::{Account, Code, Finding, Severity};

use super::{MARGIN, distinct};
use crate::table::labelled;

/// As many findings are shown; the account document has all.
const SHOWN: usize = 24;

/// All findings but the standing cautions and what is merely not given, which have their own places.
pub(super) fn lines(account: &Account) -> Vec<String> {
    let findings: Vec<&Finding> = account
        .findings
        .iter()
        .filter(|f| !matches!(f.code, Code::TreatedSeed | Code::MissingInput))
        .collect();
    if findings.is_empty() {
        return vec!["Nothing was found that stands against what was applied.".to_owned()];
    }
    let shown = findings.iter().take(SHOWN);
    let mut lines: Vec<String> =
        shown.flat_map(|finding| labelled(MARGIN, word(finding.severity), &finding.message)).collect();
    lines.extend(rest(findings.len()));
    lines
}

/// What the run does not say and what saying it would enable.
pub(super) fn missing(account: &Account) -> Vec<String> {
    let missing = account.findings.iter().filter(|finding| finding.code == Code::MissingInput);
    let messages = distinct(missing.map(|finding| finding.message.as_str()));
    let shown = messages.iter().take(SHOWN);
    let mut lines: Vec<String> = shown.flat_map(|message| labelled(MARGIN, "- ", message)).collect();
    lines.extend(rest(messages.len()));
    lines
}

/// Each standing caution, once.
pub(super) fn cautions(account: &Account) -> Vec<String> {
    let cautions = account.orders.iter().flat_map(|order| &order.record.cautions);
    let cautions = distinct(cautions.map(String::as_str));
    cautions.into_iter().flat_map(|caution| labelled(MARGIN, "- ", caution)).collect()
}

fn rest(count: usize) -> Option<String> {
    (count > SHOWN).then(|| format!("... and {} more", count.saturating_sub(SHOWN)))
}

/// Written so that the gravest stands out without colour.
fn word(severity: Severity) -> &'static str {
    match severity {
        Severity::Stop => "STOP  ",
        Severity::Warn => "Warn  ",
        Severity::Note => "note  ",
    }
}
