//! Seconds of the planner → instants as a plan writes them.

use alloc::string::String;

use chrono::{DateTime, NaiveDate, TimeDelta};
use hilum::math::{ceil, floor, to_i64};

use super::draft::Draft;
use crate::model::after::Instant;
use crate::model::instant::written;

/// Which way an instant is rounded to a whole second: never so that a promise is overstated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Rounded {
    Down,
    Up,
}

/// The instant so many seconds after the first shift's whole second, in that shift's offset. `None` beyond
/// the calendar's years.
pub(crate) fn instant(draft: &Draft<'_, '_>, seconds: f64, rounded: Rounded) -> Option<String> {
    after(draft.model.work.first()?.0, seconds, rounded)
}

/// The instant so many seconds after the whole second of another, in that one's offset.
pub(crate) fn after(start: Instant, seconds: f64, rounded: Rounded) -> Option<String> {
    let whole = match rounded {
        Rounded::Down => floor(seconds),
        Rounded::Up => ceil(seconds),
    };
    Some(written(at(start, whole)?))
}

/// The day of an instant, in the first shift's offset.
pub(crate) fn day(draft: &Draft<'_, '_>, seconds: f64) -> Option<NaiveDate> {
    day_after(draft.model.work.first()?.0, seconds)
}

/// The day so many seconds after the whole second of an instant, in its offset.
pub(crate) fn day_after(start: Instant, seconds: f64) -> Option<NaiveDate> {
    at(start, floor(seconds)).map(|instant| instant.date_naive())
}

fn at(start: Instant, whole: f64) -> Option<Instant> {
    let whole_second = DateTime::from_timestamp(start.timestamp(), 0)?.with_timezone(start.offset());
    whole_second.checked_add_signed(TimeDelta::try_seconds(to_i64(whole)?)?)
}

/// Seconds of an instant since the whole second of an earlier one.
pub(crate) fn between(start: Instant, instant: Instant) -> f64 {
    let whole = instant.timestamp().saturating_sub(start.timestamp());
    // Exact: instants of four-digit years lie well within 2^53 seconds.
    let (high, low) = (whole.div_euclid(1 << 30), whole.rem_euclid(1 << 30));
    let whole = i32::try_from(high).map_or(0.0, f64::from) * f64::from(1 << 30)
        + i32::try_from(low).map_or(0.0, f64::from);
    whole + f64::from(instant.timestamp_subsec_nanos()) / 1e9
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(text: &str) -> Instant {
        DateTime::parse_from_rfc3339(text).unwrap()
    }

    #[test]
    fn a_promise_is_rounded_down_and_written_in_the_offset_of_its_start() {
        let start = at("2027-04-14T23:30:00.4+02:00");
        assert_eq!(after(start, 1800.9, Rounded::Down).as_deref(), Some("2027-04-15T00:00:00+02:00"));
        assert_eq!(after(start, 1800.1, Rounded::Up).as_deref(), Some("2027-04-15T00:00:01+02:00"));
        assert_eq!(day_after(start, 1799.9), chrono::NaiveDate::from_ymd_opt(2027, 4, 14));
    }

    // Offsets differ by an hour: 10:00 +03:00 is 09:00 +02:00. An hour and a half a second, 20 d back.
    #[test]
    fn time_between_instants_knows_their_offsets() {
        let start = at("2027-04-14T08:00:00+02:00");
        assert!((between(start, at("2027-04-14T10:00:00.5+03:00")) - 3600.5).abs() < 1e-9);
        assert!((between(start, at("2027-03-25T08:00:00+02:00")) + 20.0 * 86_400.0).abs() < 1e-9);
    }
}
