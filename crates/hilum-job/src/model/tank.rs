//! Tanks, their pumps, and the treater.

use alloc::format;
use alloc::vec::Vec;

use hilum::error::positive;
use hilum::mix::{HoldUp, MinFill, Water};
use hilum::quantity::{Mass, Measure, Ratio, Time, Volume};
use hilum::rate::{PerMass, RatePerMass};
use hilum::seed::Share;
use hilum::treater::{BatchTreater, CurvePoint, Flow, PumpCurve, PumpRange, SeedFlow, Setting};
use hilum::{Argument, Error};

use super::ask::{field, refusal, shown};
use super::order::seed_flow;
use crate::digits::{Told, exact};
use crate::document::{self, Refill};
use crate::list::keep;
use crate::problem::{Gathered, Pointer};

/// A tank and its pump.
#[derive(Debug)]
pub(crate) struct Tank<'j> {
    pub(crate) doc: &'j document::Tank,
    pub(crate) capacity: Volume,
    pub(crate) min_fill: Option<MinFill>,
    pub(crate) hold_up: HoldUp,
    pub(crate) water: Water,
    pub(crate) mixing: Time,
    pub(crate) agitated: bool,
    pub(crate) refill: Refill,
    pub(crate) pump: Option<Pump>,
}

/// A pump: what it delivers evenly, and its calibration.
#[derive(Debug)]
pub(crate) struct Pump {
    pub(crate) range: PumpRange,
    pub(crate) curve: Option<PumpCurve>,
}

/// All tanks.
pub(crate) fn tanks<'j>(
    job: &'j document::Job,
    root: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Vec<Tank<'j>> {
    let at = root.field("tanks");
    let mut tanks = Vec::new();
    for (i, doc) in job.tanks.as_deref().unwrap_or_default().iter().enumerate() {
        keep(&mut tanks, tank(doc, &at.item(i), gathered));
    }
    tanks
}

fn tank<'j>(doc: &'j document::Tank, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Tank<'j>> {
    let capacity = field(Some(&doc.capacity), at, "capacity").get("a capacity, a volume,", volume, gathered);
    let min_fill = field(doc.min_fill.as_ref(), at, "min_fill").get("a volume", MinFill::new, gathered);
    let hold_up = field(doc.hold_up.as_ref(), at, "hold_up").get("a volume", HoldUp::new, gathered);
    let water = water(doc, at, gathered);
    let mixing = field(doc.mixing.as_ref(), at, "mixing").duration(gathered);
    let pump = doc.pump.as_ref().map(|doc| pump(doc, &at.field("pump"), gathered));
    Some(Tank {
        doc,
        capacity: capacity?,
        min_fill,
        hold_up: hold_up.unwrap_or(HoldUp::NONE),
        water,
        mixing: mixing.unwrap_or(Time::from_base(0.0)),
        agitated: doc.agitated.unwrap_or_default(),
        refill: doc.refill.unwrap_or(Refill::WhenEmpty),
        pump,
    })
}

fn volume(volume: Volume) -> Result<Volume, Error> {
    positive(Argument::MixVolume, volume.value).map(|_| volume)
}

fn water(doc: &document::Tank, at: &Pointer<'_>, gathered: &mut Gathered) -> Water {
    if doc.make_up_to.is_some() && doc.water.is_some() {
        gathered.add(&at.field("water"), None, "stands beside make_up_to; say one of them");
        return Water::None;
    }
    let up_to = liquid(doc.make_up_to.as_ref(), at, "make_up_to", gathered).map(Water::UpTo);
    let plus = liquid(doc.water.as_ref(), at, "water", gathered).map(Water::Plus);
    up_to.or(plus).unwrap_or(Water::None)
}

#[inline(never)]
fn liquid(
    doc: Option<&document::Quantity>,
    at: &Pointer<'_>,
    name: &str,
    gathered: &mut Gathered,
) -> Option<RatePerMass> {
    field(doc, at, name).get("a liquid rate, volume per mass of seed,", PerMass::new, gathered)
}

fn pump(doc: &document::Pump, at: &Pointer<'_>, gathered: &mut Gathered) -> Pump {
    let min = flow(doc.min.as_ref(), at, "min", gathered);
    let max = flow(doc.max.as_ref(), at, "max", gathered);
    let curve = doc.curve.as_deref().and_then(|points| curve(points, &at.field("curve"), gathered));
    Pump { range: PumpRange { min, max }, curve }
}

