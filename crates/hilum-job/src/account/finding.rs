//! What is wrong with what was applied, or worth knowing.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::Day;
use super::order::{Applied, Done, unread_tanks};
use super::write::{cells, on_seed, per_mass};
use crate::document::{Code, Finding, Out, Severity, Weighed};
use crate::finding::Found;
use crate::model::reading::Resolved;
use crate::model::run::RunOrder;
use crate::plan::out::Written;
use crate::plan::{CAUTIONS, active::OnSeed};

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
    fn name(&self) -> &str {
        &self.read.doc.order
    }

    fn product(&self, applied: &Applied) -> &str {
        self.day.draft.lines.get(applied.treatment).map_or("", |line| &line.treatment.doc.product)
    }

    /// What went on beyond what the label allows.
    fn doses(&self, found: &mut Found) {
        let draft = &self.day.draft;
        let units = draft.units();
        for applied in self.done.applied() {
            let dose = draft.on_order(self.done.order).find(|(t, _, _)| *t == applied.treatment);
            let Some((t, _, dose)) = dose else { continue };
            let on = format!(
                "{} went on order {:?} at {}",
                self.product(applied),
                self.name(),
                shown(&per_mass(applied.rate, units))
            );
            if let Some(most) = dose.max.filter(|most| applied.rate.exceeds(*most)) {
                let message = format!(
                    "{on}, above the most that its label allows, {}. Keep this seed back, and do with it what the label and your adviser say.",
                    shown(&per_mass(most, units))
                );
                found.add(
                    Severity::Stop,
                    Code::AppliedAboveMax,
                    format!("/job/treatments/{t}/max_rate"),
                    message,
                );
            }
            if let Some(least) = dose.min.filter(|least| applied.rate.falls_below(*least)) {
                let message = format!(
                    "{on}, below the least on its label, {}. The seed may not be protected; a second treating must stay within the label.",
                    shown(&per_mass(least, units))
                );
                found.add(
                    Severity::Warn,
                    Code::AppliedBelowMin,
                    format!("/job/treatments/{t}/min_rate"),
                    message,
                );
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
            let message = format!(
                "{} on order {:?} as applied comes to {:.1} % of what a season allows per area. Sow at most {}, or elsewhere.",
                on_seed.active,
                self.name(),
                season.share(on_seed.per_seed, sown) * 100.0,
                shown(
                    &crate::plan::out::SOWING.of(season.max_sowing(on_seed.per_seed), self.day.draft.units())
                )
            );
            found.add(
                Severity::Stop,
                Code::SeasonLimit,
                format!("/job/actives/{limit}/season_limit"),
                message,
            );
        }
    }

    fn active(&self, on_seed: &OnSeed<'_>, found: &mut Found) {
        let draft = &self.day.draft;
        let Some((index, limit)) =
            on_seed.limit.and_then(|index| Some((index, draft.model.actives.get(index)?)))
        else {
            return;
        };
        let units = draft.units();
        let per_seed = limit.max_per_seed.filter(|most| on_seed.per_seed.exceeds(*most));
        let per_mass = limit.max_per_mass.filter(|most| on_seed.per_mass.exceeds(*most));
        let passed = [
            per_seed.map(|most| ("max_per_seed", on_seed.per_seed.out(units), most.out(units))),
            per_mass.map(|most| ("max_per_mass", on_seed.per_mass.out(units), most.out(units))),
        ];
        for (field, on, most) in passed.into_iter().flatten() {
            let message = format!(
                "{} on order {:?} as applied is {}, above the most allowed, {}. Keep this seed back, and do with it what the label and your adviser say.",
                on_seed.active,
                self.name(),
                shown(&on),
                shown(&most)
            );
            found.add(Severity::Stop, Code::ActiveLimit, format!("/job/actives/{index}/{field}"), message);
        }
    }

    /// Fewer living cells at treating than are wanted at planting.
    fn living(&self, found: &mut Found) {
        let draft = &self.day.draft;
        for applied in self.done.applied() {
            let Some(line) = draft.lines.get(applied.treatment) else { continue };
            let minimum = line.treatment.living.as_ref().and_then(|living| living.minimum);
            let Some((cells, minimum)) = cells(draft, self.done, applied).zip(minimum) else { continue };
            if cells.falls_below(minimum) {
                let t = applied.treatment;
                let message = format!(
                    "{} left {:.3e} living cells on each seed of order {:?}, fewer than the {:.3e} wanted at planting. Inoculate again, in the furrow or on the seed, as the label says.",
                    self.product(applied),
                    cells.out(draft.units()).value,
                    self.name(),
                    minimum.out(draft.units()).value
                );
                let at = format!("/job/treatments/{t}/living/minimum_at_planting");
                found.add(Severity::Stop, Code::TooFewCells, at, message);
            }
        }
    }

    /// Products whose last day was before the last seed.
    fn expired(&self, found: &mut Found) {
        let Some(last) = self.read.to.or(self.read.from).map(|instant| instant.date_naive()) else { return };
        for (t, line, _) in self.day.draft.on_order(self.done.order) {
            if let Some(day) = line.treatment.expires.filter(|day| *day < last) {
                let message = format!(
                    "{} expired on {day}, and order {:?} was treated on {last}. Ask the maker what may become of this seed.",
                    line.treatment.doc.product,
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
        let read: Vec<usize> = self.done.tanks.iter().map(|tank| tank.tank).collect();
        for tank in unread_tanks(self.day, self.done.order, &read) {
            let message = format!(
                "Order {:?} has no readings of tank {tank:?}: give start and end, to know what it gave.",
                self.name()
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
                "Order {:?} has no readings of {}, which goes on dry: give start and end, to know what went on.{on_scale}",
                self.name(),
                line.treatment.doc.product
            );
            found.add(Severity::Note, Code::MissingInput, format!("{}/dry", self.at), message);
        }
    }

    /// Readings without a resolution, which count as exact.
    fn unresolved(&self, found: &mut Found) {
        let tanks = self.done.tanks.iter().enumerate();
        let tanks = tanks.map(|(j, tank)| (format!("tanks/{j}"), tank.resolved));
        let dry = self.done.dry.iter().enumerate();
        let dry = dry.map(|(j, dry)| (format!("dry/{j}"), dry.resolved));
        let seed = core::iter::once((String::from("seed"), self.done.resolved));
        for (place, resolved) in seed.chain(tanks).chain(dry) {
            if resolved == Resolved::NotAll {
                let message = format!(
                    "Order {:?} has readings without a resolution, which count as exact: give the smallest step that the instrument shows, to know how sure the rate is.",
                    self.name()
                );
                let at = format!("{}/{place}/resolution", self.at);
                found.add(Severity::Note, Code::MissingInput, at, message);
            }
        }
    }
}

fn shown(out: &Out) -> String {
    format!("{:.4} {}", out.value, out.unit)
}
