//! What it costs.

use hilum::quantity::{Area, Measure};
use hilum::seed::SeedUnit;

use super::draft::{Draft, Line};
use super::pack::{Opened, count};
use crate::document::Cost;

/// The cost of one treatment.
#[derive(Clone, Copy, Debug)]
pub(crate) struct LineCost {
    pub(crate) opened: f64,
    pub(crate) applied: f64,
}

/// Price of what is opened, and the share of it that goes on seed. None where an opened pack has no price.
pub(crate) fn of_line(line: &Line<'_, '_>, opened: &Opened, product_opened: f64) -> Option<LineCost> {
    let packs = line.treatment.packs.iter().zip(&opened.sets).filter(|(_, sets)| **sets > 0);
    let mut cost: Option<f64> = None;
    for (pack, sets) in packs {
        cost = Some(cost.unwrap_or_default() + pack.doc.price? * count(*sets));
    }
    let opened = cost?;
    Some(LineCost { opened, applied: opened * (line.needed.base() / product_opened) })
}

/// The cost of the job: the sum over treatments that have one.
pub(crate) fn of_job(draft: &Draft<'_, '_>, costs: &[Option<LineCost>]) -> Option<Cost> {
    let mut known = costs.iter().flatten().peekable();
    known.peek()?;
    let (opened, applied) =
        known.fold((0.0, 0.0), |(opened, applied), cost| (opened + cost.opened, applied + cost.applied));
    Some(Cost {
        opened,
        applied,
        per_unit: units(draft).map(|units| applied / units),
        per_area: area(draft).map(|area| applied / area),
    })
}

/// Units of all orders, where all have the same one.
fn units(draft: &Draft<'_, '_>) -> Option<f64> {
    let first = draft.model.orders.first()?.bases.unit?;
    draft.model.orders.iter().try_fold(0.0, |sum, order| {
        let unit: SeedUnit = order.bases.unit.filter(|unit| *unit == first)?;
        Some(sum + unit.units_in(order.seed.mass, order.seed.size).ok()?)
    })
}

/// Area of all orders in the plan's unit, where all are sown.
fn area(draft: &Draft<'_, '_>) -> Option<f64> {
    let area = draft.model.orders.iter().try_fold(0.0, |sum, order| {
        let sown = order.seed.sown?;
        Some(sum + sown.area(order.seed.seeds).ok()?.value)
    })?;
    Some(super::out::AREA.of(Area::from_base(area), draft.units()).value)
}
