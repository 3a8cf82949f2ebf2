//! Every dose of a job, worked out once: what all parts of the plan stand on.

use alloc::vec::Vec;
use alloc::{format, vec};

use hilum::quantity::{Mass, Measure};
use hilum::rate::{Active, CellCount, PerMass, PerSeed};
use hilum::viability::Titre;

use super::dose::{Amount, Basis, Label, Rate, Refused};
use super::set::mix_titre;
use crate::document::{Quantity, Units};
use crate::list::keep;
use crate::model::Model;
use crate::model::ask::{Asked, shown};
use crate::model::order::{Order, Seed};
use crate::model::treatment::{Stated, Treatment};
use crate::problem::{Gathered, Pointer, Problems, quoted};

/// A job with its doses.
pub(crate) struct Draft<'m, 'j> {
    pub(crate) model: &'m Model<'j>,
    /// By treatment, in the job's order.
    pub(crate) lines: Vec<Line<'m, 'j>>,
    /// By order: the treatments that it gets, each with its place in the line.
    pub(crate) of_order: Vec<Vec<(usize, usize)>>,
}

/// One treatment with all that it does.
pub(crate) struct Line<'m, 'j> {
    pub(crate) treatment: &'m Treatment<'j>,
    pub(crate) titre: Option<Titre>,
    /// On each order that gets it, in running order.
    pub(crate) doses: Vec<Dose>,
    /// What the orders take up.
    pub(crate) needed: Amount,
    /// The least and the most of that, within the sizes' tolerance.
    pub(crate) spread: Option<(Amount, Amount)>,
}

impl<'m, 'j> Line<'m, 'j> {
    /// What its statements are turned into doses with, for an order at its own size.
    pub(crate) fn label<'a>(&'a self, order: &'a Order<'j>) -> Label<'a, 'j>
    where
        'm: 'a,
    {
        Label { treatment: self.treatment, order, seed: &order.seed, titre: self.titre }
    }
}

/// One treatment on one order.
#[derive(Clone, Debug)]
pub(crate) struct Dose {
    pub(crate) order: usize,
    pub(crate) rate: Rate,
    pub(crate) basis: Basis,
    pub(crate) needed: Amount,
    /// Of each active in the product, in its order; `None` where density is missing.
    pub(crate) actives: Vec<Option<PerMass<Active>>>,
    /// Living cells on a seed.
    pub(crate) cells: Option<PerSeed<CellCount>>,
    /// The label's other statements: rate and basis.
    pub(crate) also: Vec<(Rate, Basis)>,
    pub(crate) min: Option<Rate>,
    pub(crate) max: Option<Rate>,
}

impl<'m, 'j> Draft<'m, 'j> {
    /// Works out every dose.
    pub(crate) fn of(model: &'m Model<'j>) -> Result<Self, Problems> {
        let mut gathered = Gathered::default();
        let root = Pointer::Root;
        let at = root.field("treatments");
        let mut takers = vec![Vec::new(); model.treatments.len()];
        for (o, order) in model.orders.iter().enumerate() {
            for t in &order.treat {
                if let Some(list) = takers.get_mut(*t) {
                    list.push(o);
                }
            }
        }
        let mut lines = Vec::new();
        for (t, (treatment, orders)) in model.treatments.iter().zip(&takers).enumerate() {
            keep(&mut lines, line(model, treatment, orders, &at.item(t), &mut gathered));
        }
        let of_order = of_order(model, &takers);
        let whole = lines.len() == takers.len();
        gathered.settle(whole.then_some(Self { model, lines, of_order }))
    }

    /// The doses on an order, with their lines.
    pub(crate) fn on_order(&self, order: usize) -> impl Iterator<Item = (usize, &Line<'m, 'j>, &Dose)> {
        self.of_order
            .get(order)
            .map(Vec::as_slice)
            .unwrap_or_default()
            .iter()
            .filter_map(|place| self.dose_at(*place))
    }

    /// The dose of a treatment on an order.
    pub(crate) fn on(&self, order: usize, treatment: usize) -> Option<&Dose> {
        self.on_order(order).find(|(t, _, _)| *t == treatment).map(|(_, _, dose)| dose)
    }

