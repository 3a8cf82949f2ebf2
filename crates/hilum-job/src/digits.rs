//! Numbers as `format!` writes them, byte for byte, put together from their shortest digits. The writer of JSON finds those
//! anyway; core's own writing is 17 kB more of a web page.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;
use core::cmp::Ordering;
use core::fmt;

#[cfg(test)]
mod tests;

/// A number in decimal: 0.25 is the digits 25 with the point before them, 250 the same with the point behind the third.
struct Digits {
    value: f64,
    /// From the first that is not 0 to the last such.
    all: Vec<u8>,
    point: i32,
}

/// As `{}` writes it.
pub(crate) fn plain(value: f64) -> String {
    written(value, |digits| digits.larger().plain(0))
}

/// As `{:?}` writes it.
pub(crate) fn exact(value: f64) -> String {
    let plain = (1e-4..1e16).contains(&value.abs()) || value == 0.0;
    written(value, |digits| if plain { digits.larger().plain(1) } else { digits.larger().scientific(0) })
}

/// As `{:.behind$}` writes it, up to 15 digits in all.
pub(crate) fn to_places(value: f64, behind: i32) -> String {
    written(value, |digits| digits.rounded_behind(behind).plain(behind))
}

/// As `{:.1e}` writes it; what is below 2e-308 from its shortest digits.
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
    let write = |digits: Digits| if plain { digits.larger().plain(0) } else { digits.larger().scientific(0) };
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
        Self { value, all, point }.trimmed()
    }

    /// Without zeros at the end; 0 has no digits, and the point where it is written.
    fn trimmed(mut self) -> Self {
        while self.all.last() == Some(&b'0') {
            self.all.pop();
        }
        let point = if self.all.is_empty() { 1 } else { self.point };
        Self { point, ..self }
    }

    /// Rounded to so many digits, a double in the middle to the even one.
    fn rounded(mut self, many: i32) -> Self {
        let kept = usize::try_from(many).unwrap_or(0);
        let Some((left, rest)) = self.all.split_at_checked(kept) else { return self };
        let odd = left.last().is_some_and(|last| last % 2 == 1);
        let up = match rest.cmp(b"5") {
            // What the double is beyond its shortest digits decides only here: a middle near it would be its shortest digits.
            Ordering::Equal => match against(self.value, &self.all, self.point) {
                Ordering::Equal => odd,
                order => order.is_gt(),
            },
            order => order.is_gt(),
        };
        self.all.truncate(kept);
        if up && many >= 0 { self.counted_up() } else { self }.trimmed()
    }

    /// Rounded to so many digits behind the point.
    fn rounded_behind(self, behind: i32) -> Self {
        let many = self.point.saturating_add(behind);
        self.rounded(many)
    }

    /// A double in the middle between two texts of as many digits: core takes the larger, zmij the even one.
    fn larger(self) -> Self {
        let middle = [&self.all, b"5".as_slice()].concat();
        let is_middle = self.all.len() > 15 && against(self.value, &middle, self.point).is_eq();
        if is_middle { self.counted_up().trimmed() } else { self }
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
        let mut text = self.sign();
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

    fn sign(&self) -> String {
        if self.value.is_sign_negative() { "-".into() } else { String::new() }
    }

    fn digit(&self, place: i32) -> char {
        let digit = usize::try_from(place).ok().and_then(|place| self.all.get(place));
        digit.map_or('0', |digit| char::from(*digit))
    }
}

/// Whether a double, without its sign, is more or less than these digits say.
fn against(value: f64, digits: &[u8], point: i32) -> Ordering {
    let bits = value.to_bits();
    let (power, fraction) = ((bits >> 52) & 0x7ff, bits & ((1 << 52) - 1));
    let whole = if power == 0 { fraction } else { fraction | 1 << 52 };
    let twos = i32::try_from(power.max(1)).unwrap_or(0).saturating_sub(1075);
    let tens = point.saturating_sub(count(digits.len()));
    let digits = digits.iter().map(|digit| u64::from(digit.saturating_sub(b'0')));
    let digits = digits.fold(0, |sum: u64, digit| sum.saturating_mul(10).saturating_add(digit));
    let double = Large::of(whole, tens.saturating_neg(), twos.saturating_sub(tens));
    double.against(&Large::of(digits, tens, tens.saturating_sub(twos)))
}

/// A whole number of any size: its digits to the base 2^32, the least first.
struct Large(Vec<u32>);

impl Large {
    /// Times so many fives and twos, if there are any.
    fn of(whole: u64, fives: i32, twos: i32) -> Self {
        let mut large = Self(parts(whole).to_vec());
        large.powers(5, 13, fives);
        large.powers(2, 31, twos);
        while large.0.last() == Some(&0) {
            large.0.pop();
        }
        large
    }

    /// Times a power; so many at once.
    fn powers(&mut self, of: u32, at_once: u32, power: i32) {
        let mut left = u32::try_from(power).unwrap_or(0);
        while left > 0 {
            self.times(of.saturating_pow(left.min(at_once)));
            left = left.saturating_sub(at_once);
        }
    }

    fn times(&mut self, by: u32) {
        let mut over = 0;
        for digit in &mut self.0 {
            [*digit, over] = parts((u64::from(*digit) * u64::from(by)).saturating_add(u64::from(over)));
        }
        if over > 0 {
            self.0.push(over);
        }
    }

    fn against(&self, other: &Self) -> Ordering {
        self.0.len().cmp(&other.0.len()).then_with(|| self.0.iter().rev().cmp(other.0.iter().rev()))
    }
}

/// The lower and the upper half.
fn parts(whole: u64) -> [u32; 2] {
    [whole & u64::from(u32::MAX), whole >> 32].map(|half| u32::try_from(half).unwrap_or(u32::MAX))
}

fn count(of: usize) -> i32 {
    i32::try_from(of).unwrap_or(i32::MAX)
}
