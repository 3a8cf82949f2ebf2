//! Instants and days as RFC 3339 writes them: chrono reckons with them; its reader of every form there is is
//! 6 kB of a web page.

use alloc::format;
use alloc::string::String;

use chrono::{DateTime, Datelike, FixedOffset, NaiveDate, NaiveTime, TimeZone, Timelike};

/// `2027-09-30`, also without zeros before month and day.
pub(crate) fn day(text: &str) -> Option<NaiveDate> {
    let mut reader = Reader(text.as_bytes());
    let day = reader.day(1)?;
    reader.0.is_empty().then_some(day)
}

/// `2027-04-12T07:30:00-05:00`, with a fraction of a second or none; a leap second is the 60th.
pub(crate) fn read(text: &str) -> Option<DateTime<FixedOffset>> {
    let mut reader = Reader(text.as_bytes());
    let day = reader.day(2)?;
    reader.one_of(b"Tt ")?;
    let hour = reader.two_digits()?;
    reader.one_of(b":")?;
    let minute = reader.two_digits()?;
    reader.one_of(b":")?;
    let second = reader.two_digits()?;
    let nanos = reader.fraction()?;
    let offset = reader.offset()?;
    if !reader.0.is_empty() || second > 60 {
        return None;
    }
    let leap = if second == 60 { 1_000_000_000 } else { 0 };
    let time = NaiveTime::from_hms_nano_opt(hour, minute, second.min(59), nanos.saturating_add(leap))?;
    offset.from_local_datetime(&day.and_time(time)).single()
}

/// An instant to the second, with its offset.
pub(crate) fn written(instant: DateTime<FixedOffset>) -> String {
    let local = instant.naive_local();
    let seconds = instant.offset().local_minus_utc();
    let (sign, minutes) = (if seconds < 0 { '-' } else { '+' }, seconds.unsigned_abs() / 60);
    format!(
        "{:04}-{:02}-{:02}T{:02}:{:02}:{:02}{sign}{:02}:{:02}",
        local.year(),
        local.month(),
        local.day(),
        local.hour(),
        local.minute(),
        local.second(),
        minutes / 60,
        minutes % 60,
    )
}

struct Reader<'t>(&'t [u8]);

impl Reader<'_> {
    fn one_of(&mut self, wanted: &[u8]) -> Option<u8> {
        let (first, rest) = self.0.split_first()?;
        self.0 = rest;
        wanted.contains(first).then_some(*first)
    }

    fn two_digits(&mut self) -> Option<u32> {
        self.number(2, 2)
    }

    fn number(&mut self, least: usize, most: usize) -> Option<u32> {
        let end = self.0.iter().take(most).take_while(|byte| byte.is_ascii_digit()).count();
        let (digits, rest) = self.0.split_at_checked(end).filter(|_| end >= least)?;
        self.0 = rest;
        Some(
            digits
                .iter()
                .fold(0, |value: u32, digit| value.saturating_mul(10).saturating_add(u32::from(digit & 0xF))),
        )
    }

    /// Month and day of two digits, or of one at least.
    fn day(&mut self, least: usize) -> Option<NaiveDate> {
        let year = self.number(4, 4)?;
        self.one_of(b"-")?;
        let month = self.number(least, 2)?;
        self.one_of(b"-")?;
        NaiveDate::from_ymd_opt(i32::try_from(year).ok()?, month, self.number(least, 2)?)
    }

    /// Nanoseconds; what is finer is cut off.
    fn fraction(&mut self) -> Option<u32> {
        let Some((b'.', rest)) = self.0.split_first() else { return Some(0) };
        let end = rest.iter().take_while(|byte| byte.is_ascii_digit()).count();
        let (digits, rest) = rest.split_at_checked(end).filter(|(digits, _)| !digits.is_empty())?;
        self.0 = rest;
        let places = digits.iter().copied().chain(core::iter::repeat(b'0')).take(9);
        Some(
            places
                .fold(0, |nanos: u32, digit| nanos.saturating_mul(10).saturating_add(u32::from(digit & 0xF))),
        )
    }

    fn offset(&mut self) -> Option<FixedOffset> {
        let sign = self.one_of(b"Zz+-")?;
        if matches!(sign, b'Z' | b'z') {
            return FixedOffset::east_opt(0);
        }
        let hours = self.two_digits()?;
        self.one_of(b":")?;
        let minutes = self.two_digits().filter(|minutes| *minutes < 60)?;
        let seconds =
            i32::try_from(hours.saturating_mul(60).saturating_add(minutes).saturating_mul(60)).ok()?;
        FixedOffset::east_opt(if sign == b'-' { -seconds } else { seconds })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // RFC 3339, 5.6 and its examples in 5.8; chrono's own reader is the general-purpose library beside it.
    #[test]
    fn instants_are_read_as_chrono_reads_them() {
        let texts = [
            "1985-04-12T23:20:50.52Z",
            "1996-12-19T16:39:57-08:00",
            "1990-12-31T23:59:60Z",
            "1990-12-31T15:59:60-08:00",
            "1937-01-01T12:00:27.87+00:20",
            "2027-04-12t07:30:00z",
            "2027-04-12 07:30:00+02:00",
            "2028-02-29T00:00:00Z",
            "2027-02-29T00:00:00Z",
            "2027-13-01T00:00:00Z",
            "2027-04-31T00:00:00Z",
            "2027-04-12T24:00:00Z",
            "2027-04-12T07:60:00Z",
            "2027-04-12T07:30:61Z",
            "2027-04-12T07:30:00",
            "2027-04-12T07:30Z",
            "2027-04-12",
            "2027-04-12T07:30:00+24:00",
            "2027-04-12T07:30:00+23:59",
            "2027-04-12T07:30:00+02:60",
            "2027-04-12T07:30:00.Z",
            "2027-04-12T07:30:00.1234567899Z",
            "2027-04-12T07:30:00Zx",
            "27-04-12T07:30:00Z",
            "2027-4-12T07:30:00Z",
            "",
            "+2027-04-12T07:30:00Z",
            "2027-04-12T07:30:00 Z",
            "2027-04-12T07:30:00-0800",
            "0000-01-01T00:00:00Z",
        ];
        for text in texts {
            assert_eq!(read(text), DateTime::parse_from_rfc3339(text).ok(), "{text}");
        }
    }

    #[test]
    fn instants_are_written_as_chrono_writes_them() {
        for text in ["2027-04-12T07:30:09-05:00", "1996-12-19T16:39:57Z", "1937-01-01T12:00:27.87+00:20"] {
            let instant = read(text).unwrap();
            assert_eq!(written(instant), instant.to_rfc3339_opts(chrono::SecondsFormat::Secs, false));
        }
    }

    #[test]
    fn days_are_whole_and_exist() {
        assert_eq!(day("2027-09-30"), NaiveDate::from_ymd_opt(2027, 9, 30));
        assert_eq!(day("2027-9-3"), NaiveDate::from_ymd_opt(2027, 9, 3));
        for text in ["2027-09-31", "27-09-30", "2027-09-30 ", "30.09.2027", ""] {
            assert_eq!(day(text), None, "{text}");
        }
    }
}
