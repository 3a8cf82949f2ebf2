//! Instants as a shed reads them.

use chrono::{DateTime, FixedOffset, NaiveDate, Timelike};

/// An instant with the offset it is written in.
pub(crate) type Instant = DateTime<FixedOffset>;

/// Reads an instant of a document; `None` if it is not one.
pub(crate) fn read(text: &str) -> Option<Instant> {
    DateTime::parse_from_rfc3339(text).ok()
}

/// `07:12`
pub(crate) fn time(instant: Instant) -> String {
    instant.format("%H:%M").to_string()
}

/// `Wed 14 Apr 2027`
pub(crate) fn day(date: NaiveDate) -> String {
    date.format("%a %-d %b %Y").to_string()
}

/// `07:12` on the day at hand, `Wed 14 Apr 07:12` on another. A time is cut to its minute.
pub(crate) fn time_seen_from(instant: Instant, today: NaiveDate) -> String {
    if instant.date_naive() == today { time(instant) } else { instant.format("%a %-d %b %H:%M").to_string() }
}

/// `14 Apr 2027 07:12`, from the text of a document; the text itself if it is not an instant.
pub(crate) fn moment(text: &str) -> String {
    read(text).map_or_else(|| text.to_owned(), |instant| instant.format("%-d %b %Y %H:%M").to_string())
}

/// The next whole minute, for promises that must not be early.
pub(crate) fn rounded_up(instant: Instant) -> Instant {
    let behind = i64::from(instant.second());
    let wait = if behind == 0 { 0 } else { 60_i64.saturating_sub(behind) };
    instant.checked_add_signed(chrono::TimeDelta::seconds(wait)).unwrap_or(instant)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_instant_is_read_as_the_shed_says_it() {
        let instant = read("2027-04-14T07:12:30-05:00").unwrap();
        assert_eq!(time(instant), "07:12");
        assert_eq!(time(rounded_up(instant)), "07:13");
        assert_eq!(day(instant.date_naive()), "Wed 14 Apr 2027");
        assert_eq!(time_seen_from(instant, instant.date_naive()), "07:12");
        assert_eq!(moment("2027-04-14T07:12:30-05:00"), "14 Apr 2027 07:12");
        assert_eq!(moment("soon"), "soon");
    }
}
