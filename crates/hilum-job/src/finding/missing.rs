//! What is not given, and what giving it would tell: one note for each kind of thing.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::Found;
use super::words::{names, order_name, orders, product};
use crate::document::{Code, Severity};
use crate::model::after::Stands;
use crate::model::order::Order;
use crate::model::tank::Feed;
use crate::plan::Worked;
use crate::plan::draft::Line;

pub(super) fn findings(worked: &Worked<'_, '_>, found: &mut Found) {
    let notes = [
        sowing(worked),
        crop(worked),
        temperature(worked),
        packs(worked),
        density(worked),
        flow(worked),
        curve(worked),
        work(worked),
        living(worked),
        survival(worked),
        planting(worked),
        storage(worked),
    ];
    for (at, message) in notes.into_iter().flatten() {
        found.add(Severity::Note, Code::MissingInput, at, message);
    }
}

/// Where something is missing, and what it would tell.
type Note = Option<(String, String)>;

/// Products or tanks that lack something.
#[derive(Default)]
struct Lacking<'a> {
    first: Option<usize>,
    names: Vec<&'a str>,
}

impl<'a> Lacking<'a> {
    fn add(&mut self, place: usize, name: &'a str) {
        self.first.get_or_insert(place);
        self.names.push(name);
    }

    /// The place of the first, and the names of all.
    fn told(&self) -> Option<(usize, String)> {
        Some((self.first?, names(&self.names)))
    }
}

