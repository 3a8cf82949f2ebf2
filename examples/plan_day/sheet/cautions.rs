//! The standing cautions, once.

use hilum_job::document::{Code, Job, Plan};

use super::MARGIN;
use super::words::distinct;
use crate::table::labelled;

/// Each caution of the record; those of the findings where there is no order.
pub(super) fn lines(_: &Job, plan: &Plan) -> Vec<String> {
    let of_record = distinct(plan.orders.iter().flat_map(|order| &order.record.cautions).map(String::as_str));
    let standing = plan.findings.iter().filter(|finding| finding.code == Code::TreatedSeed);
    let standing = standing.map(|finding| finding.message.as_str());
    let cautions = if of_record.is_empty() { distinct(standing) } else { of_record };
    cautions.into_iter().flat_map(|caution| labelled(MARGIN, "- ", caution)).collect()
}
