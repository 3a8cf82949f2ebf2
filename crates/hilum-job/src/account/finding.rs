//! What is wrong with what was applied, or worth knowing.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::order::{Done, unread_tanks};
use super::write::{on_seed, per_mass};
use super::{Day, living};
use crate::document::{Code, Finding, Severity, Weighed};
use crate::finding::Found;
use crate::finding::words::{apart, cells, duration, percent, told};
use crate::model::reading::Resolved;
use crate::model::run::RunOrder;
use crate::plan::CAUTIONS;
use crate::plan::active::OnSeed;
use crate::plan::dose::Rate;
use crate::plan::out::{SOWING, Written};
use crate::problem::quoted;

/// What to do with seed that carries too much.
const KEEP_BACK: &str = "Keep this seed back, and do with it what the label and your adviser say.";

/// All findings, the gravest first, else in the order of the run.
pub(crate) fn findings(day: &Day<'_, '_>, done: &[Done]) -> Vec<Finding> {
    let mut found = Found::default();
    for (i, (read, done)) in day.run.orders.iter().zip(done).enumerate() {
        let about = About { day, read, done, at: format!("/orders/{i}") };
        about.doses(&mut found);
        about.actives(&mut found);
        about.living(&mut found);
        about.expired(&mut found);
        about.unread(&mut found);
        about.unresolved(&mut found);
    }
    found.add(Severity::Note, Code::TreatedSeed, "", CAUTIONS.join(" "));
    found.sorted()
}

/// One order that was run.
struct About<'a, 'm, 'j> {
    day: &'a Day<'m, 'j>,
    read: &'a RunOrder<'j>,
    done: &'a Done,
    at: String,
}

