//! Do the cells live until planting?

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use hilum::batch::most_treatable;
use hilum::quantity::{Mass, MassFlow, Measure, Temperature, Time};
use hilum::viability::storage::{STORE_COOL, Warmth, warmth};

use super::words::{apart, cells, degrees, duration, names, orders, product};
use super::{Found, Group};
use crate::document::{Code, Severity};
use crate::model::after::Stands;
use crate::model::living::Living;
use crate::plan::draft::Line;
use crate::plan::out::{SEED_MASS, Written};
use crate::plan::{LivingFacts, Worked, batch};
use crate::problem::quoted;

pub(super) fn findings(worked: &Worked<'_, '_>, found: &mut Found) {
    not_agitated(worked, found);
    for (t, line) in worked.draft.lines.iter().enumerate() {
        let Some(living) = line.treatment.living.as_ref().filter(|_| !line.doses.is_empty()) else {
            continue;
        };
        let product = Alive { worked, t, line, living };
        product.too_few(found);
        product.too_late(found);
        product.stored(found);
        product.outlasts(found);
    }
    sunlight(worked, found);
}

fn not_agitated(worked: &Worked<'_, '_>, found: &mut Found) {
    for (k, still) in worked.draft.model.tanks.iter().enumerate().filter(|(_, tank)| !tank.agitated) {
        let mut products = Vec::new();
        for line in worked.draft.lines.iter().filter(|line| line.treatment.tank == Some(k)) {
            let settles = line.treatment.living.as_ref().is_some_and(|living| living.agitate);
            if settles && !line.doses.is_empty() {
                products.push(line.treatment.doc.product.as_str());
            }
        }
        if products.is_empty() {
            continue;
        }
        let message = format!(
            "Tank {} has no agitator, and the living product {} must be kept moving. Mix it in an agitated or aerated tank.",
            quoted(&still.doc.tank),
            names(&products),
        );
        found.add(Severity::Warn, Code::NotAgitated, format!("/tanks/{k}/agitated"), message);
    }
}

/// A living product that some order gets.
struct Alive<'a, 'm, 'j> {
    worked: &'a Worked<'m, 'j>,
    t: usize,
    line: &'a Line<'m, 'j>,
    living: &'a Living,
}

