//! Days and moments of RFC 3339, as chrono reads them. Its own reading cuts a text in pieces, and how it would panic if there
//! were none weighs as much as the rest of it.

use chrono::{FixedOffset, NaiveDate, NaiveTime};

use crate::model::after::Instant;

#[cfg(test)]
mod tests;

/// A day, year-month-day.
pub(crate) fn day(text: &str) -> Option<NaiveDate> {
    let mut rest = Rest(text.as_bytes());
    rest.day().filter(|_| rest.0.is_empty())
}

/// A moment, with its offset.
pub(crate) fn instant(text: &str) -> Option<Instant> {
    let mut rest = Rest(text.as_bytes());
    let day = rest.day()?;
    rest.mark(b"Tt ")?;
    let time = rest.time()?;
    let offset = rest.offset()?;
    day.and_time(time).and_local_timezone(offset).single().filter(|_| rest.0.is_empty())
}

/// What is left to read.
struct Rest<'t>(&'t [u8]);

impl Rest<'_> {
    fn day(&mut self) -> Option<NaiveDate> {
        let year = self.digits(4)?;
        self.mark(b"-")?;
        let month = self.digits(2)?;
        self.mark(b"-")?;
        NaiveDate::from_ymd_opt(i32::try_from(year).ok()?, month, self.digits(2)?)
    }

    fn time(&mut self) -> Option<NaiveTime> {
        let (hour, minute) = self.hour_and_minute()?;
        self.mark(b":")?;
        // A leap second is the one before with more than a second in it.
        let (second, leap) = match self.digits(2)? {
            60 => (59, 1_000_000_000),
            second => (second, 0),
        };
        let nanoseconds = if self.mark(b".").is_some() { self.nanoseconds()? } else { 0 };
        NaiveTime::from_hms_nano_opt(hour, minute, second, nanoseconds.saturating_add(leap))
    }

    fn hour_and_minute(&mut self) -> Option<(u32, u32)> {
        let hour = self.digits(2)?;
        self.mark(b":")?;
        Some((hour, self.digits(2)?))
    }

    /// Digits behind the point: nine count, and one must be there.
    fn nanoseconds(&mut self) -> Option<u32> {
        let mut nanoseconds = self.digits(1)?.saturating_mul(100_000_000);
        let mut one = 10_000_000_u32;
        while let Some(digit) = self.digits(1) {
            nanoseconds = nanoseconds.saturating_add(digit.saturating_mul(one));
            one /= 10;
        }
        Some(nanoseconds)
    }

    fn offset(&mut self) -> Option<FixedOffset> {
        if self.mark(b"Zz").is_some() {
            return FixedOffset::east_opt(0);
        }
        let west = self.west()?;
        let (hours, minutes) = self.hour_and_minute()?;
        let seconds =
            i32::try_from(hours.saturating_mul(60).saturating_add(minutes).saturating_mul(60)).ok()?;
        FixedOffset::east_opt(if west { seconds.saturating_neg() } else { seconds }).filter(|_| minutes < 60)
    }

    /// By the sign; a minus may be the longer one of typesetting.
    fn west(&mut self) -> Option<bool> {
        if let Some(rest) = self.0.strip_prefix("\u{2212}".as_bytes()) {
            self.0 = rest;
            return Some(true);
        }
        self.mark(b"+-").map(|sign| sign == b'-')
    }

    /// A number of so many digits, if they are there.
    fn digits(&mut self, many: usize) -> Option<u32> {
        let (digits, rest) = self.0.split_at_checked(many)?;
        let add = |sum: u32, digit: &u8| {
            let digit = digit.is_ascii_digit().then(|| digit.saturating_sub(b'0'))?;
            Some(sum.saturating_mul(10).saturating_add(u32::from(digit)))
        };
        let number = digits.iter().try_fold(0, add)?;
        self.0 = rest;
        Some(number)
    }

    /// One of these marks, if it is there.
    fn mark(&mut self, marks: &[u8]) -> Option<u8> {
        let (mark, rest) = self.0.split_first().filter(|(mark, _)| marks.contains(mark))?;
        self.0 = rest;
        Some(*mark)
    }
}
