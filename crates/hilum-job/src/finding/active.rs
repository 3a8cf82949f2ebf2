//! Is there too much of an active ingredient on the seed, and is the seed coloured?

use alloc::string::String;
use alloc::vec::Vec;
use alloc::{format, vec};

use hilum::limit::SeasonLimit;
use hilum::quantity::Measure;
use hilum::rate::{ActivePerMass, ActivePerSeed};
use hilum::seed::Sown;

use super::words::{apart, names, order_name, orders, told};
use super::{Found, Group};
use crate::document::{Code, Severity};
use crate::model::ActiveLimit;
use crate::places::Places;
use crate::plan::Worked;
use crate::plan::out::{SOWING, Written};
use crate::problem::quoted;

pub(super) fn findings(worked: &Worked<'_, '_>, found: &mut Found) {
    limits(worked, found);
    already(worked, found);
    uncoloured(worked, found);
}

/// Orders beyond each limit of one active.
#[derive(Default)]
struct Beyond {
    season: Group<(SeasonLimit, ActivePerSeed, Sown)>,
    per_seed: Group<(ActivePerSeed, ActivePerSeed)>,
    per_mass: Group<(ActivePerMass, ActivePerMass)>,
}

fn limits(worked: &Worked<'_, '_>, found: &mut Found) {
    let mut beyond = Vec::new();
    beyond.resize_with(worked.draft.model.actives.len(), Beyond::default);
    for on_seed in &worked.on_seed {
        let Some(k) = on_seed.limit else { continue };
        let Some((limit, groups)) = worked.draft.model.actives.get(k).zip(beyond.get_mut(k)) else {
            continue;
        };
        let sown = worked.draft.order(on_seed.order).and_then(|order| order.seed.sown);
        let (order, per_seed, per_mass) = (on_seed.order, on_seed.per_seed, on_seed.per_mass);
        if let Some((season, sown)) =
            on_seed.season.zip(sown).filter(|(season, sown)| season.exceeded(per_seed, *sown))
        {
            groups.season.add(order, season.share(per_seed, sown), (season, per_seed, sown));
        }
        if let Some(most) = limit.max_per_seed.filter(|most| per_seed.exceeds(*most)) {
            groups.per_seed.add(order, per_seed.get().value, (per_seed, most));
        }
        if let Some(most) = limit.max_per_mass.filter(|most| per_mass.exceeds(*most)) {
            groups.per_mass.add(order, per_mass.get().value, (per_mass, most));
        }
    }
    for (k, (groups, limit)) in beyond.into_iter().zip(&worked.draft.model.actives).enumerate() {
        groups.tell(worked, k, limit, found);
    }
}

impl Beyond {
    fn tell(self, worked: &Worked<'_, '_>, k: usize, limit: &ActiveLimit<'_>, found: &mut Found) {
        let units = worked.draft.units();
        let name = quoted(limit.active);
        if let Some((places, season)) = self.season.told() {
            let message = over_season(worked, &name, &places, season, limit);
            found.add(Severity::Stop, Code::SeasonLimit, format!("/actives/{k}/season_limit"), message);
        }
        let pairs = [
            (
                "max_per_seed",
                self.per_seed.told().map(|(places, (own, most))| (places, own.out(units), most.out(units))),
            ),
            (
                "max_per_mass",
                self.per_mass.told().map(|(places, (own, most))| (places, own.out(units), most.out(units))),
            ),
        ];
        for (field, pair) in pairs {
            let Some((places, own, most)) = pair else { continue };
            let (own, most) = apart(&own, &most);
            let message = format!(
                "{name} comes to {own} on {}, all products together, above the most that is allowed, {most}. Lower the doses or leave a product out: the label is the law.",
                orders(worked, &places)
            );
            found.add(Severity::Stop, Code::ActiveLimit, format!("/actives/{k}/{field}"), message);
        }
    }
}

fn over_season(
    worked: &Worked<'_, '_>,
    name: &str,
    places: &[usize],
    (season, per_seed, sown): (SeasonLimit, ActivePerSeed, Sown),
    limit: &ActiveLimit<'_>,
) -> String {
    let units = worked.draft.units();
    let most = limit.season_limit.map(|limit| crate::plan::out::ACTIVE_PER_AREA.of(limit, units));
    let total = season.total(per_seed, sown).out(units);
    let (total, most) = most.map_or_else(|| (told(&total), String::new()), |most| apart(&total, &most));
    let sowing = season.max_sowing(per_seed);
    let remedy = if sowing.to_base() > 0.0 {
        format!("Sow at most {}, or lower the dose", told(&SOWING.of(sowing, units)))
    } else {
        "Nothing of the limit is left: leave it off this seed".into()
    };
    format!(
        "{name} comes to {total} with the season's other uses, at the sowing rate of {}, above the season's limit of {most}. {remedy}: the label is the law.",
        orders(worked, places)
    )
}

/// Actives that a product adds to what is on the seed.
fn already(worked: &Worked<'_, '_>, found: &mut Found) {
    let draft = &worked.draft;
    for (o, order) in draft.model.orders.iter().enumerate().filter(|(_, order)| !order.on_seed.is_empty()) {
        let carried = Places::of(&|j| Some(order.on_seed.get(j)?.0));
        let mut added: Vec<Vec<&str>> = vec![Vec::new(); order.on_seed.len()];
        for (_, line, _) in draft.on_order(o) {
            for (name, _) in &line.treatment.actives {
                if let Some(adds) = carried.get(name).and_then(|j| added.get_mut(j)) {
                    adds.push(&line.treatment.doc.product);
                }
            }
        }
        for (j, ((active, per_seed), adds)) in order.on_seed.iter().zip(added).enumerate() {
            if adds.is_empty() {
                continue;
            }
            let message = format!(
                "The seed of order {} carries {} of {} already, and {} adds to it. Both are counted here. Check that the labels allow a second treatment.",
                quoted(order_name(worked, o)),
                told(&per_seed.out(draft.units())),
                quoted(active),
                names(&adds),
            );
            let at = format!("/orders/{o}/on_seed/{j}");
            found.add(Severity::Note, Code::ActiveAlreadyOnSeed, at, message);
        }
    }
}

/// Orders with an active on the seed and nothing that colours it.
fn uncoloured(worked: &Worked<'_, '_>, found: &mut Found) {
    let draft = &worked.draft;
    for (o, order) in draft.model.orders.iter().enumerate() {
        let coloured = draft.on_order(o).any(|(_, line, _)| line.treatment.doc.colourant.unwrap_or_default());
        let active = || draft.on_order(o).any(|(_, line, _)| !line.treatment.actives.is_empty());
        if coloured || (order.on_seed.is_empty() && !active()) {
            continue;
        }
        let message = format!(
            "Order {} gets active ingredients, and nothing that goes on it is marked as a colourant. Colour the seed, so that nobody takes it for grain, as labels and rules ask.",
            quoted(order_name(worked, o))
        );
        found.add(Severity::Warn, Code::NoColourant, format!("/orders/{o}"), message);
    }
}