#[inline(never)]
fn flow(
    doc: Option<&document::Quantity>,
    at: &Pointer<'_>,
    name: &str,
    gathered: &mut Gathered,
) -> Option<Flow> {
    field(doc, at, name).get("a flow, volume per time,", Flow::new, gathered)
}

fn curve(docs: &[document::CurvePoint], at: &Pointer<'_>, gathered: &mut Gathered) -> Option<PumpCurve> {
    let mut points = Vec::new();
    for (i, doc) in docs.iter().enumerate() {
        let at = at.item(i);
        let setting = Setting::new(doc.setting);
        if let Err(error) = setting {
            let value = Some(exact(doc.setting));
            gathered.add(&at.field("setting"), value, refusal(error));
        }
        let flow = flow(Some(&doc.flow), &at, "flow", gathered);
        if let (Ok(setting), Some(flow)) = (setting, flow) {
            points.push(CurvePoint { setting, flow });
        }
    }
    if points.len() < docs.len() {
        return None;
    }
    let curve = PumpCurve::through(&points);
    if let Err(error) = &curve {
        let message = match error {
            Error::OneSetting { .. } => {
                "has several catches at one setting only; catch at another setting too".into()
            }
            Error::NotRising { .. } => "does not rise; a pump gives more at a higher setting".into(),
            error => format!("cannot be used: {}", Told(*error)),
        };
        gathered.add(at, None, message);
    }
    curve.ok()
}

/// The treater.
#[derive(Debug)]
pub(crate) struct Treater {
    pub(crate) feed: Option<Feed>,
    pub(crate) utilisation: Share,
    pub(crate) changeover: Time,
    pub(crate) min_liquid: Option<RatePerMass>,
    pub(crate) max_liquid: Option<RatePerMass>,
}

/// How seed goes through the treater.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Feed {
    Flow(SeedFlow),
    Charges(BatchTreater),
    /// A charge of which it is not said how long it takes.
    Charge(Mass),
}

/// Without a word about it.
impl Default for Treater {
    fn default() -> Self {
        Self {
            feed: None,
            utilisation: Share::WHOLE,
            changeover: Time::from_base(0.0),
            min_liquid: None,
            max_liquid: None,
        }
    }
}

/// The job's treater; all of it may be absent.
pub(crate) fn treater(job: &document::Job, root: &Pointer<'_>, gathered: &mut Gathered) -> Treater {
    let Some(doc) = &job.treater else { return Treater::default() };
    let at = root.field("treater");
    let feed = feed(doc, &at, gathered);
    let utilisation =
        field(doc.utilisation.as_ref(), &at, "utilisation").get("a share in %", utilised, gathered);
    let changeover = field(doc.changeover.as_ref(), &at, "changeover").duration(gathered);
    Treater {
        feed,
        utilisation: utilisation.unwrap_or(Share::WHOLE),
        changeover: changeover.unwrap_or(Time::from_base(0.0)),
        min_liquid: liquid(doc.min_liquid.as_ref(), &at, "min_liquid", gathered),
        max_liquid: liquid(doc.max_liquid.as_ref(), &at, "max_liquid", gathered),
    }
}

fn utilised(share: Ratio) -> Result<Share, Error> {
    let share = Share::new(share)?;
    positive(Argument::Utilisation, share.number()).map(|_| share)
}

fn feed(doc: &document::Treater, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Feed> {
    let flow = seed_flow(doc.seed_flow.as_ref(), at, gathered).map(Feed::Flow);
    let charge = field(doc.charge.as_ref(), at, "charge").get(
        "a charge, a mass of seed,",
        |mass: Mass| positive(Argument::Charge, mass.value).map(|_| mass),
        gathered,
    );
    let cycle = field(doc.cycle.as_ref(), at, "cycle").duration(gathered);
    if doc.seed_flow.is_some() && (doc.charge.is_some() || doc.cycle.is_some()) {
        let other = if doc.charge.is_some() { "charge" } else { "cycle" };
        gathered.add(
            &at.field(other),
            None,
            "stands beside seed_flow; say how seed runs once: seed_flow, or charge and cycle",
        );
        return None;
    }
    let Some((charge, cycle)) = charge.zip(cycle) else { return flow.or(charge.map(Feed::Charge)) };
    let treater = BatchTreater::new(charge, cycle).map(Feed::Charges).ok();
    if treater.is_none() {
        let value = doc.cycle.as_ref().map(shown);
        gathered.add(&at.field("cycle"), value, "must be more than 0");
    }
    treater
}
