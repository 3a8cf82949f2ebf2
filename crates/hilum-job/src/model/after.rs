//! Between treating and planting: storage, planting, and instants.

use alloc::format;
use alloc::vec::Vec;

use chrono::{DateTime, FixedOffset};
use hilum::error::not_negative;
use hilum::quantity::{Measure, Temperature, Time};
use hilum::viability::Period;

use super::ask::optional;
use super::order::field;
use crate::digits::Told;
use crate::document;
use crate::problem::{Gathered, Pointer, quoted};

/// An instant, with the offset it was written in.
pub(crate) type Instant = DateTime<FixedOffset>;

/// Where a value of an order's `after` stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Stands {
    /// In the job's `after`.
    InJob,
    /// In the order's own.
    InOrder,
}

/// What becomes of an order's seed, the order's own word before the job's.
#[derive(Clone, Debug)]
pub(crate) struct After {
    pub(crate) storage: Vec<(Period, Temperature)>,
    pub(crate) storage_stands: Stands,
    pub(crate) planting: Option<Planting>,
    pub(crate) planting_stands: Stands,
    pub(crate) in_sunlight: bool,
    pub(crate) sunlight_stands: Stands,
}

/// When the seed is planted.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Planting {
    On(Instant),
    /// After the first seed is treated.
    After(Time),
}

/// One `after` as read: `None` for what it does not say.
struct Own {
    storage: Option<Vec<(Period, Temperature)>>,
    planting: Option<Planting>,
    in_sunlight: Option<bool>,
}

/// An order's `after` over the job's.
pub(crate) fn after(
    job: Option<&document::After>,
    order: Option<&document::After>,
    order_at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<After> {
    // The job's own problems are noted once, when the job is read.
    let job = match job {
        Some(doc) => own(doc, &Pointer::Root, &mut Gathered::reading(gathered.decimal))?,
        None => Own { storage: None, planting: None, in_sunlight: None },
    };
    let order = match order {
        Some(doc) => own(doc, order_at, gathered)?,
        None => Own { storage: None, planting: None, in_sunlight: None },
    };
    let stands = |own: bool| if own { Stands::InOrder } else { Stands::InJob };
    Some(After {
        storage_stands: stands(order.storage.is_some()),
        storage: order.storage.or(job.storage).unwrap_or_default(),
        planting_stands: stands(order.planting.is_some()),
        planting: order.planting.or(job.planting),
        sunlight_stands: stands(order.in_sunlight.is_some()),
        in_sunlight: order.in_sunlight.or(job.in_sunlight).unwrap_or_default(),
    })
}

/// Notes the problems of the job's `after`.
pub(crate) fn check(doc: Option<&document::After>, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<()> {
    doc.map_or(Some(()), |doc| own(doc, at, gathered).map(|_| ()))
}

fn own(doc: &document::After, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Own> {
    let storage = optional!(doc.storage, |periods| storage(periods, &at.field("storage"), gathered));
    let on = optional!(doc.plant_on, |text| instant(text, &at.field("plant_on"), gathered));
    let after = optional!(doc.plant_after, |text| duration(text, &at.field("plant_after"), gathered));
    if doc.plant_on.is_some() && doc.plant_after.is_some() {
        gathered.add(&at.field("plant_after"), None, "stands beside plant_on; say one of them");
        return None;
    }
    let planting = on?.map(Planting::On).or(after?.map(Planting::After));
    Some(Own { storage: storage?, planting, in_sunlight: doc.in_sunlight })
}

fn storage(
    periods: &[document::Storage],
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Option<Vec<(Period, Temperature)>> {
    let mut read = Vec::new();
    for (i, period) in periods.iter().enumerate() {
        let at = at.item(i);
        let lasts = duration(&period.r#for, &at.field("for"), gathered);
        let temperature = field(&period.at, &at, "at").temperature(gathered);
        if let (Some(lasts), Some(temperature)) = (lasts, temperature) {
            match Period::new(lasts, Some(temperature)) {
                Ok(period) => read.push(Some((period, temperature))),
                Err(error) => {
                    let error = Told(error);
                    gathered.add(&at, None, format!("cannot be used: {error}"));
                    read.push(None);
                }
            }
        } else {
            read.push(None);
        }
    }
    read.into_iter().collect()
}

/// A duration, which may be 0.
pub(crate) fn duration(doc: &document::Quantity, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Time> {
    let asked = super::ask::Asked::read(doc, at, gathered)?;
    let time = asked.quantity::<Time>(&hilum::text::Bases::default(), "a time", at, gathered)?;
    let checked = not_negative(hilum::Argument::Duration, time.value).map(Time::from_base);
    asked.checked(checked, at, gathered)
}

/// An instant, RFC 3339.
pub(crate) fn instant(text: &str, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Instant> {
    let instant = crate::instant::instant(text);
    if instant.is_none() {
        let message =
            "is not a moment that is read; write date, time and offset as in \"2027-04-12T07:30:00-05:00\"";
        gathered.add(at, Some(quoted(text)), message);
    }
    instant
}
