//! The standing cautions, once.

use hilum_job::document::{Code, Job, Plan};

use super::MARGIN;
use super::words::distinct;
use crate::table::labelled;

/// Each caution of the plan.
pub(super) fn lines(_: &Job, plan: &Plan) -> Vec<String> {
    let standing = plan.findings.iter().filter(|finding| finding.code == Code::TreatedSeed);
    let on_tags = plan.orders.iter().flat_map(|order| &order.record.cautions);
    let all = standing.map(|finding| finding.message.as_str()).chain(on_tags.map(String::as_str));
    distinct(all).into_iter().flat_map(|caution| labelled(MARGIN, "- ", caution)).collect()
}