    // Asked in two dozen loops.
    #[inline(never)]
    fn dose_at(&self, (t, place): (usize, usize)) -> Option<(usize, &Line<'m, 'j>, &Dose)> {
        let line = self.lines.get(t)?;
        Some((t, line, line.doses.get(place)?))
    }

    pub(crate) fn units(&self) -> Units {
        self.model.units
    }

    pub(crate) fn order(&self, index: usize) -> Option<&'m Order<'j>> {
        self.model.orders.get(index)
    }
}

fn of_order(model: &Model<'_>, takers: &[Vec<usize>]) -> Vec<Vec<(usize, usize)>> {
    let mut of_order = vec![Vec::new(); model.orders.len()];
    for (t, orders) in takers.iter().enumerate() {
        for (place, order) in orders.iter().enumerate() {
            if let Some(list) = of_order.get_mut(*order) {
                list.push((t, place));
            }
        }
    }
    of_order
}

/// One treatment on all its orders.
fn line<'m, 'j>(
    model: &'m Model<'j>,
    treatment: &'m Treatment<'j>,
    takers: &[usize],
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Line<'m, 'j>> {
    let titre = match mix_titre(treatment) {
        Ok(titre) => titre,
        Err(error) => {
            refuse(&error.into(), treatment, None, &at.field("living"), at, gathered);
            return None;
        }
    };
    let mut line = Line { treatment, titre, doses: Vec::new(), needed: nothing(treatment), spread: None };
    let mut spread: Option<(f64, f64)> = None;
    let mut total = 0.0;
    for o in takers {
        let order = model.orders.get(*o)?;
        let label = Label { treatment, order, seed: &order.seed, titre };
        // One problem for a statement is enough: other orders would repeat it.
        let dose = dose(&label, *o, at, gathered)?;
        let (low, high) = ends(&label, order, dose.needed.base())?;
        total += dose.needed.base();
        let (sum_low, sum_high) = spread.unwrap_or_default();
        spread = Some((sum_low + low, sum_high + high));
        line.doses.push(dose);
    }
    line.needed = line.needed.like(total);
    let tolerated = takers.iter().any(|o| model.orders.get(*o).is_some_and(|order| order.spread.is_some()));
    line.spread =
        spread.filter(|_| tolerated).map(|(low, high)| (line.needed.like(low), line.needed.like(high)));
    Some(line)
}

fn nothing(treatment: &Treatment<'_>) -> Amount {
    if treatment.tank.is_some() {
        Amount::Liquid(Measure::from_base(0.0))
    } else {
        Amount::Dry(Mass::from_base(0.0))
    }
}

/// What an order takes at the ends of its size's tolerance.
fn ends(label: &Label<'_, '_>, order: &Order<'_>, own: f64) -> Option<(f64, f64)> {
    let Some(spread) = &order.spread else { return Some((own, own)) };
    let needed = |seed: &Seed| {
        let (rate, _) = Label { seed, ..*label }.governing().ok()?;
        rate.needed(seed.mass).ok().map(Amount::base)
    };
    let [a, b] = spread;
    let (a, b) = (needed(a)?, needed(b)?);
    Some((a.min(b).min(own), a.max(b).max(own)))
}

fn dose(label: &Label<'_, '_>, order: usize, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Dose> {
    let treatment = label.treatment;
    let (field, doc) = stated_field(treatment);
    let outer = at.field(field);
    let inner = outer.field("rate");
    let place = if matches!(treatment.stated, Stated::Active(..)) { &inner } else { &outer };
    let (rate, basis) =
        label.governing().map_err(|why| refuse(&why, treatment, doc, place, at, gathered)).ok()?;
    let needed = rate
        .needed(label.seed.mass)
        .map_err(|error| refuse(&error.into(), treatment, doc, place, at, gathered))
        .ok()?;
    let also = also(label, at, gathered);
    let min =
        bound(label, treatment.min_rate.as_ref(), treatment.doc.min_rate.as_ref(), "min_rate", at, gathered);
    let max =
        bound(label, treatment.max_rate.as_ref(), treatment.doc.max_rate.as_ref(), "max_rate", at, gathered);
    let cells =
        cells(label, rate).map_err(|why| refuse(&why, treatment, None, &at.field("living"), at, gathered));
    let mut actives = Vec::new();
    for (_, content) in &treatment.actives {
        match active(rate, *content, treatment) {
            Ok(active) => actives.push(active),
            Err(error) => {
                refuse(&error.into(), treatment, None, &at.field("actives"), at, gathered);
                return None;
            }
        }
    }
    Some(Dose { order, rate, basis, needed, actives, cells: cells.ok()?, also: also?, min: min?, max: max? })
}

/// The field that states the dose, and what stands there.
fn stated_field<'j>(treatment: &Treatment<'j>) -> (&'static str, Option<&'j Quantity>) {
    let doc = treatment.doc;
    match treatment.stated {
        Stated::Product(_) => ("rate", doc.rate.as_ref()),
        Stated::Active(..) => ("active_rate", doc.active_rate.as_ref().map(|active| &active.rate)),
        Stated::Cells(_) => ("cells", doc.cells.as_ref()),
    }
}

fn also(label: &Label<'_, '_>, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Vec<(Rate, Basis)>> {
    let docs = label.treatment.doc.also_stated.as_deref().unwrap_or_default().iter();
    let list = at.field("also_stated");
    let mut read = Vec::new();
    for (i, (asked, doc)) in label.treatment.also.iter().zip(docs).enumerate() {
        match label.product(asked) {
            Ok(statement) => read.push(statement),
            Err(why) => {
                refuse(&why, label.treatment, Some(doc), &list.item(i), at, gathered);
                return None;
            }
        }
    }
    Some(read)
}

fn bound(
    label: &Label<'_, '_>,
    asked: Option<&Asked<'_>>,
    doc: Option<&Quantity>,
    field: &str,
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Option<Rate>> {
    let Some(asked) = asked else { return Some(None) };
    label
        .product(asked)
        .map(|(rate, _)| Some(rate))
        .map_err(|why| refuse(&why, label.treatment, doc, &at.field(field), at, gathered))
        .ok()
}

/// Living cells on a seed of the order's own size.
pub(crate) fn cells(label: &Label<'_, '_>, rate: Rate) -> Result<Option<PerSeed<CellCount>>, Refused> {
    let (Some(living), Some(titre)) = (&label.treatment.living, label.titre) else { return Ok(None) };
    let density = label.treatment.density;
    Ok(Some(match rate {
        Rate::Liquid(rate) => {
            titre.per_volume(density)?.cells(rate.per_seed(label.seed.size), living.recovery)
        }
        Rate::Dry(rate) => titre.per_mass(density)?.cells(rate.per_seed(label.seed.size), living.recovery),
    }))
}

/// An active in a dose; `None` where only the density is missing to know it.
pub(crate) fn active(
    rate: Rate,
    content: hilum::rate::Content,
    treatment: &Treatment<'_>,
) -> Result<Option<PerMass<Active>>, hilum::Error> {
    let active = match rate {
        Rate::Liquid(rate) => content.per_volume(treatment.density).map(|content| rate.active(content)),
        Rate::Dry(rate) => content.by_mass(treatment.density).and_then(|share| rate.active(share)),
    };
    match active {
        Ok(active) => Ok(Some(active)),
        Err(hilum::Error::Needed { .. }) => Ok(None),
        Err(error) => Err(error),
    }
}

/// Notes why a statement is no dose, at the statement or at the density that it lacks.
fn refuse(
    why: &Refused,
    treatment: &Treatment<'_>,
    doc: Option<&Quantity>,
    at: &Pointer<'_>,
    treatment_at: &Pointer<'_>,
    gathered: &mut Gathered,
) {
    match why {
        Refused::Statement(message) => gathered.add(at, doc.map(shown), message.clone()),
        Refused::Density(because) => {
            let give =
                format!("that of {}, \"1.04 kg/L\" or the like, {because}", quoted(&treatment.doc.product));
            gathered.missing(&treatment_at.field("density"), &give);
        }
    }
}