impl About<'_, '_, '_> {
    fn name(&self) -> String {
        quoted(&self.read.doc.order)
    }

    /// What went on beyond what the label allows.
    fn doses(&self, found: &mut Found) {
        let draft = &self.day.draft;
        for applied in self.done.applied() {
            let dose = draft.on_order(self.done.order).find(|(t, _, _)| *t == applied.treatment);
            let Some((t, line, dose)) = dose else { continue };
            let product = quoted(&line.treatment.doc.product);
            let told = |bound: Rate| {
                let units = draft.units();
                let (on, bound) = apart(&per_mass(applied.rate, units), &per_mass(bound, units));
                (format!("{product} went on order {} at {on}", self.name()), bound)
            };
            if let Some(most) = dose.max.filter(|most| applied.rate.exceeds(*most)) {
                let (on, most) = told(most);
                let message = format!("{on}, above the most that its label allows, {most}. {KEEP_BACK}");
                let at = format!("/job/treatments/{t}/max_rate");
                found.add(Severity::Stop, Code::AppliedAboveMax, at, message);
            }
            if let Some(least) = dose.min.filter(|least| applied.rate.falls_below(*least)) {
                let (on, least) = told(least);
                let message = format!(
                    "{on}, below the least on its label, {least}. The seed may not be protected; a second treating must stay within the label."
                );
                let at = format!("/job/treatments/{t}/min_rate");
                found.add(Severity::Warn, Code::AppliedBelowMin, at, message);
            }
        }
    }

    /// Limits of active ingredients.
    fn actives(&self, found: &mut Found) {
        for on_seed in on_seed(&self.day.draft, self.done) {
            self.season(&on_seed, found);
            self.active(&on_seed, found);
        }
    }

    fn season(&self, on_seed: &OnSeed<'_>, found: &mut Found) {
        let sown = self.day.draft.order(self.done.order).and_then(|order| order.seed.sown);
        let (Some(limit), Some(season), Some(sown)) = (on_seed.limit, on_seed.season, sown) else { return };
        if season.exceeded(on_seed.per_seed, sown) {
            let most = SOWING.of(season.max_sowing(on_seed.per_seed), self.day.draft.units());
            let message = format!(
                "{} as applied to order {} comes to {} of what a season allows per area. Sow at most {}, or elsewhere.",
                quoted(on_seed.active),
                self.name(),
                percent(season.share(on_seed.per_seed, sown)),
                told(&most)
            );
            let at = format!("/job/actives/{limit}/season_limit");
            found.add(Severity::Stop, Code::SeasonLimit, at, message);
        }
    }

    fn active(&self, on_seed: &OnSeed<'_>, found: &mut Found) {
        let limits = &self.day.draft.model.actives;
        let limit = on_seed.limit.and_then(|index| Some((index, limits.get(index)?)));
        let Some((index, limit)) = limit else { return };
        let units = self.day.draft.units();
        let per_seed = limit.max_per_seed.filter(|most| on_seed.per_seed.exceeds(*most));
        let per_mass = limit.max_per_mass.filter(|most| on_seed.per_mass.exceeds(*most));
        let passed = [
            per_seed.map(|most| ("max_per_seed", on_seed.per_seed.out(units), most.out(units))),
            per_mass.map(|most| ("max_per_mass", on_seed.per_mass.out(units), most.out(units))),
        ];
        for (field, on, most) in passed.into_iter().flatten() {
            let (on, most) = apart(&on, &most);
            let message = format!(
                "{} as applied to order {} is {on}, above the most allowed, {most}. {KEEP_BACK}",
                quoted(on_seed.active),
                self.name(),
            );
            found.add(Severity::Stop, Code::ActiveLimit, format!("/job/actives/{index}/{field}"), message);
        }
    }

    /// Too few living cells, or planting too late for them.
    fn living(&self, found: &mut Found) {
        let units = self.day.draft.units();
        for (t, facts) in living::all(self.day, self.read, self.done) {
            let Some(line) = self.day.draft.lines.get(t) else { continue };
            let (product, at) = (quoted(&line.treatment.doc.product), format!("/job/treatments/{t}/living"));
            let (count, when) = match facts.at_planting {
                Some(count) => (count, "on planting day"),
                None => (facts.at_treating, "when treated"),
            };
            if let Some(minimum) = facts.minimum.filter(|minimum| count.falls_below(*minimum)) {
                let message = format!(
                    "{product} as applied to order {} leaves {} {when}, fewer than the {} that are wanted. Plant sooner, store cooler, or inoculate again as the label says.",
                    self.name(),
                    cells(&count.out(units)),
                    cells(&minimum.out(units)),
                );
                found.add(Severity::Stop, Code::TooFewCells, at.clone(), message);
            }
            let late = facts.planted_after.zip(facts.life).filter(|(after, life)| *after > life.get().value);
            if let Some((after, life)) = late {
                let message = format!(
                    "{product} on order {}: planting {} after treating is beyond the {} that it lasts on the seed. Plant sooner, or inoculate again as the label says.",
                    self.name(),
                    duration(after),
                    duration(life.get().value),
                );
                found.add(Severity::Stop, Code::OnSeedLifeExceeded, at, message);
            }
            if self.read.from.is_none() {
                let message = format!(
                    "Order {} does not say when its first seed was treated: give from, to know until when it may be planted.",
                    self.name()
                );
                found.add(Severity::Note, Code::MissingInput, format!("{}/from", self.at), message);
            }
        }
    }

    /// Products whose last day was before the last seed.
    fn expired(&self, found: &mut Found) {
        let Some(last) = self.read.to.or(self.read.from).map(|instant| instant.date_naive()) else { return };
        for (t, line, _) in self.day.draft.on_order(self.done.order) {
            if let Some(day) = line.treatment.expires.filter(|day| *day < last) {
                let message = format!(
                    "{} expired on {day}, and order {} was treated on {last}. Ask the maker what may become of this seed.",
                    quoted(&line.treatment.doc.product),
                    self.name()
                );
                found.add(
                    Severity::Stop,
                    Code::ProductExpired,
                    format!("/job/treatments/{t}/expires"),
                    message,
                );
            }
        }
    }

    /// Tanks and dry products without readings.
    fn unread(&self, found: &mut Found) {
        let draft = &self.day.draft;
        let read = |k| self.done.tanks.iter().any(|tank| tank.tank == k);
        for tank in unread_tanks(self.day, self.done.order, read) {
            let message = format!(
                "Order {} has no readings of tank {}: give start and end, to know what it gave.",
                self.name(),
                quoted(tank)
            );
            found.add(Severity::Note, Code::MissingInput, format!("{}/tanks", self.at), message);
        }
        for (t, line, _) in draft.on_order(self.done.order) {
            let read = self.done.dry.iter().any(|dry| dry.product.treatment == t);
            if line.treatment.tank.is_some() || read {
                continue;
            }
            let on_scale = match self.read.weighed {
                Weighed::After => " It was weighed with the seed and is not taken off.",
                Weighed::Before => "",
            };
            let message = format!(
                "Order {} has no readings of {}, which goes on dry: give start and end, to know what went on.{on_scale}",
                self.name(),
                quoted(&line.treatment.doc.product)
            );
            found.add(Severity::Note, Code::MissingInput, format!("{}/dry", self.at), message);
        }
    }

    /// Readings without a resolution, which count as exact.
    fn unresolved(&self, found: &mut Found) {
        self.resolution("seed", self.done.resolved, found);
        for (j, tank) in self.done.tanks.iter().enumerate() {
            self.resolution(&format!("tanks/{j}"), tank.resolved, found);
        }
        for (j, dry) in self.done.dry.iter().enumerate() {
            self.resolution(&format!("dry/{j}"), dry.resolved, found);
        }
    }

    fn resolution(&self, place: &str, resolved: Resolved, found: &mut Found) {
        if resolved == Resolved::All {
            return;
        }
        let message = format!(
            "Order {} has readings without a resolution, which count as exact: give the smallest step that the instrument shows, to know how sure the rate is.",
            self.name()
        );
        found.add(Severity::Note, Code::MissingInput, format!("{}/{place}/resolution", self.at), message);
    }
}
