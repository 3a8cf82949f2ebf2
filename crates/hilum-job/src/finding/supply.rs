//! Is there enough product, and enough time?

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use hilum::quantity::{Mass, Measure};

use super::Found;
use super::words::{apart, duration, order_name, percent, product};
use crate::document::{Code, Severity};
use crate::list::keep;
use crate::plan::draft::Line;
use crate::plan::out::SEED_MASS;
use crate::plan::pack::{Size, count};
use crate::plan::{Worked, batch};
use crate::problem::quoted;

pub(super) fn findings(worked: &Worked<'_, '_>, found: &mut Found) {
    out_of_time(worked, found);
    let lines = worked.draft.lines.iter().zip(&worked.sizes).zip(&worked.opened).enumerate();
    for (t, ((line, sizes), opened)) in lines {
        coverage(worked, t, line, sizes, found);
        let Some(opened) = opened else { continue };
        if opened.supply == hilum::pack::Supply::Short {
            let message = short(worked, t, line, sizes);
            found.add(Severity::Stop, Code::ShortOfProduct, format!("/treatments/{t}/packs"), message);
        } else if opened.almost {
            let message = format!(
                "{}: one of the sets to open is there for at most {} of the seed. Check the orders' weights and sizes before you open it.",
                product(worked, t),
                percent(hilum::pack::ALMOST_COVERED),
            );
            found.add(Severity::Note, Code::AlmostCovered, format!("/treatments/{t}/packs"), message);
        }
    }
    bounds(worked, found);
}

fn out_of_time(worked: &Worked<'_, '_>, found: &mut Found) {
    let Some(treated) = worked.batches.falls_short else { return };
    let draft = &worked.draft;
    let units = draft.units();
    let all: f64 = draft.model.orders.iter().map(|order| order.seed.mass.value).sum();
    let mut before = 0.0;
    // The orders run in turn, so the first that is not finished is where the time ran out.
    let unfinished = draft.model.orders.iter().position(|order| {
        before += order.seed.mass.value;
        before > treated.value
    });
    let unfinished = unfinished.unwrap_or_default();
    let missing = missing_time(worked, unfinished, before - treated.value);
    let (treated, all) = apart(&SEED_MASS.of(treated, units), &SEED_MASS.of(Mass::from_base(all), units));
    let message = format!(
        "The shifts are too short: {treated} of {all} of seed can be treated, and order {} is not finished. Add more than {} of shift time, or move orders to another day.",
        quoted(order_name(worked, unfinished)),
        duration(missing),
    );
    found.add(Severity::Stop, Code::OutOfTime, "/work", message);
}

/// Running time of the seed that is left, and the changes between its orders.
fn missing_time(worked: &Worked<'_, '_>, unfinished: usize, left_of_it: f64) -> f64 {
    let model = &worked.draft.model;
    let running = |(place, order): (usize, &crate::model::order::Order<'_>)| {
        let mass = if place == unfinished { left_of_it } else { order.seed.mass.value };
        let changeover = if place == unfinished { 0.0 } else { model.treater.changeover.value };
        batch::speed(&worked.draft, order).map_or(0.0, |speed| mass / speed.value) + changeover
    };
    model.orders.iter().enumerate().skip(unfinished).map(running).sum()
}

fn coverage(worked: &Worked<'_, '_>, t: usize, line: &Line<'_, '_>, sizes: &[Size], found: &mut Found) {
    for (p, (pack, size)) in line.treatment.packs.iter().zip(sizes).enumerate() {
        let Some((stated, computed)) = size.both.filter(|(stated, computed)| stated.disagrees(*computed))
        else {
            continue;
        };
        let off = stated.difference(computed);
        let units = worked.draft.units();
        let (stated, computed) =
            apart(&SEED_MASS.of(stated.get(), units), &SEED_MASS.of(computed.get(), units));
        let message = format!(
            "Pack {} of {} is stated to cover {stated} of seed, {} {} the {computed} that its usable content covers at this dose. Check the dose, covers and usable; the plan goes by what is stated.",
            quoted(&pack.doc.pack),
            product(worked, t),
            percent(off.abs()),
            if off > 0.0 { "more than" } else { "less than" },
        );
        let at = format!("/treatments/{t}/packs/{p}/covers");
        found.add(Severity::Warn, Code::CoverageDisagrees, at, message);
    }
}

/// What there is of a product against the seed that gets it, or against what its mixes take.
fn short(worked: &Worked<'_, '_>, t: usize, line: &Line<'_, '_>, sizes: &[Size]) -> String {
    let name = product(worked, t);
    let packs = line.treatment.packs.iter().zip(sizes);
    let on_hand: Option<f64> =
        packs.map(|(pack, size)| Some(count(pack.doc.on_hand?.into()) * size.covers.get().value)).sum();
    let seed = line.doses.iter().filter_map(|dose| worked.draft.order(dose.order));
    let seed: f64 = seed.map(|order| order.seed.mass.value).sum();
    let Some(on_hand) = on_hand.filter(|on_hand| *on_hand < seed) else {
        return format!(
            "{name} runs short: whole sets that fit the tank and fill its lines take more than is on hand. Get more, or treat less."
        );
    };
    let mut stock = Vec::new();
    for pack in &line.treatment.packs {
        let on_hand = pack.doc.on_hand.map(|on_hand| format!("{on_hand} of {}", quoted(&pack.doc.pack)));
        keep(&mut stock, on_hand);
    }
    let units = worked.draft.units();
    let (covers, seed) =
        apart(&SEED_MASS.of(Mass::from_base(on_hand), units), &SEED_MASS.of(Mass::from_base(seed), units));
    format!(
        "{name} runs short: {} on hand cover {covers} of the {seed} of seed that get it. Get more, or treat less.",
        stock.join(" and "),
    )
}

fn bounds(worked: &Worked<'_, '_>, found: &mut Found) {
    if !worked.batches.proven && !worked.batches.mixes.is_empty() {
        let message = "The search for the best mixes did not look at every plan: it stopped at its bound of work, or this kind of job is beyond it. The plan holds, but one with fewer mixes or less thrown away may exist. Plan fewer orders at a time to look further.";
        found.add(Severity::Note, Code::BoundReached, "/tanks", message);
    }
    for (t, opened) in worked.opened.iter().enumerate() {
        if opened.as_ref().is_some_and(|opened| opened.proof == hilum::pack::Proof::BoundReached) {
            let message = format!(
                "{}: the search for the best packs stopped at its bound of work. The sets cover the orders, but a better choice may exist. Leave out packs that you would not open.",
                product(worked, t)
            );
            found.add(Severity::Note, Code::BoundReached, format!("/treatments/{t}/packs"), message);
        }
    }
}
