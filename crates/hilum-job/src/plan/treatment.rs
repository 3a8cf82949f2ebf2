//! A treatment as a plan writes it: its dose on each order, and what to open.

use alloc::string::String;
use alloc::vec::Vec;

use hilum::seed::SeedUnit;
use hilum::text::Bases;

use super::dose::{Basis, Label, Rate};
use super::draft::{Dose, Draft, Line};
use super::out::{DRY_PER_BUSHEL, DRY_PER_UNIT, LIQUID_PER_BUSHEL, LIQUID_PER_UNIT, SIZE, Written};
use crate::document::{DoseActive, LivingCells, Out, PlannedDose, Quantity, StatementCheck};
use crate::model::order::Order;

/// The dose of a treatment on one order.
pub(crate) fn dose(
    draft: &Draft<'_, '_>,
    line: &Line<'_, '_>,
    dose: &Dose,
    living: Option<LivingCells>,
) -> Option<PlannedDose> {
    let order = draft.order(dose.order)?;
    let units = draft.units();
    let size = order.seed.size;
    let label = line.label(order);
    let (per_mass, per_seed, per_area) = match dose.rate {
        Rate::Liquid(rate) => {
            let per_seed = rate.per_seed(size);
            let per_area = order.seed.sown.map(|sown| per_seed.per_area(sown).out(units));
            (rate.out(units), per_seed.out(units), per_area)
        }
        Rate::Dry(rate) => {
            let per_seed = rate.per_seed(size);
            let per_area = order.seed.sown.map(|sown| per_seed.per_area(sown).out(units));
            (rate.out(units), per_seed.out(units), per_area)
        }
    };
    Some(PlannedDose {
        order: order.doc.order.clone(),
        per_mass,
        per_seed,
        per_unit: per_unit(draft, &label, dose.rate),
        per_bushel: per_bushel(draft, order, dose.rate),
        per_area,
        statements: statements(draft, line, dose),
        actives: actives(draft, line, dose, order),
        living,
    })
}

/// Per the order's unit when that counts seeds, else per the label's.
fn per_unit(draft: &Draft<'_, '_>, label: &Label<'_, '_>, rate: Rate) -> Option<Out> {
    let own = label.order.bases.unit;
    let unit = match own {
        Some(SeedUnit::Count(unit)) => unit,
        _ => label.treatment.label_unit?,
    };
    let bases = Bases { unit: Some(SeedUnit::Count(unit)), bushel: None };
    let size = label.seed.size;
    let (row, base) = match rate {
        Rate::Liquid(rate) => (&LIQUID_PER_UNIT, rate.per_seed(size).get().value),
        Rate::Dry(rate) => (&DRY_PER_UNIT, rate.per_seed(size).get().value),
    };
    Some(row.with(base, &bases, draft.units()))
}

/// Per the order's bushel.
fn per_bushel(draft: &Draft<'_, '_>, order: &Order<'_>, rate: Rate) -> Option<Out> {
    let bases = Bases { unit: None, bushel: Some(order.bases.bushel?) };
    let (row, base) = match rate {
        Rate::Liquid(rate) => (&LIQUID_PER_BUSHEL, rate.get().value),
        Rate::Dry(rate) => (&DRY_PER_BUSHEL, rate.get().value),
    };
    Some(row.with(base, &bases, draft.units()))
}

/// The label's other statements, against the one that governs.
fn statements(draft: &Draft<'_, '_>, line: &Line<'_, '_>, dose: &Dose) -> Option<Vec<StatementCheck>> {
    let docs = line.treatment.doc.also_stated.as_ref()?;
    let size = draft.order(dose.order)?.seed.size;
    let mut checks = Vec::new();
    for ((rate, basis), doc) in dose.also.iter().zip(docs) {
        let implied = match (dose.basis, basis) {
            (Basis::Mass, Basis::Seed) => dose.rate.implied_size(*rate, size),
            (Basis::Seed, Basis::Mass) => rate.implied_size(dose.rate, size),
            _ => None,
        };
        checks.push(StatementCheck {
            stated: stated(doc),
            implied_size: implied.map(|size| SIZE.of(size.get(), draft.units())),
            difference: dose.rate.differs(*rate),
        });
    }
    Some(checks)
}

fn stated(doc: &Quantity) -> String {
    match doc {
        Quantity::Text(text) => text.clone(),
        Quantity::Pair { value, unit } => alloc::format!("{} {unit}", crate::digits::plain(*value)),
    }
}

fn actives(draft: &Draft<'_, '_>, line: &Line<'_, '_>, dose: &Dose, order: &Order<'_>) -> Vec<DoseActive> {
    let units = draft.units();
    let mut actives = Vec::new();
    for ((name, _), per_mass) in line.treatment.actives.iter().zip(&dose.actives) {
        let Some(per_mass) = per_mass else { continue };
        let per_seed = per_mass.per_seed(order.seed.size);
        actives.push(DoseActive {
            active: (*name).into(),
            per_mass: per_mass.out(units),
            per_seed: per_seed.out(units),
            per_area: order.seed.sown.map(|sown| per_seed.per_area(sown).out(units)),
        });
    }
    actives
}
