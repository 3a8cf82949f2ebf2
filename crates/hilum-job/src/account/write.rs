//! An account as it is written.

use alloc::vec::Vec;

use hilum::account::{Achieved, Verdict};
use hilum::rate::{ActivePerSeed, Dry, Liquid, PerMass};
use hilum::seed::SeedSize;

use super::order::{Applied, Done, DryDone, TankDone};
use super::{Day, finding, living, record};
use crate::document::{
    self, Account, AccountedDry, AccountedOrder, AccountedTank, AppliedActive, AppliedProduct, Out, Units,
};
use crate::list::keep;
use crate::model::reading::Resolved;
use crate::model::run::RunOrder;
use crate::plan::active::{self, OnSeed};
use crate::plan::dose::Rate;
use crate::plan::draft::{self, Draft};
use crate::plan::out::{DRY_PER_MASS, LIQUID, LIQUID_PER_MASS, SEED_MASS, Written};

/// The whole account.
pub(crate) fn account(day: &Day<'_, '_>, done: &[Done]) -> Account {
    let model = day.draft.model;
    let mut orders = Vec::new();
    for (read, done) in day.run.orders.iter().zip(done) {
        keep(&mut orders, order(day, read, done));
    }
    Account {
        format: 1,
        hilum: crate::VERSION.into(),
        title: model.job.title.clone(),
        units: model.units,
        tolerance: day.run.tolerance.number(),
        orders,
        findings: finding::findings(day, done),
    }
}

fn order(day: &Day<'_, '_>, read: &RunOrder<'_>, done: &Done) -> Option<AccountedOrder> {
    let draft = &day.draft;
    let (order, units) = (draft.order(done.order)?, draft.units());
    let mut tanks = Vec::new();
    for read in &done.tanks {
        keep(&mut tanks, tank(day, done, read));
    }
    let mut dry = Vec::new();
    for read in &done.dry {
        keep(&mut dry, dry_product(day, done, read));
    }
    let mut actives = Vec::new();
    for on_seed in on_seed(draft, done) {
        keep(&mut actives, active(draft, &on_seed));
    }
    let alive = living::all(day, read, done);
    let mut living = Vec::new();
    for alive in &alive {
        keep(&mut living, living::written(day, read, alive));
    }
    Some(AccountedOrder {
        order: order.doc.order.clone(),
        lot: order.doc.lot.clone(),
        mass: SEED_MASS.of(done.seed.get(), units),
        mass_uncertainty: (done.resolved == Resolved::All)
            .then(|| SEED_MASS.of(done.seed.uncertainty(), units)),
        ordered: SEED_MASS.of(order.seed.mass, units),
        tanks,
        dry: (!dry.is_empty()).then_some(dry),
        actives,
        living: (!living.is_empty()).then_some(living),
        record: record::record(day, read, done, &alive)?,
    })
}

fn tank(day: &Day<'_, '_>, done: &Done, tank: &TankDone) -> Option<AccountedTank> {
    let units = day.draft.units();
    let mut products = Vec::new();
    for applied in &tank.products {
        keep(&mut products, product(&day.draft, done, applied));
    }
    Some(AccountedTank {
        tank: day.draft.model.tanks.get(tank.tank)?.doc.tank.clone(),
        used: LIQUID.of(tank.used.get(), units),
        achieved: tank.achieved.rate().out(units),
        uncertainty: (tank.resolved.and(done.resolved) == Resolved::All)
            .then(|| LIQUID_PER_MASS.of(tank.achieved.uncertainty(), units)),
        target: tank.target.out(units),
        deviation: tank.achieved.deviation(tank.target),
        verdict: written(tank.achieved.verdict(tank.target, day.run.tolerance)),
        products,
    })
}

fn product(draft: &Draft<'_, '_>, done: &Done, applied: &Applied) -> Option<AppliedProduct> {
    let units = draft.units();
    Some(AppliedProduct {
        product: draft.lines.get(applied.treatment)?.treatment.doc.product.clone(),
        used: applied.used.out(units),
        per_mass: per_mass(applied.rate, units),
        per_seed: per_seed(applied.rate, draft.order(done.order)?.seed.size, units),
        target: per_mass(applied.target, units),
        deviation: applied.target.differs(applied.rate),
    })
}

fn dry_product(day: &Day<'_, '_>, done: &Done, dry: &DryDone) -> Option<AccountedDry> {
    let written = product(&day.draft, done, &dry.product)?;
    let Rate::Dry(target) = dry.product.target else { return None };
    Some(AccountedDry {
        product: written.product,
        used: written.used,
        achieved: written.per_mass,
        uncertainty: uncertainty(dry.achieved, dry.resolved.and(done.resolved), day.draft.units()),
        target: written.target,
        deviation: written.deviation,
        verdict: self::written(dry.achieved.verdict(target, day.run.tolerance)),
        per_seed: written.per_seed,
    })
}

fn uncertainty(achieved: Achieved<Dry>, resolved: Resolved, units: Units) -> Option<Out> {
    (resolved == Resolved::All).then(|| DRY_PER_MASS.of(achieved.uncertainty(), units))
}

fn written(verdict: Verdict) -> document::Verdict {
    match verdict {
        Verdict::Low => document::Verdict::Low,
        Verdict::OnTarget => document::Verdict::OnTarget,
        Verdict::High => document::Verdict::High,
        Verdict::CannotTell => document::Verdict::CannotTell,
    }
}

/// A dose per mass.
pub(crate) fn per_mass(rate: Rate, units: Units) -> Out {
    match rate {
        Rate::Liquid(rate) => PerMass::<Liquid>::out(rate, units),
        Rate::Dry(rate) => PerMass::<Dry>::out(rate, units),
    }
}

fn per_seed(rate: Rate, size: SeedSize, units: Units) -> Out {
    match rate {
        Rate::Liquid(rate) => rate.per_seed(size).out(units),
        Rate::Dry(rate) => rate.per_seed(size).out(units),
    }
}

/// The actives on the seed, with what was there before. One of which a product's share is not known is left
/// out: a sum without it would promise too little.
pub(crate) fn on_seed<'j>(draft: &Draft<'_, 'j>, done: &Done) -> Vec<OnSeed<'j>> {
    let Some(order) = draft.order(done.order) else { return Vec::new() };
    let size = order.seed.size;
    let mut doses: Vec<(&'j str, ActivePerSeed)> = Vec::new();
    let mut unknown: Vec<&'j str> = Vec::new();
    for (t, line, _) in draft.on_order(done.order) {
        let applied = done.of(t);
        for (name, content) in &line.treatment.actives {
            let rate = applied
                .and_then(|applied| draft::active(applied.rate, *content, line.treatment).ok().flatten());
            match rate {
                Some(rate) => doses.push((name, rate.per_seed(size))),
                None => unknown.push(name),
            }
        }
    }
    let mut summed = active::summed(draft, done.order, doses);
    summed.retain(|on_seed| !unknown.contains(&on_seed.active));
    summed
}

fn active(draft: &Draft<'_, '_>, on_seed: &OnSeed<'_>) -> Option<AppliedActive> {
    let planned = active::active(draft, on_seed)?;
    Some(AppliedActive {
        active: planned.active,
        per_seed: planned.per_seed,
        per_mass: planned.per_mass,
        per_area: planned.per_area,
        share_of_season_limit: planned.share_of_season_limit,
        max_sowing: planned.max_sowing,
    })
}
