//! Tanks, their pumps, and the treater.

use alloc::format;
use alloc::vec::Vec;

use hilum::error::{not_negative, positive};
use hilum::mix::{HoldUp, MinFill, Water};
use hilum::quantity::{Mass, Measure, Time, Volume, VolumeFlow, VolumePerMass};
use hilum::rate::{PerMass, RatePerMass};
use hilum::seed::Share;
use hilum::treater::{BatchTreater, CurvePoint, Flow, PumpCurve, PumpRange, SeedFlow, Setting};
use hilum::{Argument, Error};

use super::after::duration;
use super::ask::optional;
use super::order::{field, seed_flow};
use crate::digits::{Told, exact};
use crate::document::{self, Refill};
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
) -> Option<Vec<Tank<'j>>> {
    let at = root.field("tanks");
    let list = job.tanks.as_deref().unwrap_or_default();
    let docs = list.iter().enumerate();
    let read: Vec<_> = docs.map(|(i, doc)| tank(doc, &at.item(i), gathered)).collect();
    read.into_iter().collect()
}

fn tank<'j>(doc: &'j document::Tank, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Tank<'j>> {
    let capacity = field(&doc.capacity, at, "capacity").get("a capacity, a volume,", volume, gathered);
    let min_fill =
        optional!(doc.min_fill, |doc| field(doc, at, "min_fill").get("a volume", MinFill::new, gathered));
    let hold_up =
        optional!(doc.hold_up, |doc| field(doc, at, "hold_up").get("a volume", HoldUp::new, gathered));
    let water = water(doc, at, gathered);
    let mixing = optional!(doc.mixing, |doc| duration(doc, &at.field("mixing"), gathered));
    let pump = optional!(doc.pump, |doc| pump(doc, &at.field("pump"), gathered));
    Some(Tank {
        doc,
        capacity: capacity?,
        min_fill: min_fill?,
        hold_up: hold_up?.unwrap_or(HoldUp::NONE),
        water: water?,
        mixing: mixing?.unwrap_or(Time::from_base(0.0)),
        agitated: doc.agitated.unwrap_or_default(),
        refill: doc.refill.unwrap_or(Refill::WhenEmpty),
        pump: pump?,
    })
}

fn volume(volume: Volume) -> Result<Volume, Error> {
    positive(Argument::MixVolume, volume.value).map(|_| volume)
}

