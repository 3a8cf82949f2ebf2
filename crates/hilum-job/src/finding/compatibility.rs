//! What must not touch what? As makers declare it per product, never inferred from an active ingredient.

use alloc::format;
use alloc::string::String;
use alloc::vec;
use alloc::vec::Vec;

use hilum::viability::is_metal;

use super::Found;
use super::words::{order_name, product, tank};
use crate::document::{Code, Severity};
use crate::limits::TREATMENTS;
use crate::model::treatment::{Treatment, WithLiving};
use crate::plan::Worked;
use crate::problem::quoted;

pub(super) fn findings(worked: &Worked<'_, '_>, found: &mut Found) {
    let treatments = &worked.draft.model.treatments;
    let meetings = Meetings::of(worked);
    for (l, living) in treatments.iter().enumerate().filter(|(_, treatment)| treatment.living.is_some()) {
        for (t, other) in treatments.iter().enumerate().filter(|(t, _)| *t != l) {
            let declared = other.with_living.iter().enumerate().find(|(_, with)| with.living == l);
            let pair = Pair {
                worked,
                living: (l, living),
                other: (t, other),
                declared,
                tank: living
                    .tank
                    .filter(|tank| other.tank == Some(*tank) && used(worked, l) && used(worked, t)),
                meet: meetings.first(l, t),
            };
            pair.shared_tank(found);
            pair.shared_seed(found);
            pair.metals(found);
        }
    }
}

fn used(worked: &Worked<'_, '_>, treatment: usize) -> bool {
    worked.draft.lines.get(treatment).is_some_and(|line| !line.doses.is_empty())
}

/// By pair of treatments: the first order that gets both.
struct Meetings {
    first: Vec<Option<usize>>,
    treatments: usize,
}

impl Meetings {
    fn of(worked: &Worked<'_, '_>) -> Self {
        // A bit per treatment, so that ten thousand orders of a hundred treatments take no time.
        const { assert!(TREATMENTS <= 128) };
        let treatments = worked.draft.model.treatments.len();
        let mut meetings = Self { first: vec![None; treatments.saturating_mul(treatments)], treatments };
        let mut met = [0_u128; TREATMENTS];
        for (o, order) in worked.draft.model.orders.iter().enumerate() {
            let mask = order.treat.iter().fold(0, |mask, t| mask | bit(*t));
            for t in &order.treat {
                let Some(known) = met.get_mut(*t) else { continue };
                let mut new = mask & !*known;
                *known |= mask;
                while let Some(other) = usize::try_from(new.trailing_zeros()).ok().filter(|_| new != 0) {
                    new &= !bit(other);
                    let place = meetings.place(*t, other);
                    if let Some(cell) = meetings.first.get_mut(place) {
                        *cell = Some(o);
                    }
                }
            }
        }
        meetings
    }

    fn first(&self, one: usize, other: usize) -> Option<usize> {
        self.first.get(self.place(one, other)).copied().flatten()
    }

    fn place(&self, one: usize, other: usize) -> usize {
        one.saturating_mul(self.treatments).saturating_add(other)
    }
}

fn bit(treatment: usize) -> u128 {
    u32::try_from(treatment).ok().and_then(|shift| 1_u128.checked_shl(shift)).unwrap_or(0)
}

/// A living product and another.
struct Pair<'a, 'm, 'j> {
    worked: &'a Worked<'m, 'j>,
    living: (usize, &'a Treatment<'j>),
    other: (usize, &'a Treatment<'j>),
    /// What the other's maker declares of the living one.
    declared: Option<(usize, &'a WithLiving)>,
    /// The tank that both are mixed in.
    tank: Option<usize>,
    /// The first order that gets both.
    meet: Option<usize>,
}

impl Pair<'_, '_, '_> {
    fn names(&self) -> (String, String) {
        (product(self.worked, self.living.0), product(self.worked, self.other.0))
    }

    fn shared_tank(&self, found: &mut Found) {
        let Some(shared) = self.tank else { return };
        if self.declared.is_some_and(|(_, with)| with.same_tank) {
            return;
        }
        let ((living, other), t) = (self.names(), self.other.0);
        let message = format!(
            "{other} goes into tank {} with the living product {living}, and its maker does not declare that safe. Give {living} a tank of its own; only where the makers say so, declare same_tank.",
            tank(self.worked, shared)
        );
        found.add(Severity::Stop, Code::LivingSharesTank, format!("/treatments/{t}/tank"), message);
    }

    fn shared_seed(&self, found: &mut Found) {
        let Some(order) = self.meet.map(|order| quoted(order_name(self.worked, order))) else { return };
        let ((living, other), t) = (self.names(), self.other.0);
        match self.declared {
            None => {
                let message = format!(
                    "Nothing is declared about {other} on one seed with the living product {living}; order {order} gets both. Ask the makers before treating, and give {other} a with_living entry."
                );
                found.add(Severity::Warn, Code::CompatibilityUnknown, format!("/treatments/{t}"), message);
            }
            Some((w, with)) if with.same_seed == Some(false) => {
                let message = format!(
                    "{other} must not go on one seed with the living product {living}, as its maker declares, and order {order} gets both. Leave one of them off this seed."
                );
                let at = format!("/treatments/{t}/with_living/{w}/same_seed");
                found.add(Severity::Stop, Code::UnsafeWithLiving, at, message);
            }
            Some(_) => {}
        }
    }

    fn metals(&self, found: &mut Found) {
        if self.tank.is_none() && self.meet.is_none() {
            return;
        }
        let t = self.other.0;
        let constituents = self.other.1.doc.constituents.as_deref().unwrap_or_default().iter().enumerate();
        for (c, constituent) in constituents.filter(|(_, constituent)| is_metal(constituent)) {
            let (severity, message) = self.metal(constituent);
            found.add(severity, Code::MetalNearLiving, format!("/treatments/{t}/constituents/{c}"), message);
        }
    }

    fn metal(&self, constituent: &str) -> (Severity, String) {
        let (living, other) = self.names();
        let holds = format!("{other} holds {}", quoted(constituent));
        if let Some(shared) = self.tank {
            let shared = tank(self.worked, shared);
            let message = format!(
                "{holds} and goes into tank {shared} with the living product {living}; soluble metal salts can kill its cells. Mix them in tanks of their own."
            );
            return (Severity::Stop, message);
        }
        if self.declared.is_some_and(|(_, with)| with.same_seed == Some(true)) {
            let message = format!(
                "{holds} and goes on one seed with the living product {living}, which its maker declares safe. Keep the two apart until they are on the seed."
            );
            return (Severity::Note, message);
        }
        let message = format!(
            "{holds} and goes on one seed with the living product {living}; soluble metal salts can kill its cells. Ask the makers, or leave it off this seed."
        );
        (Severity::Warn, message)
    }
}
