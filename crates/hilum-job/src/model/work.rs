//! How much work a job makes: by counts, before it is done.

use alloc::format;
use alloc::vec::Vec;

use super::Model;
use super::order::Order;
use super::treatment::Treatment;
use crate::limits::STEPS;
use crate::problem::{Problem, Problems};

/// Refuses what would take more steps than a plan may.
pub(super) fn bounded(model: &Model<'_>) -> Result<(), Problems> {
    let steps =
        model.orders.iter().map(|order| of_order(model, order)).fold(pairs(model), usize::saturating_add);
    if steps <= STEPS {
        return Ok(());
    }
    let message = format!(
        "make {steps} steps of work (each treatment, active, statement, crop or storage period of each); at most {STEPS} are planned, so split the job"
    );
    Err(Problems::one(Problem { pointer: "/orders".into(), value: None, message }))
}

/// All that is worked out for one order.
fn of_order(model: &Model<'_>, order: &Order<'_>) -> usize {
    let gets = || order.treat.iter().filter_map(|t| model.treatments.get(*t));
    let sum = |of: fn(&Treatment<'_>) -> usize| gets().map(of).fold(0, usize::saturating_add);
    let doses = sum(dose);
    let declared = sum(|treatment| treatment.with_living.len());
    let living = sum(|treatment| usize::from(treatment.living.is_some()));
    let followed = living.saturating_mul(order.after.storage.len().saturating_add(declared));
    [order.on_seed.len(), declared, followed].into_iter().fold(doses, usize::saturating_add)
}

/// A treatment on an order, and all that is asked of its label.
fn dose(treatment: &Treatment<'_>) -> usize {
    let crops = treatment.doc.crops.as_ref().map_or(0, Vec::len);
    [treatment.actives.len(), treatment.also.len(), crops].into_iter().fold(1, usize::saturating_add)
}

/// Every living product against what is in every other.
fn pairs(model: &Model<'_>) -> usize {
    let living = model.treatments.iter().filter(|treatment| treatment.living.is_some()).count();
    let constituents =
        model.treatments.iter().map(|treatment| treatment.doc.constituents.as_ref().map_or(0, Vec::len));
    living.saturating_mul(constituents.fold(0, usize::saturating_add))
}
