//! Between treating and planting: storage, planting, and instants.

use alloc::format;
use alloc::vec::Vec;

use chrono::{DateTime, FixedOffset};
use hilum::quantity::{Temperature, Time};
use hilum::viability::Period;

use super::ask::field;
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
#[derive(Debug, Default)]
pub(crate) struct Own {
    storage: Option<Vec<(Period, Temperature)>>,
    planting: Option<Planting>,
    in_sunlight: Option<bool>,
}

/// An order's `after` over the job's.
pub(crate) fn after(job: &Own, order: Own) -> After {
    let stands = |own: bool| if own { Stands::InOrder } else { Stands::InJob };
    After {
        storage_stands: stands(order.storage.is_some()),
        storage: order.storage.or_else(|| job.storage.clone()).unwrap_or_default(),
        planting_stands: stands(order.planting.is_some()),
        planting: order.planting.or(job.planting),
        sunlight_stands: stands(order.in_sunlight.is_some()),
        in_sunlight: order.in_sunlight.or(job.in_sunlight).unwrap_or_default(),
    }
}

/// Reads one `after`.
pub(crate) fn own(doc: Option<&document::After>, at: &Pointer<'_>, gathered: &mut Gathered) -> Own {
    let Some(doc) = doc else { return Own::default() };
    let storage = doc.storage.as_ref().map(|periods| storage(periods, &at.field("storage"), gathered));
    let on = instant(doc.plant_on.as_deref(), &at.field("plant_on"), gathered);
    let after = field(doc.plant_after.as_ref(), at, "plant_after").duration(gathered);
    if doc.plant_on.is_some() && doc.plant_after.is_some() {
        gathered.add(&at.field("plant_after"), None, "stands beside plant_on; say one of them");
    }
    let planting = on.map(Planting::On).or(after.map(Planting::After));
    Own { storage, planting, in_sunlight: doc.in_sunlight }
}

fn storage(
    periods: &[document::Storage],
    at: &Pointer<'_>,
    gathered: &mut Gathered,
) -> Vec<(Period, Temperature)> {
    let mut read = Vec::new();
    for (i, period) in periods.iter().enumerate() {
        let at = at.item(i);
        let lasts = field(Some(&period.r#for), &at, "for").duration(gathered);
        let temperature = field(Some(&period.at), &at, "at").temperature(gathered);
        let Some((lasts, temperature)) = lasts.zip(temperature) else { continue };
        match Period::new(lasts, Some(temperature)) {
            Ok(period) => read.push((period, temperature)),
            Err(error) => gathered.add(&at, None, format!("cannot be used: {}", Told(error))),
        }
    }
    read
}

/// An instant, RFC 3339, where there is one.
#[inline(never)]
pub(crate) fn instant(text: Option<&str>, at: &Pointer<'_>, gathered: &mut Gathered) -> Option<Instant> {
    let text = text?;
    let instant = crate::instant::instant(text);
    if instant.is_none() {
        let message =
            "is not a moment that is read; write date, time and offset as in \"2027-04-12T07:30:00-05:00\"";
        gathered.add(at, Some(quoted(text)), message);
    }
    instant
}
