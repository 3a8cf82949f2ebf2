//! Does the label allow it, and does it agree with itself?

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use hilum::quantity::Measure;
use hilum::rate::Agreement;

use super::words::{apart, names, order_name, orders, percent, product};
use super::{Found, Group};
use crate::document::{Code, Severity};
use crate::model::ask::shown;
use crate::places::Places;
use crate::plan::draft::{Dose, Line};
use crate::plan::{Worked, clock};
use crate::problem::quoted;

pub(super) fn findings(worked: &Worked<'_, '_>, found: &mut Found) {
    crops(worked, found);
    for (t, line) in worked.draft.lines.iter().enumerate() {
        above_most(worked, t, line, found);
        below_least(worked, t, line, found);
        statements(worked, t, line, found);
        expired(worked, t, line, found);
    }
}

/// Each order whose crop is missing from the labels of what it gets.
fn crops(worked: &Worked<'_, '_>, found: &mut Found) {
    let draft = &worked.draft;
    let mut crops: Vec<Vec<String>> = Vec::new();
    for line in &draft.lines {
        let mut own = Vec::new();
        for crop in line.treatment.doc.crops.as_deref().unwrap_or_default() {
            own.push(plain(crop));
        }
        crops.push(own);
    }
    let mut labels: Vec<Places<'_>> = Vec::new();
    for crops in &crops {
        labels.push(Places::of(&|i| Some(crops.get(i)?.as_str())));
    }
    for (o, order) in draft.model.orders.iter().enumerate() {
        let Some(crop) = &order.doc.crop else { continue };
        let plain = plain(crop);
        let mut strangers = Vec::new();
        for (t, line, _) in draft.on_order(o) {
            if labels.get(t).is_some_and(|label| !label.is_empty() && label.get(&plain).is_none()) {
                strangers.push(line.treatment.doc.product.as_str());
            }
        }
        if strangers.is_empty() {
            continue;
        }
        let message = format!(
            "The label of {} does not name {}, the crop of order {}. Leave it off this order: the label is the law.",
            names(&strangers),
            quoted(crop),
            quoted(order_name(worked, o)),
        );
        found.add(Severity::Stop, Code::CropNotOnLabel, format!("/orders/{o}/crop"), message);
    }
}

/// A crop's name without regard to capitals, of the letters a to z: the table for all others is 8 kB of a page's script.
fn plain(crop: &str) -> String {
    crop.trim().to_ascii_lowercase()
}

fn above_most(worked: &Worked<'_, '_>, t: usize, line: &Line<'_, '_>, found: &mut Found) {
    let mut above = Group::default();
    for dose in &line.doses {
        if let Some(most) = dose.max.filter(|most| dose.rate.exceeds(*most)) {
            above.add(dose.order, most.differs(dose.rate), (dose.rate, most));
        }
    }
    let Some((places, (rate, most))) = above.told() else { return };
    let (rate, most) = apart(&rate.out(worked.draft.units()), &most.out(worked.draft.units()));
    let message = format!(
        "{} at {rate} on {} is above the most that its label allows, {most}. Lower the dose: the label is the law.",
        product(worked, t),
        orders(worked, &places),
    );
    found.add(Severity::Stop, Code::AboveMaxRate, format!("/treatments/{t}/max_rate"), message);
}

fn below_least(worked: &Worked<'_, '_>, t: usize, line: &Line<'_, '_>, found: &mut Found) {
    let mut below = Group::default();
    for dose in &line.doses {
        if let Some(least) = dose.min.filter(|least| dose.rate.falls_below(*least)) {
            below.add(dose.order, -least.differs(dose.rate), (dose.rate, least));
        }
    }
    let Some((places, (rate, least))) = below.told() else { return };
    let (rate, least) = apart(&rate.out(worked.draft.units()), &least.out(worked.draft.units()));
    let message = format!(
        "{} at {rate} on {} is below the least on its label, {least}, and may not work. Raise the dose to what the label states.",
        product(worked, t),
        orders(worked, &places),
    );
    found.add(Severity::Warn, Code::BelowMinRate, format!("/treatments/{t}/min_rate"), message);
}