fn water(doc: &document::Tank, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Water> {
    let wanted = "a liquid rate, volume per mass of seed,";
    if doc.make_up_to.is_some() && doc.water.is_some() {
        gathered.add(&at.field("water"), None, "stands beside make_up_to; say one of them");
        return None;
    }
    let up_to = optional!(doc.make_up_to, |doc| field(doc, at, "make_up_to").get::<VolumePerMass, _>(
        wanted,
        PerMass::new,
        gathered
    ));
    let plus = optional!(doc.water, |doc| field(doc, at, "water").get::<VolumePerMass, _>(
        wanted,
        PerMass::new,
        gathered
    ));
    Some(match (up_to?, plus?) {
        (Some(rate), _) => Water::UpTo(rate),
        (_, Some(rate)) => Water::Plus(rate),
        _ => Water::None,
    })
}

fn pump(doc: &document::Pump, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Pump> {
    let min = optional!(doc.min, |doc| flow(doc, &at.field("min"), gathered));
    let max = optional!(doc.max, |doc| flow(doc, &at.field("max"), gathered));
    let curve = optional!(doc.curve, |points| curve(points, &at.field("curve"), gathered));
    Some(Pump { range: PumpRange { min: min?, max: max? }, curve: curve? })
}

fn flow(doc: &document::Quantity, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Flow> {
    let field = super::ask::Field { doc, at: *at };
    field.get::<VolumeFlow, _>("a flow, volume per time,", Flow::new, gathered)
}

fn curve(points: &[document::CurvePoint], at: &Pointer<'_>, gathered: &mut Gathered) -> Option<PumpCurve> {
    let read: Vec<_> = points
        .iter()
        .enumerate()
        .map(|(i, point)| {
            let at = at.item(i);
            let setting = Setting::new(point.setting)
                .map_err(|error| {
                    let value = Some(exact(point.setting));
                    gathered.add(&at.field("setting"), value, super::ask::refusal(error));
                })
                .ok();
            let flow = flow(&point.flow, &at.field("flow"), gathered);
            Some(CurvePoint { setting: setting?, flow: flow? })
        })
        .collect();
    let points: Vec<_> = read.into_iter().collect::<Option<_>>()?;
    PumpCurve::through(&points)
        .map_err(|error| {
            let message = match error {
                Error::OneSetting { .. } => {
                    "has several catches at one setting only; catch at another setting too".into()
                }
                Error::NotRising { .. } => "does not rise; a pump gives more at a higher setting".into(),
                error => {
                    let error = Told(error);
                    format!("cannot be used: {error}")
                }
            };
            gathered.add(at, None, message);
        })
        .ok()
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

/// The job's treater; all of it may be absent.
pub(crate) fn treater(job: &document::Job, root: &Pointer<'_>, gathered: &mut Gathered) -> Option<Treater> {
    let at = root.field("treater");
    let Some(doc) = &job.treater else {
        let changeover = Time::from_base(0.0);
        return Some(Treater {
            feed: None,
            utilisation: Share::WHOLE,
            changeover,
            min_liquid: None,
            max_liquid: None,
        });
    };
    let feed = feed(doc, &at, gathered);
    let utilisation = optional!(doc.utilisation, |doc| field(doc, &at, "utilisation").get(
        "a share in %",
        |share| Share::new(share)
            .and_then(|share| positive(Argument::Utilisation, share.number()).map(|_| share)),
        gathered
    ));
    let changeover = optional!(doc.changeover, |doc| duration(doc, &at.field("changeover"), gathered));
    let mut liquid = |doc: &Option<document::Quantity>, name: &str| {
        let wanted = "a liquid rate, volume per mass of seed,";
        optional!(*doc, |doc| field(doc, &at, name).get::<VolumePerMass, _>(wanted, PerMass::new, gathered))
    };
    let min_liquid = liquid(&doc.min_liquid, "min_liquid");
    let max_liquid = liquid(&doc.max_liquid, "max_liquid");
    Some(Treater {
        feed: feed?,
        utilisation: utilisation?.unwrap_or(Share::WHOLE),
        changeover: changeover?.unwrap_or(Time::from_base(0.0)),
        min_liquid: min_liquid?,
        max_liquid: max_liquid?,
    })
}

fn feed(doc: &document::Treater, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Option<Feed>> {
    let flow = optional!(doc.seed_flow, |doc| seed_flow(doc, &at.field("seed_flow"), gathered));
    let charge = optional!(doc.charge, |doc| field(doc, at, "charge").get(
        "a charge, a mass of seed,",
        |mass: Mass| positive(Argument::Charge, mass.value).map(|_| mass),
        gathered
    ));
    let cycle = optional!(doc.cycle, |doc| {
        let time = duration(doc, &at.field("cycle"), gathered);
        time.filter(|time| not_negative(Argument::Cycle, time.value).is_ok())
    });
    if doc.seed_flow.is_some() && (doc.charge.is_some() || doc.cycle.is_some()) {
        let other = if doc.charge.is_some() { "charge" } else { "cycle" };
        gathered.add(
            &at.field(other),
            None,
            "stands beside seed_flow; say how seed runs once: seed_flow, or charge and cycle",
        );
        return None;
    }
    match (flow?, charge?, cycle?) {
        (Some(flow), _, _) => Some(Some(Feed::Flow(flow))),
        (None, Some(charge), Some(cycle)) => BatchTreater::new(charge, cycle)
            .map_err(|_| {
                let value = doc.cycle.as_ref().map(super::ask::shown);
                gathered.add(&at.field("cycle"), value, "must be more than 0");
            })
            .ok()
            .map(|treater| Some(Feed::Charges(treater))),
        (None, Some(charge), None) => Some(Some(Feed::Charge(charge))),
        (None, None, _) => Some(None),
    }
}
