//! Numbers in messages, put together from their shortest digits and rounded from these, as a person would from the number in a
//! document: a five goes up. The writer of JSON finds those digits anyway; core's own writing is 17 kB more of a web page.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

#[cfg(test)]
mod tests;

/// A number in decimal: 0.25 is the digits 25 with the point before them, 250 the same with the point behind the third.
struct Digits {
    is_negative: bool,
    /// From the first that is not 0 to the last such.
    all: Vec<u8>,
    point: i32,
}

/// As `{}` writes it.
pub(crate) fn plain(value: f64) -> String {
    written(value, |digits| digits.plain(0))
}

/// As `{:?}` writes it.
pub(crate) fn exact(value: f64) -> String {
    let plain = (1e-4..1e16).contains(&value.abs()) || value == 0.0;
    written(value, |digits| if plain { digits.plain(1) } else { digits.scientific(0) })
}

/// As `{:.behind$}` writes it.
pub(crate) fn to_places(value: f64, behind: i32) -> String {
    written(value, |digits| digits.rounded_behind(behind).plain(behind))
}

/// As `{:.1e}` writes it.
pub(crate) fn to_two_digits(value: f64) -> String {
    written(value, |digits| digits.rounded(2).scientific(1))
}

/// To so many significant digits, without zeros at its end; as 8.2e4 where it is a count of cells or the like.
pub(crate) fn to_digits(value: f64, many: i32) -> String {
    written(value, |digits| {
        let scientific = Digits::of(value).rounded(many);
        // Digits before the point are never left out.
        if (-3..=9).contains(&scientific.point) {
            digits.rounded_behind(many.saturating_sub(scientific.point).max(0)).plain(0)
        } else {
            scientific.scientific(0)
        }
    })
}

/// A refusal of the core's, as it displays itself.
#[derive(Debug)]
pub(crate) struct Told(pub(crate) hilum::Error);

impl fmt::Display for Told {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.tell(f, refused)
    }
}

fn refused(value: f64, f: &mut fmt::Formatter<'_>) -> fmt::Result {
    let plain = (1e-6..1e15).contains(&value.abs()) || value == 0.0;
    let write = |digits: Digits| if plain { digits.plain(0) } else { digits.scientific(0) };
    f.write_str(&written(value, write))
}

fn written(value: f64, write: impl FnOnce(Digits) -> String) -> String {
    if value.is_finite() { write(Digits::of(value)) } else { zmij::Buffer::new().format(value).into() }
}

impl Digits {
    fn of(value: f64) -> Self {
        let mut buffer = zmij::Buffer::new();
        let text = buffer.format_finite(value.abs());
        let (text, power) = text.split_once('e').unwrap_or((text, "0"));
        let (mut all, mut point) = (Vec::new(), power.parse().unwrap_or(0_i32));
        let mut before = 1;
        for byte in text.bytes() {
            match byte {
                b'.' => before = 0,
                b'0' if all.is_empty() => point = point.saturating_add(before).saturating_sub(1),
                digit => {
                    all.push(digit);
                    point = point.saturating_add(before);
                }
            }
        }
        Self { is_negative: value.is_sign_negative(), all, point }.trimmed()
    }

    /// Without zeros at the end; 0 has no digits, and the point where it is written.
    fn trimmed(mut self) -> Self {
        while self.all.last() == Some(&b'0') {
            self.all.pop();
        }
        let point = if self.all.is_empty() { 1 } else { self.point };
        Self { point, ..self }
    }

    /// Rounded to so many digits.
    fn rounded(mut self, many: i32) -> Self {
        let Ok(kept) = usize::try_from(many) else { return Self { all: Vec::new(), ..self }.trimmed() };
        let up = self.all.get(kept).is_some_and(|next| *next >= b'5');
        self.all.truncate(kept);
        if up { self.counted_up() } else { self }.trimmed()
    }

    /// Rounded to so many digits behind the point.
    fn rounded_behind(self, behind: i32) -> Self {
        let many = self.point.saturating_add(behind);
        self.rounded(many)
    }

    /// The next number of as many digits.
    fn counted_up(mut self) -> Self {
        while self.all.last() == Some(&b'9') {
            self.all.pop();
        }
        if let Some(last) = self.all.last_mut() {
            *last = last.saturating_add(1);
        } else {
            self.all.push(b'1');
            self.point = self.point.saturating_add(1);
        }
        self
    }

    /// With a point, and so many digits behind it or more.
    fn plain(&self, behind: i32) -> String {
        let mut text = String::from(if self.is_negative { "-" } else { "" });
        if self.point < 1 {
            text.push('0');
        }
        for place in self.point.min(0)..count(self.all.len()).max(self.point.saturating_add(behind)) {
            if place == self.point {
                text.push('.');
            }
            text.push(self.digit(place));
        }
        text
    }

    /// With one digit before the point, so many or more behind it, and a power of ten.
    fn scientific(self, behind: i32) -> String {
        let power = self.point.saturating_sub(1);
        format!("{}e{power}", Self { point: 1, ..self }.plain(behind))
    }

    fn digit(&self, place: i32) -> char {
        let digit = usize::try_from(place).ok().and_then(|place| self.all.get(place));
        digit.map_or('0', |digit| char::from(*digit))
    }
}

fn count(of: usize) -> i32 {
    i32::try_from(of).unwrap_or(i32::MAX)
}
