//! The sheet: a plan as someone hangs it on the treater.

mod alive;
mod allowed;
mod cautions;
mod cost;
mod day;
mod doses;
mod dry;
mod findings;
mod group;
mod open;
mod pour;
mod pumps;
mod record;
mod seed;
mod words;

use hilum_job::document::{Job, Plan};
use textwrap::core::display_width;

use crate::number::JOIN;
use crate::table::{PAGE, indent, labelled, plain};

/// What a section answers, and its lines: none where the plan has nothing to say.
type Section = (&'static str, fn(&Job, &Plan) -> Vec<String>);

/// In the order in which a treater asks.
const SECTIONS: [Section; 14] = [
    ("See to this first", findings::lines),
    ("How much seed", seed::lines),
    ("What to open", open::lines),
    ("What to pour", pour::lines),
    ("What goes on dry", dry::lines),
    ("How fast to pump", pumps::lines),
    ("When", day::lines),
    ("How much on the seed", doses::lines),
    ("How much is alive", alive::lines),
    ("What is allowed", allowed::lines),
    ("What it costs", cost::lines),
    ("For the tag and the record", record::lines),
    ("What more could be told", findings::missing),
    ("Cautions", cautions::lines),
];

/// Behind the margin of a section.
const MARGIN: usize = 2;

/// The whole sheet.
pub(crate) fn write(job: &Job, plan: &Plan) -> String {
    let mut lines = head(job, plan);
    for (title, section) in SECTIONS {
        let body = section(job, plan);
        if !body.is_empty() {
            lines.extend([String::new(), heading(title)]);
            lines.extend(indent(body, MARGIN));
        }
    }
    lines.push(String::new());
    let trimmed: Vec<&str> = lines.iter().map(|line| line.trim_end()).collect();
    trimmed.join("\n").replace(JOIN, " ")
}

/// Title and size of the job.
fn head(job: &Job, plan: &Plan) -> Vec<String> {
    let mut lines = plan.title.as_deref().map(|title| labelled(0, "", title)).unwrap_or_default();
    let unit = plan.orders.first().map_or("", |order| order.mass.unit.as_ref());
    let mass = hilum_job::document::Out {
        value: plan.orders.iter().map(|order| order.mass.value).sum(),
        unit: unit.to_owned().into(),
    };
    let crops = words::distinct(job.orders.iter().filter_map(|order| order.crop.as_deref()));
    let of = if crops.is_empty() { "seed".to_owned() } else { crops.join(" and ") };
    let summary = format!(
        "{} and {}: {} of {of}. Planned with hilum {}.",
        words::counted(plan.orders.len(), "order"),
        words::counted(plan.treatments.len(), "product"),
        crate::number::seed(&mass),
        plain(&plan.hilum),
    );
    lines.extend(labelled(0, "", &summary));
    lines
}

/// A title in a rule across the page.
fn heading(title: &str) -> String {
    let rule = PAGE.saturating_sub(display_width(title)).saturating_sub(4);
    format!("-- {title} {}", "-".repeat(rule))
}