impl Alive<'_, '_, '_> {
    fn facts(&self) -> impl Iterator<Item = (usize, &LivingFacts)> {
        let doses = self.line.doses.iter().enumerate();
        doses.filter_map(|(place, dose)| Some((dose.order, self.worked.living(self.t, place)?)))
    }

    fn too_few(&self, found: &mut Found) {
        let mut few = Group::default();
        for (order, facts) in self.facts() {
            let Some(minimum) = facts.minimum else { continue };
            let (count, when) = match facts.at_planting {
                Some(count) => (count, "on planting day"),
                None => (facts.at_treating, "when treated"),
            };
            if count.falls_below(minimum) {
                few.add(order, -count.get().value, (count, minimum, when));
            }
        }
        let Some((places, (count, minimum, when))) = few.told() else { return };
        let units = self.worked.draft.units();
        let message = format!(
            "{}: {} {when} on {}, fewer than the {} that are wanted. Raise the dose as far as the label allows, plant sooner or store cooler.",
            product(self.worked, self.t),
            cells(&count.out(units)),
            orders(self.worked, &places),
            cells(&minimum.out(units)),
        );
        self.stop(Code::TooFewCells, found, message);
    }

    fn too_late(&self, found: &mut Found) {
        let mut late = Group::default();
        for (order, facts) in self.facts() {
            let (Some(planted), Some(life)) = (facts.planted_after, facts.life) else { continue };
            let life = life.get().value;
            if planted > life {
                late.add(order, planted - life, (planted, life));
            }
        }
        let Some((places, (planted, life))) = late.told() else { return };
        let partner = self.living.on_seed_life.is_none_or(|own| own.get().value > life);
        let beside = if partner { " beside the other products on this seed" } else { "" };
        let message = format!(
            "{}: planting {} after treating, on {}, is beyond the {} that it lasts on the seed{beside}. Plant sooner, or treat later.",
            product(self.worked, self.t),
            duration(planted),
            orders(self.worked, &places),
            duration(life),
        );
        self.stop(Code::OnSeedLifeExceeded, found, message);
    }

    fn stop(&self, code: Code, found: &mut Found, message: String) {
        found.add(Severity::Stop, code, format!("/treatments/{}/living", self.t), message);
    }

    /// The job's storage once, and each order's own.
    fn stored(&self, found: &mut Found) {
        let mut in_job = Vec::new();
        for dose in &self.line.doses {
            let Some(order) = self.worked.draft.order(dose.order) else { continue };
            match order.after.storage_stands {
                Stands::InJob => in_job.push(dose.order),
                Stands::InOrder => {
                    self.warm(&[dose.order], &format!("/orders/{}/after", dose.order), found);
                }
            }
        }
        self.warm(&in_job, "/after", found);
    }

    /// The warmest period of the storage that these orders share.
    fn warm(&self, places: &[usize], at: &str, found: &mut Found) {
        let Some(first) = places.first().and_then(|order| self.worked.draft.order(*order)) else { return };
        let periods = first.after.storage.iter().map(|(_, temperature)| *temperature).enumerate();
        let warmest = periods.reduce(|most, next| if next.1 > most.1 { next } else { most });
        let Some((place, temperature)) = warmest else { return };
        let most = match warmth(temperature, self.living.store_below) {
            Warmth::Cool => return,
            Warmth::Fair => None,
            Warmth::TooWarm => Some(self.living.store_below.unwrap_or(hilum::viability::storage::STORE_WARM)),
        };
        let severity = if most.is_some() { Severity::Warn } else { Severity::Note };
        let message = self.warm_message(temperature, most, places);
        found.add(severity, Code::StorageTooWarm, format!("{at}/storage/{place}/at"), message);
    }

    fn warm_message(&self, stored: Temperature, most: Option<Temperature>, places: &[usize]) -> String {
        let units = self.worked.draft.units();
        let (name, orders) = (product(self.worked, self.t), orders(self.worked, places));
        let (stored, cool) = (degrees(stored, units), degrees(STORE_COOL, units));
        match most {
            Some(most) => format!(
                "The seed of {orders} is stored at {stored}, too warm for {name}: the most is {}. Store it cooler, best at or below {cool}.",
                degrees(most, units)
            ),
            None => format!(
                "The seed of {orders} is stored at {stored}; with {name} on it, it keeps best at or below {cool}. Store it cooler if planting is far off."
            ),
        }
    }

    /// Whether one set of a pack is more than can be run while a mix is good.
    fn outlasts(&self, found: &mut Found) {
        let (Some(life), Some(run)) = (self.living.pot_life, self.most_run()) else { return };
        let units = self.worked.draft.units();
        let packs = self
            .line
            .treatment
            .packs
            .iter()
            .zip(self.worked.sizes.get(self.t).map(Vec::as_slice).unwrap_or_default());
        for (p, (pack, size)) in packs.enumerate() {
            if !size.covers.exceeds(run) {
                continue;
            }
            let (covers, run) = apart(&SEED_MASS.of(size.covers.get(), units), &SEED_MASS.of(run, units));
            let message = format!(
                "One set {} of {} covers {covers} of seed, but the treater runs at most {run} while the mix is good ({}). Use a smaller pack, or run more seed per hour.",
                quoted(&pack.doc.pack),
                product(self.worked, self.t),
                duration(life.value),
            );
            let at = format!("/treatments/{}/packs/{p}", self.t);
            found.add(Severity::Warn, Code::PackOutlastsPotLife, at, message);
        }
    }

    /// The seed that the treater runs within one pot life, at the fastest of this product's orders.
    fn most_run(&self) -> Option<Mass> {
        let draft = &self.worked.draft;
        let speeds = self.line.doses.iter().filter_map(|dose| batch::speed(draft, draft.order(dose.order)?));
        let fastest: MassFlow = speeds.max_by(|a, b| a.value.total_cmp(&b.value))?;
        let tank = self.line.treatment.tank.and_then(|k| draft.model.tanks.get(k));
        let mixing = tank.map_or(Time::from_base(0.0), |tank| tank.mixing);
        Some(most_treatable(self.living.pot_life?, mixing, &batch::shifts(draft), fastest))
    }
}

/// The job's sunlight once, and each order's own.
fn sunlight(worked: &Worked<'_, '_>, found: &mut Found) {
    let mut in_job = Vec::new();
    for (o, order) in worked.draft.model.orders.iter().enumerate() {
        let alive = || worked.draft.on_order(o).any(|(_, line, _)| line.treatment.living.is_some());
        if !order.after.in_sunlight || !alive() {
            continue;
        }
        match order.after.sunlight_stands {
            Stands::InJob => in_job.push(o),
            Stands::InOrder => in_sun(worked, &[o], format!("/orders/{o}/after/in_sunlight"), found),
        }
    }
    if !in_job.is_empty() {
        in_sun(worked, &in_job, "/after/in_sunlight".into(), found);
    }
}

fn in_sun(worked: &Worked<'_, '_>, places: &[usize], at: String, found: &mut Found) {
    let message = format!(
        "The treated seed of {} stands in direct sun, which kills the living cells on it. Keep it in the shade, cool and dry.",
        orders(worked, places)
    );
    found.add(Severity::Warn, Code::Sunlight, at, message);
}
