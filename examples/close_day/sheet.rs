//! The sheet: an account as someone files it with the day's papers.

mod applied;
mod findings;
mod record;
mod treated;

use hilum_job::document::{Account, Out, Run};
use textwrap::core::display_width;

use crate::number::{self, JOIN, percent};
use crate::table::{PAGE, indent, labelled, plain};

/// What a section answers, and its lines: none where the account has nothing to say.
type Section = (&'static str, fn(&Account) -> Vec<String>);

/// In the order in which someone asks at the end of a day.
const SECTIONS: [Section; 10] = [
    ("See to this first", findings::lines),
    ("How much was treated", treated::lines),
    ("What each tank gave", applied::tanks),
    ("What went on dry", applied::dry),
    ("How much of each product", applied::products),
    ("How much active", applied::actives),
    ("How much is alive", applied::living),
    ("For the record", record::lines),
    ("What more could be told", findings::missing),
    ("Cautions", findings::cautions),
];

/// Behind the margin of a section.
const MARGIN: usize = 2;

/// The whole sheet.
pub(crate) fn write(run: &Run, account: &Account) -> String {
    let mut lines = head(run, account);
    for (title, section) in SECTIONS {
        let body = section(account);
        if !body.is_empty() {
            lines.extend([String::new(), heading(title)]);
            lines.extend(indent(body, MARGIN));
        }
    }
    lines.push(String::new());
    let trimmed: Vec<&str> = lines.iter().map(|line| line.trim_end()).collect();
    trimmed.join("\n").replace(JOIN, " ")
}

/// Title and size of the run.
fn head(run: &Run, account: &Account) -> Vec<String> {
    let mut lines = account.title.as_deref().map(|title| labelled(0, "", title)).unwrap_or_default();
    let unit = account.orders.first().map_or("", |order| order.mass.unit.as_ref());
    let mass = Out {
        value: account.orders.iter().map(|order| order.mass.value).sum(),
        unit: unit.to_owned().into(),
    };
    let (done, all) = (account.orders.len(), run.job.orders.len());
    let summary = format!(
        "{done} of {all} orders run: {} of seed. Rates are right within {}. Accounted for with hilum {}.",
        number::seed(&mass),
        percent(account.tolerance),
        plain(&account.hilum),
    );
    lines.extend(labelled(0, "", &summary));
    lines
}

/// A title in a rule across the page.
fn heading(title: &str) -> String {
    let rule = PAGE.saturating_sub(display_width(title)).saturating_sub(4);
    format!("-- {title} {}", "-".repeat(rule))
}

/// Names in their first order, each once.
fn distinct<'a>(names: impl Iterator<Item = &'a str>) -> Vec<&'a str> {
    let mut seen = Vec::new();
    for name in names {
        if !seen.contains(&name) {
            seen.push(name);
        }
    }
    seen
}

/// The unit of the first of some quantities, for a column's title.
fn unit<'a>(mut outs: impl Iterator<Item = &'a Out>) -> &'a str {
    outs.next().map_or("", |out| out.unit.as_ref())
}

/// `+1.3 %`, and `0.0 %` without a sign.
fn signed(share: f64) -> String {
    let shown = format!("{:+.1}", share * 100.0);
    let zero = shown.trim_start_matches(['+', '-']);
    format!("{}{JOIN}%", if zero == "0.0" { zero } else { shown.as_str() })
}
