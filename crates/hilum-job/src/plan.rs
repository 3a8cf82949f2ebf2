//! A job in, a plan out.

pub(crate) mod active;
mod added;
pub(crate) mod batch;
pub(crate) mod clock;
mod cost;
pub(crate) mod dose;
pub(crate) mod draft;
mod living;
pub(crate) mod order;
pub(crate) mod out;
pub(crate) mod pack;
pub(crate) mod recipe;
pub(crate) mod record;
mod set;
mod supply;
pub(crate) mod tank;
mod treatment;

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use hilum::quantity::{Mass, Measure};

use self::batch::Batches;
use self::cost::LineCost;
use self::draft::{Draft, Line};
pub(crate) use self::living::{LivingFacts, follow, reason};
use self::pack::{Opened, Size, count};
use self::recipe::TankWork;
pub(crate) use self::record::CAUTIONS;
use hilum::text::Decimal;

use crate::document::{
    self, DryOrder, DryTreatment, Finding, Job, OpenedPack, Plan, PlannedActive, PlannedDose, PlannedOrder,
    PlannedTank, PlannedTreatment,
};
use crate::limits::{BATCHES, POURS};
use crate::list::keep;
use crate::model::Model;
use crate::problem::{Problem, Problems, nearest};

/// Plans a job.
///
/// # Errors
/// All that is wrong with the job's quantities and references, and limits of size that a plan would pass.
pub fn plan(job: &Job) -> Result<Plan, Problems> {
    planned(job, nearest)
}

fn planned(job: &Job, decimal: Decimal) -> Result<Plan, Problems> {
    let model = Model::of(job, decimal)?;
    let draft = Draft::of(&model)?;
    let tanks = recipe::tanks(&draft)?;
    let sizes = supply::all_sizes(&draft)?;
    let batches = batch::batches(&draft, &tanks, &sizes).map_err(|batch::TooMany| too_many())?;
    few_pours(&draft, &batches)?;
    let worked = Worked::of(draft, tanks, sizes, batches)?;
    Ok(worked.written())
}

/// Reads a job from JSON text, plans it and writes the plan as JSON text.
///
/// # Errors
/// As [`Job::from_json`] and [`plan`].
pub fn plan_json(text: &str) -> Result<String, Problems> {
    plan_json_with(text, nearest)
}

/// As [`plan_json`], with a reader of decimals of the caller's.
///
/// # Errors
/// As [`plan_json`].
pub fn plan_json_with(text: &str, decimal: Decimal) -> Result<String, Problems> {
    planned(&document::read(text, decimal)?, decimal)?.to_json()
}

impl Plan {
    /// The plan as JSON text: the same bytes from every language.
    ///
    /// # Errors
    /// When it cannot be written, which no plan made here is known to cause.
    pub fn to_json(&self) -> Result<String, Problems> {
        serde_json::to_string(self).map_err(|_| {
            let message = "has a plan that cannot be written; report it to who keeps hilum".into();
            Problems::one(Problem { pointer: String::new(), value: None, message })
        })
    }
}

fn too_many() -> Problems {
    let message = format!(
        "would need more than {BATCHES} mixes, the most that a plan holds; use a larger tank or larger packs, or split the job"
    );
    Problems::one(Problem { pointer: "/tanks".into(), value: None, message })
}

/// Refuses more pours than a plan holds.
fn few_pours(draft: &Draft<'_, '_>, batches: &Batches) -> Result<(), Problems> {
    let mut pours: usize = 0;
    for k in 0..draft.model.tanks.len() {
        let parts =
            draft.lines.iter().filter(|line| line.treatment.tank == Some(k)).count().saturating_add(1);
        let mixes = batches.mixes.iter().filter(|mix| mix.tank == k).count();
        pours = pours.saturating_add(parts.saturating_mul(mixes));
    }
    if pours <= POURS {
        return Ok(());
    }
    let message =
        format!("would need more than {POURS} pours; use a larger tank or larger packs, or split the job");
    Err(Problems::one(Problem { pointer: "/tanks".into(), value: None, message }))
}

/// A job worked out to the end: what the plan and its findings are written from.
pub(crate) struct Worked<'m, 'j> {
    pub(crate) draft: Draft<'m, 'j>,
    pub(crate) tanks: Vec<TankWork>,
    pub(crate) sizes: Vec<Vec<Size>>,
    pub(crate) batches: Batches,
    pub(crate) opened: Vec<Option<Opened>>,
    pub(crate) beyond: Vec<supply::Beyond>,
    pub(crate) on_seed: Vec<active::OnSeed<'j>>,
    /// By treatment and place in its line; nothing for what is not alive.
    living: Vec<Vec<Option<LivingFacts>>>,
}

impl<'m, 'j> Worked<'m, 'j> {
    fn of(
        draft: Draft<'m, 'j>,
        tanks: Vec<TankWork>,
        sizes: Vec<Vec<Size>>,
        batches: Batches,
    ) -> Result<Self, Problems> {
        let (mut all_beyond, mut opened) = (Vec::new(), Vec::new());
        for (t, (line, sizes)) in draft.lines.iter().zip(&sizes).enumerate() {
            let beyond = supply::beyond(&tanks, &batches, line, t);
            let masses = line.doses.iter().filter_map(|dose| draft.order(dose.order));
            let treated = Mass::from_base(masses.map(|order| order.seed.mass.value).sum());
            let sets = supply::opened(line, sizes, &batches, t, beyond, treated).ok();
            let few = |opened: &Opened| opened.sets.iter().all(|sets| u32::try_from(*sets).is_ok());
            let sets = sets.filter(|sets| sets.as_ref().is_none_or(few));
            opened.push(sets.ok_or_else(|| too_many_sets(t))?);
            all_beyond.push(beyond);
        }
        let on_seed = active::on_seed(&draft);
        let living = living::all(&draft, &batches);
        Ok(Self { draft, tanks, sizes, batches, opened, beyond: all_beyond, on_seed, living })
    }

