//! Seconds of the planner → instants as a plan writes them.

use alloc::string::String;

use chrono::{DateTime, FixedOffset, NaiveDate, SecondsFormat, TimeDelta};
use hilum::math::{ceil, floor, to_i64};

use super::draft::Draft;

/// Which way an instant is rounded to a whole second: never so that a promise is overstated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Rounded {
    Down,
    Up,
}

/// The instant so many seconds after the first shift's whole second, in that shift's offset. `None` beyond
/// the calendar's years.
pub(crate) fn instant(draft: &Draft<'_, '_>, seconds: f64, rounded: Rounded) -> Option<String> {
    let whole = match rounded {
        Rounded::Down => floor(seconds),
        Rounded::Up => ceil(seconds),
    };
    Some(at(draft, whole)?.to_rfc3339_opts(SecondsFormat::Secs, false))
}

/// The day of an instant, in the first shift's offset.
pub(crate) fn day(draft: &Draft<'_, '_>, seconds: f64) -> Option<NaiveDate> {
    at(draft, floor(seconds)).map(|instant| instant.date_naive())
}

fn at(draft: &Draft<'_, '_>, whole: f64) -> Option<DateTime<FixedOffset>> {
    let (first, _) = draft.model.work.first()?;
    let start = DateTime::from_timestamp(first.timestamp(), 0)?.with_timezone(first.offset());
    start.checked_add_signed(TimeDelta::try_seconds(to_i64(whole)?)?)
}
