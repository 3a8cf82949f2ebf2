//! What is wrong with the plan or worth knowing, the gravest first.

use std::collections::BTreeMap;

use hilum_job::document::{Code, Finding, Job, Plan, Severity};

use super::MARGIN;
use super::words::{distinct, listed};
use crate::table::labelled;

/// As many findings of one kind are shown; the plan document has all.
const SHOWN_OF_A_KIND: usize = 8;

/// All findings but the standing cautions and what is merely not given, which have their own places.
pub(super) fn lines(job: &Job, plan: &Plan) -> Vec<String> {
    let mut kinds: BTreeMap<(Severity, Code), Vec<&Finding>> = BTreeMap::new();
    for finding in &plan.findings {
        if !matches!(finding.code, Code::TreatedSeed | Code::MissingInput) {
            kinds.entry((finding.severity, finding.code)).or_default().push(finding);
        }
    }
    if kinds.is_empty() {
        return vec!["Nothing was found that stands against this plan.".to_owned()];
    }
    kinds.into_iter().flat_map(|((severity, code), findings)| kind(job, severity, code, &findings)).collect()
}

/// Findings of one kind: the first in full, of the others where they are.
fn kind(job: &Job, severity: Severity, code: Code, findings: &[&Finding]) -> Vec<String> {
    let (shown, rest) = findings.split_at_checked(SHOWN_OF_A_KIND).unwrap_or((findings, &[]));
    let mut lines: Vec<String> =
        shown.iter().flat_map(|finding| labelled(MARGIN, word(severity), &placed(job, finding))).collect();
    if !rest.is_empty() {
        let places: Vec<&str> = distinct(rest.iter().filter_map(|finding| place(job, finding)));
        let places = if places.is_empty() { String::new() } else { format!(": {}", listed(&places)) };
        let text = format!("... and {} more of {}{places}", rest.len(), name(code));
        lines.extend(labelled(MARGIN, word(severity), &text));
    }
    lines
}

/// A finding's message, with the name of its place where the message does not say it.
fn placed(job: &Job, finding: &Finding) -> String {
    match place(job, finding) {
        Some(place) if !finding.message.contains(place) => format!("{place}: {}", finding.message),
        _ => finding.message.clone(),
    }
}

/// The order, product, active or tank that a finding's pointer leads to.
fn place<'j>(job: &'j Job, finding: &Finding) -> Option<&'j str> {
    let mut steps = finding.r#where.split('/').skip(1);
    let (list, index) = (steps.next()?, steps.next()?.parse::<usize>().ok()?);
    match list {
        "orders" => job.orders.get(index).map(|order| order.order.as_str()),
        "treatments" => job.treatments.get(index).map(|treatment| treatment.product.as_str()),
        "actives" => job.actives.iter().flatten().nth(index).map(|active| active.active.as_str()),
        "tanks" => job.tanks.iter().flatten().nth(index).map(|tank| tank.tank.as_str()),
        _ => None,
    }
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

#[cfg(test)]
mod tests {
    use super::*;

    fn job() -> Job {
        Job::from_json(include_str!("../../jobs/dealer_day.json")).unwrap()
    }

    fn finding(severity: Severity, code: Code, r#where: &str, message: &str) -> Finding {
        Finding { severity, code, r#where: r#where.into(), message: message.into() }
    }

    fn plan_with(findings: Vec<Finding>) -> Plan {
        Plan { findings, ..hilum_job::plan(&job()).unwrap() }
    }

    #[test]
    fn the_gravest_stands_first_and_names_its_place() {
        let plan = plan_with(vec![
            finding(Severity::Note, Code::StorageTooWarm, "/orders/2/after", "Q-315 lies warm."),
            finding(Severity::Stop, Code::FrozenSeed, "/orders/1/temperature", "The seed is frozen."),
            finding(Severity::Note, Code::TreatedSeed, "", "Not food."),
        ]);
        assert_eq!(lines(&job(), &plan), ["STOP  Q-312: The seed is frozen.", "note  Q-315 lies warm."]);
    }

    #[test]
    fn many_of_a_kind_are_counted_and_placed() {
        let frozen = |i: usize| {
            let place = format!("/orders/{}/temperature", i % 6);
            finding(Severity::Stop, Code::FrozenSeed, &place, "The seed is frozen.")
        };
        let lines = lines(&job(), &plan_with((0..12).map(frozen).collect()));
        assert_eq!(lines.len(), SHOWN_OF_A_KIND + 1);
        assert_eq!(lines.last().unwrap(), "STOP  ... and 4 more of frozen_seed: Q-315, Q-316, Q-318, Q-320");
    }
}
