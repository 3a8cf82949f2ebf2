//! The tanks and what goes into them, mix by mix.

use std::collections::BTreeSet;

use hilum_job::document::{Batch, Job, Out, Plan, PlannedTank, Pour, RecipePart, Tank};

use super::MARGIN;
use super::words::{given, orders};
use crate::clock::{self, rounded_up};
use crate::number::{joined, percent, product, seed};
use crate::table::Align::{Left, Right};
use crate::table::{Table, indent, labelled, plain};

/// Of what stands under a tank, and again of what stands under a mix.
const INDENT: usize = 2;

/// Each tank, its recipes, its mixes, then what must dry in between.
pub(super) fn lines(job: &Job, plan: &Plan) -> Vec<String> {
    let mut lines = Vec::new();
    for planned in &plan.tanks {
        let Some(tank) = job.tanks.iter().flatten().find(|tank| tank.tank == planned.tank) else { continue };
        if planned.batches.is_empty() {
            continue;
        }
        if !lines.is_empty() {
            lines.push(String::new());
        }
        lines.extend(tank_lines(job, plan, tank, planned));
    }
    lines.extend(drying(job, plan));
    lines
}

fn tank_lines(job: &Job, plan: &Plan, tank: &Tank, planned: &PlannedTank) -> Vec<String> {
    let mut facts = vec![format!("holds {}", given(&tank.capacity))];
    facts.extend(tank.hold_up.as_ref().map(|hold_up| format!("lines {}", given(hold_up))));
    facts.push(if tank.agitated == Some(true) { "keep agitated" } else { "no agitator" }.to_owned());
    let mut lines = labelled(MARGIN, "", &format!("{}: {}", planned.tank.to_uppercase(), facts.join(", ")));
    for recipe in &planned.recipes {
        let parts: Vec<String> = recipe.parts.iter().map(part).collect();
        let text = format!("{} (by volume, {})", parts.join(" + "), orders(job, &recipe.orders));
        lines.extend(indent(labelled(MARGIN + INDENT, "recipe  ", &text), INDENT));
    }
    for (first, last, batch) in alike(&planned.batches) {
        lines.extend(indent(mix_lines(plan, first, last, batch), INDENT));
    }
    lines
}

fn part(part: &RecipePart) -> String {
    format!("{} {}", percent(part.share), part.product.as_deref().map_or("water".to_owned(), plain))
}

/// Mixes that follow each other and read the same, as one entry: first number, last number, mix.
fn alike(batches: &[Batch]) -> Vec<(u32, u32, &Batch)> {
    let mut groups: Vec<(u32, u32, &Batch)> = Vec::new();
    for batch in batches {
        match groups.last_mut() {
            Some((_, last, mix)) if batch.mix_at.is_none() && content(mix) == content(batch) => {
                *last = batch.number;
            }
            _ => groups.push((batch.number, batch.number, batch)),
        }
    }
    groups
}

/// What is read of a mix without instants.
fn content(batch: &Batch) -> (Vec<String>, String) {
    (batch.pour.iter().map(|pour| product(&pour.volume)).collect(), runs(batch))
}

fn mix_lines(plan: &Plan, first: u32, last: u32, batch: &Batch) -> Vec<String> {
    let number =
        if first == last { format!("mix {first}") } else { format!("mixes {first} to {last}, each") };
    let mut lines = labelled(MARGIN + INDENT, &format!("{number}   "), &times(plan, batch));
    let mut table =
        Table::new([(Left, ""), (Right, ""), (Right, ""), (Left, "")]).beside(MARGIN + INDENT + INDENT);
    for (i, pour) in batch.pour.iter().enumerate() {
        table.row(pour_cells(i, pour, batch));
    }
    table.row(["= in the tank".to_owned(), product(&batch.mixed), String::new(), rest(batch)]);
    lines.extend(indent(table.lines(), INDENT));
    lines.extend(indent(labelled(MARGIN + INDENT + INDENT, "runs ", &runs(batch)), INDENT));
    lines
}

/// When the mix is made and how long it is good; the day where the plan has several.
fn times(plan: &Plan, batch: &Batch) -> String {
    let read = |text: &Option<String>| text.as_deref().and_then(clock::read);
    let (Some(begun), Some(ready), Some(done)) =
        (read(&batch.mix_at), read(&batch.ready_at), read(&batch.done_at))
    else {
        return String::new();
    };
    let all = plan.tanks.iter().flat_map(|tank| &tank.batches).filter_map(|batch| read(&batch.mix_at));
    let one_day = all.map(|instant| instant.date_naive()).all(|day| day == begun.date_naive());
    let day = if one_day { String::new() } else { begun.format("%a %-d %b ").to_string() };
    let seen = |instant| clock::time_seen_from(instant, begun.date_naive());
    // Nobody is to run a mix before it is ready, or after its time.
    let ready = seen(rounded_up(ready));
    let text = format!("begin {day}{}   ready {ready}   empty {}", clock::time(begun), seen(done));
    read(&batch.use_by).map_or(text.clone(), |use_by| format!("{text}   USE BY {}", seen(use_by)))
}

fn pour_cells(i: usize, pour: &Pour, batch: &Batch) -> [String; 4] {
    let name = pour.product.as_deref().unwrap_or("water");
    let mass = pour.mass.as_ref().map(|mass| format!("= {}", product(mass))).unwrap_or_default();
    // Only a living product goes in by whole sets, and it is poured once.
    let sets: Vec<String> = batch.sets.iter().map(|set| format!("{} x {}", set.sets, set.pack)).collect();
    let sets = if pour.product.is_some() { sets.join(" + ") } else { String::new() };
    [format!("{}. {}", i.saturating_add(1), plain(name)), product(&pour.volume), mass, sets]
}

/// What of a mix does not go on seed.
fn rest(batch: &Batch) -> String {
    let mut parts = Vec::new();
    if counts(&batch.hold_up, &batch.mixed) {
        parts.push(format!("{} fill the lines", product(&batch.hold_up)));
    }
    if counts(&batch.discarded, &batch.mixed) {
        parts.push(format!("{} thrown away", product(&batch.discarded)));
    }
    parts.join(", ")
}

/// Whether a volume is more than what rounding leaves.
fn counts(volume: &Out, of: &Out) -> bool {
    volume.value > of.value * 1e-9
}

fn runs(batch: &Batch) -> String {
    let orders: Vec<String> =
        batch.orders.iter().map(|order| joined(&order.order, &seed(&order.mass))).collect();
    orders.join(", ")
}

/// The orders that get a product.
fn orders_with<'p>(plan: &'p Plan, product: &str) -> BTreeSet<&'p str> {
    let planned = plan.treatments.iter().filter(|planned| planned.product == product);
    planned.flat_map(|planned| &planned.orders).map(|dose| dose.order.as_str()).collect()
}

/// Where a maker wants the seed dry between two products.
fn drying(job: &Job, plan: &Plan) -> Vec<String> {
    let mut lines = Vec::new();
    for treatment in &job.treatments {
        for declared in treatment.with_living.iter().flatten().filter(|with| with.dry_between == Some(true)) {
            let [one, other] = [&treatment.product, &declared.living].map(|name| orders_with(plan, name));
            let both: Vec<&str> = one.intersection(&other).copied().collect();
            if !both.is_empty() {
                let pair = format!("{} and {}", plain(&treatment.product), plain(&declared.living));
                let text = format!("let the seed dry between {pair}: {}", orders(job, &both));
                lines.extend(labelled(MARGIN, "DRY FIRST  ", &text));
            }
        }
    }
    if !lines.is_empty() {
        lines.insert(0, String::new());
    }
    lines
}