    /// A living product on an order's seed: by treatment and place in its line.
    pub(crate) fn living(&self, treatment: usize, place: usize) -> Option<&LivingFacts> {
        self.living.get(treatment)?.get(place)?.as_ref()
    }

    fn written(&self) -> Plan {
        let draft = &self.draft;
        let (mut treatments, mut costs) = (Vec::new(), Vec::new());
        for (t, line) in draft.lines.iter().enumerate() {
            let cost = self.cost(t);
            treatments.push(self.treatment(t, line, cost));
            costs.push(cost);
        }
        Plan {
            format: 1,
            hilum: crate::VERSION.into(),
            title: draft.model.job.title.clone(),
            units: draft.units(),
            orders: self.orders(),
            treatments,
            actives: self.actives(),
            tanks: self.tanks(),
            dry: self.dry(),
            cost: cost::of_job(draft, &costs),
            findings: self.findings(),
        }
    }

    fn orders(&self) -> Vec<PlannedOrder> {
        let orders = &self.draft.model.orders;
        let mut written = Vec::new();
        for (o, (order, liquid)) in orders.iter().zip(order::liquids(orders.len(), &self.tanks)).enumerate() {
            written.push(order::order(&self.draft, order, liquid, record::record(self, o)));
        }
        written
    }

    fn actives(&self) -> Vec<PlannedActive> {
        let mut written = Vec::new();
        for on_seed in &self.on_seed {
            keep(&mut written, active::active(&self.draft, on_seed));
        }
        written
    }

    fn tanks(&self) -> Vec<PlannedTank> {
        let mut written = Vec::new();
        for (k, (tank, work)) in self.draft.model.tanks.iter().zip(&self.tanks).enumerate() {
            written.push(tank::tank(&self.draft, tank, work, &self.batches, k));
        }
        written
    }

    fn findings(&self) -> Vec<Finding> {
        crate::finding::findings(self)
    }

    /// Product that the opened sets hold.
    pub(crate) fn product_opened(&self, t: usize) -> Option<f64> {
        let opened = self.opened.get(t)?.as_ref()?;
        if opened.decided == pack::Decided::ByMixes {
            return Some(self.beyond.get(t)?.poured);
        }
        let sizes = self.sizes.get(t)?.iter().zip(&opened.sets);
        Some(sizes.map(|(size, sets)| size.adds.base() * count(*sets)).sum())
    }

    /// Whether the shelf has too little of a product.
    fn short(&self, t: usize) -> bool {
        self.opened
            .get(t)
            .and_then(Option::as_ref)
            .is_some_and(|opened| opened.supply == hilum::pack::Supply::Short)
    }

    fn cost(&self, t: usize) -> Option<LineCost> {
        let opened = self.opened.get(t)?.as_ref()?;
        cost::of_line(self.draft.lines.get(t)?, opened, self.product_opened(t)?)
    }

    fn treatment(&self, t: usize, line: &Line<'_, '_>, cost: Option<LineCost>) -> PlannedTreatment {
        let units = self.draft.units();
        let doc = line.treatment.doc;
        // Coverage that was stated too high leaves less than nothing; the finding coverage_disagrees tells it.
        let left = self.product_opened(t).zip(self.beyond.get(t)).filter(|_| !self.short(t));
        let left = left.map(|(opened, beyond)| opened - line.needed.base() - beyond.hold_up);
        PlannedTreatment {
            product: doc.product.clone(),
            tank: doc.tank.clone(),
            needed: line.needed.out(units),
            needed_low: line.spread.map(|(low, _)| low.out(units)),
            needed_high: line.spread.map(|(_, high)| high.out(units)),
            orders: self.doses(t, line),
            packs: self.packs(t, line),
            leftover: left.map(|left| line.needed.like(left).out(units)),
            cost_opened: cost.map(|cost| cost.opened),
            cost_applied: cost.map(|cost| cost.applied),
        }
    }

    fn doses(&self, t: usize, line: &Line<'_, '_>) -> Vec<PlannedDose> {
        let draft = &self.draft;
        let mut written = Vec::new();
        for (place, dose) in line.doses.iter().enumerate() {
            let living = self.living(t, place).map(|facts| living::written(draft, facts));
            keep(&mut written, treatment::dose(draft, line, dose, living));
        }
        written
    }

    fn packs(&self, t: usize, line: &Line<'_, '_>) -> Vec<OpenedPack> {
        let opened = self.opened.get(t).and_then(Option::as_ref).zip(self.sizes.get(t));
        opened.map_or_else(Vec::new, |(opened, sizes)| pack::opened(&self.draft, line, sizes, &opened.sets))
    }

    fn dry(&self) -> Option<Vec<DryTreatment>> {
        let mut dry = Vec::new();
        for line in self.draft.lines.iter().filter(|line| line.treatment.tank.is_none()) {
            let mut orders = Vec::new();
            for dose in &line.doses {
                let Some(order) = self.draft.order(dose.order) else { continue };
                let mass = dose.needed.out(self.draft.units());
                orders.push(DryOrder { order: order.doc.order.clone(), mass });
            }
            if !orders.is_empty() {
                dry.push(DryTreatment { product: line.treatment.doc.product.clone(), orders });
            }
        }
        (!dry.is_empty()).then_some(dry)
    }
}

fn too_many_sets(treatment: usize) -> Problems {
    let message = format!("would need more than {} sets; use larger packs, or split the job", u32::MAX);
    Problems::one(Problem { pointer: format!("/treatments/{treatment}/packs"), value: None, message })
}