/// Orders that lack something, at the first of them.
#[inline(never)]
fn of_orders(
    worked: &Worked<'_, '_>,
    lack: &dyn Fn(usize, &Order<'_>) -> bool,
    say: &dyn Fn(&str) -> String,
) -> Note {
    let mut places = Vec::new();
    for (o, order) in worked.draft.model.orders.iter().enumerate() {
        if lack(o, order) {
            places.push(o);
        }
    }
    let first = places.first()?;
    Some((format!("/orders/{first}"), say(&orders(worked, &places))))
}

/// Products in use that lack something, at the first of them.
#[inline(never)]
fn of_products(
    worked: &Worked<'_, '_>,
    field: &str,
    lack: &dyn Fn(usize, &Line<'_, '_>) -> bool,
    say: &dyn Fn(&str) -> String,
) -> Note {
    let mut lacking = Lacking::default();
    for (t, line) in worked.draft.lines.iter().enumerate() {
        if !line.doses.is_empty() && lack(t, line) {
            lacking.add(t, &line.treatment.doc.product);
        }
    }
    let (first, names) = lacking.told()?;
    Some((format!("/treatments/{first}{field}"), say(&names)))
}

fn sowing(worked: &Worked<'_, '_>) -> Note {
    let lacks = |order: usize| worked.draft.order(order).is_some_and(|order| order.seed.sown.is_none());
    let limited = worked.on_seed.iter().any(|on_seed| on_seed.season.is_some() && lacks(on_seed.order));
    let check = if limited { ", and checks the season's limits" } else { "" };
    of_orders(worked, &|o, _| lacks(o), &|orders| {
        format!(
            "Give the sowing of {orders}: it tells the area that the seed sows and the doses per area{check}."
        )
    })
}

fn crop(worked: &Worked<'_, '_>) -> Note {
    let on_label = |o: usize| {
        worked
            .draft
            .on_order(o)
            .any(|(_, line, _)| line.treatment.doc.crops.as_ref().is_some_and(|crops| !crops.is_empty()))
    };
    of_orders(worked, &|o, order| order.doc.crop.is_none() && on_label(o), &|orders| {
        format!("Give the crop of {orders}: it is checked against the crops on the labels.")
    })
}

fn temperature(worked: &Worked<'_, '_>) -> Note {
    let wet = |o: usize| worked.draft.on_order(o).any(|(_, line, _)| line.treatment.tank.is_some());
    of_orders(worked, &|o, order| order.temperature.is_none() && wet(o), &|orders| {
        format!("Give the temperature of the seed of {orders}: frozen seed must not get a liquid.")
    })
}

fn packs(worked: &Worked<'_, '_>) -> Note {
    of_products(worked, "", &|_, line| line.treatment.packs.is_empty(), &|products| {
        format!("Give the packs of {products}: they tell what to open and what is left over.")
    })
}

fn density(worked: &Worked<'_, '_>) -> Note {
    let unknown =
        |line: &Line<'_, '_>| line.doses.iter().any(|dose| dose.actives.iter().any(Option::is_none));
    of_products(worked, "", &|_, line| unknown(line), &|products| {
        format!(
            "Give the density of {products}: without it the active ingredients in it are neither added up nor held against their limits."
        )
    })
}

/// How fast seed runs: without it no flow, no clock.
fn flow(worked: &Worked<'_, '_>) -> Note {
    let draft = &worked.draft;
    let wet = worked.tanks.iter().any(|work| !work.orders.is_empty());
    if !wet && draft.model.work.is_empty() {
        return None;
    }
    let slow = draft.model.orders.iter().any(|order| order.seed_flow.is_none());
    let at = if draft.model.job.treater.is_some() { "/treater" } else { "" };
    match draft.model.treater.feed {
        None if slow => Some((
            at.into(),
            "Give the treater's seed_flow, or the charge and cycle of a batch treater: it tells the pump flows and, with shifts, when to mix.".into(),
        )),
        Some(Feed::Charge(_)) if slow && !draft.model.work.is_empty() => {
            Some((at.into(), "Give the cycle of the batch treater: with shifts it tells when to mix.".into()))
        }
        _ => None,
    }
}

/// A pump with a flow to deliver and no curve to set it by.
fn curve(worked: &Worked<'_, '_>) -> Note {
    let draft = &worked.draft;
    let runs = |work: &crate::plan::recipe::TankWork| {
        let mut orders = work.orders.iter().filter_map(|draw| draft.order(draw.order));
        let treater = matches!(draft.model.treater.feed, Some(Feed::Flow(_)));
        orders.any(|order| treater || order.seed_flow.is_some())
    };
    let mut lacking = Lacking::default();
    for (k, (tank, work)) in draft.model.tanks.iter().zip(&worked.tanks).enumerate() {
        if tank.pump.as_ref().is_none_or(|pump| pump.curve.is_none()) && runs(work) {
            lacking.add(k, &tank.doc.tank);
        }
    }
    let (first, tanks) = lacking.told()?;
    let message = format!(
        "Give the pump's curve, flows caught at settings, of tank {tanks}: it tells the setting for each order."
    );
    Some((format!("/tanks/{first}"), message))
}

fn work(worked: &Worked<'_, '_>) -> Note {
    let draft = &worked.draft;
    let wet = worked.tanks.iter().any(|work| !work.orders.is_empty());
    let alive = draft.lines.iter().any(|line| line.treatment.living.is_some() && !line.doses.is_empty());
    if !draft.model.work.is_empty() || !(wet || alive) {
        return None;
    }
    let last = if alive { ", until when each mix is good and the last day to plant" } else { "" };
    Some((
        String::new(),
        format!("Give the shifts as work: they tell when to mix, whether the time is enough{last}."),
    ))
}

/// What the maker of a living product states about it.
fn living(worked: &Worked<'_, '_>) -> Note {
    let mut fields: Vec<&str> = Vec::new();
    let mut lacking = Lacking::default();
    for (t, line) in worked.draft.lines.iter().enumerate() {
        let Some(living) = line.treatment.living.as_ref().filter(|_| !line.doses.is_empty()) else {
            continue;
        };
        let stated = [
            ("pot_life", living.pot_life.is_some() || line.treatment.tank.is_none()),
            ("on_seed_life", living.on_seed_life.is_some()),
            ("minimum_at_planting", living.minimum.is_some()),
        ];
        if stated.iter().any(|(_, stated)| !stated) {
            lacking.add(t, &line.treatment.doc.product);
        }
        for (name, stated) in stated {
            if !stated && !fields.contains(&name) {
                fields.push(name);
            }
        }
    }
    let (first, products) = lacking.told()?;
    let message = format!(
        "Give {} of the living product {products}, as its maker states it: it tells how long the cells are good for.",
        fields.join(", "),
    );
    Some((format!("/treatments/{first}/living"), message))
}

fn survival(worked: &Worked<'_, '_>) -> Note {
    of_products(
        worked,
        "/living",
        &|_, line| {
            line.treatment
                .living
                .as_ref()
                .is_some_and(|living| living.minimum.is_some() && living.survival.is_none())
        },
        &|products| {
            format!(
                "Give the survival of {products}, from its maker or a laboratory: it tells the cells that are left on planting day."
            )
        },
    )
}

/// Living seed of which it is not said when it is planted, or said to be planted before it is treated.
fn planting(worked: &Worked<'_, '_>) -> Note {
    let mut unknown: Vec<usize> = Vec::new();
    let mut early: Vec<usize> = Vec::new();
    for (o, (order, doses)) in worked.draft.model.orders.iter().zip(&worked.draft.of_order).enumerate() {
        let mut facts = doses.iter().filter_map(|(t, place)| worked.living(*t, *place));
        let Some(first) = facts.next() else { continue };
        if order.after.planting.is_none() {
            unknown.push(o);
        }
        if first.planted_after.is_some_and(|time| time < 0.0) {
            early.push(o);
        }
    }
    if let Some(first) = early.first() {
        let message = format!(
            "The plant_on of {} lies before the seed is treated. Correct it, to know the cells on planting day.",
            orders(worked, &early)
        );
        return Some((plant_on(worked, *first), message));
    }
    let first = unknown.first()?;
    let message = format!(
        "Give plant_on or plant_after for {}: it tells the cells on planting day, and whether they last until then.",
        orders(worked, &unknown)
    );
    Some((after(worked, *first), message))
}

fn storage(worked: &Worked<'_, '_>) -> Note {
    let lacks = |t, place| worked.living(t, place).is_some_and(|facts| facts.storage_missing);
    let lacking = |(t, line): (usize, &Line<'_, '_>)| {
        let (_, dose) = line.doses.iter().enumerate().find(|(place, _)| lacks(t, *place))?;
        Some((t, dose.order))
    };
    let (t, order) = worked.draft.lines.iter().enumerate().find_map(lacking)?;
    let message = format!(
        "Give the storage of the treated seed, as for order {}: the cells of {} die faster where it is warm.",
        crate::problem::quoted(order_name(worked, order)),
        product(worked, t),
    );
    Some((after(worked, order), message))
}

/// Where the planting of an order stands.
fn plant_on(worked: &Worked<'_, '_>, order: usize) -> String {
    match worked.draft.order(order).map(|order| order.after.planting_stands) {
        Some(Stands::InOrder) => format!("/orders/{order}/after/plant_on"),
        _ => "/after/plant_on".into(),
    }
}

/// The `after` that an order goes by.
fn after(worked: &Worked<'_, '_>, order: usize) -> String {
    let own = worked.draft.order(order).is_some_and(|order| order.doc.after.is_some());
    if own {
        format!("/orders/{order}/after")
    } else if worked.draft.model.job.after.is_some() {
        "/after".into()
    } else {
        String::new()
    }
}