/// The label's other statements of the dose, at each order's own size.
fn statements(worked: &Worked<'_, '_>, t: usize, line: &Line<'_, '_>, found: &mut Found) {
    for (s, doc) in line.treatment.doc.also_stated.as_deref().unwrap_or_default().iter().enumerate() {
        let (mut apart, mut far) = (Group::default(), Group::default());
        for dose in &line.doses {
            let Some((stated, _)) = dose.also.get(s) else { continue };
            let differs = dose.rate.differs(*stated);
            match dose.rate.agreement(*stated) {
                Agreement::Close => {}
                Agreement::Apart => apart.add(dose.order, differs.abs(), differs),
                Agreement::FarApart => far.add(dose.order, differs.abs(), differs),
            }
        }
        let statement = format!("{}: the label's {}", product(worked, t), shown(doc));
        let governing = governing(line);
        let at = format!("/treatments/{t}/also_stated/{s}");
        if let Some((places, differs)) = far.told() {
            let message = format!(
                "{statement} is {} its {governing} at the seed size of {}. Read the label again: one of the two may be wrong.",
                aside(differs),
                orders(worked, &places),
            );
            found.add(Severity::Warn, Code::StatementsDisagree, &*at, message);
        }
        if let Some((places, differs)) = apart.told() {
            let message = format!(
                "{statement} is {} its {governing} at the seed size of {}; labels round, and are written for average seed. The plan goes by {governing}. Check that the label means that one.",
                aside(differs),
                orders(worked, &places),
            );
            found.add(Severity::Note, Code::StatementsDisagree, at, message);
        }
    }
}

/// The statement that the plan goes by, as it is written.
fn governing(line: &Line<'_, '_>) -> String {
    let doc = line.treatment.doc;
    let active = doc.active_rate.as_ref().map(|active| &active.rate);
    doc.rate.as_ref().or(active).or(doc.cells.as_ref()).map_or_else(String::new, shown)
}

fn aside(differs: f64) -> String {
    let side = if differs > 0.0 { "above" } else { "below" };
    format!("{} {side}", percent(differs.abs()))
}

/// Any seed treated after the product's last day; without shifts no day of treating is known.
fn expired(worked: &Worked<'_, '_>, t: usize, line: &Line<'_, '_>, found: &mut Found) {
    let Some(expires) = line.treatment.expires else { return };
    let last = last_treated(worked, line).and_then(|seconds| clock::day(&worked.draft, seconds));
    let Some(last) = last.filter(|last| *last > expires) else { return };
    let message = format!(
        "{} expires on {expires}, and seed is still treated with it on {last}. Use a fresh lot: do not use it after its last day.",
        product(worked, t),
    );
    found.add(Severity::Stop, Code::ProductExpired, format!("/treatments/{t}/expires"), message);
}

/// When the last seed is treated with a product, on the planner's clock.
fn last_treated(worked: &Worked<'_, '_>, line: &Line<'_, '_>) -> Option<f64> {
    let batches = &worked.batches;
    let gets = |order: usize| line.doses.binary_search_by_key(&order, |dose: &Dose| dose.order).is_ok();
    let done = |tank: usize| {
        let mixes = batches.of_tank(tank);
        let ends = mixes.filter(|(_, portions)| portions.last().is_some_and(|last| gets(last.order)));
        ends.filter_map(|(mix, _)| Some(mix.times?.done_at.to_base())).reduce(f64::max)
    };
    if let Some(tank) = line.treatment.tank {
        // All seed of a mix gets all that is in it.
        return done(tank);
    }
    // Applied dry: known from the mixes that end with its orders, and from when those begin.
    let mixed = (0..worked.tanks.len()).filter_map(done);
    let begun = line.doses.iter().filter_map(|dose| batches.first_seed.get(dose.order).copied().flatten());
    mixed.chain(begun).reduce(f64::max)
}
