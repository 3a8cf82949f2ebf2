//! Numbers as JSON writes them, with digits grouped by `_` or a thin space.

use super::{Decimal, TextError};

/// Room for the digits of a number; doubles are printed with 24 characters at most.
const ROOM: usize = 100;
/// U+2009, and its no-break form U+202F.
const THIN_SPACES: [&[u8]; 2] = ["\u{2009}".as_bytes(), "\u{202F}".as_bytes()];

/// A number and what follows it.
pub(super) fn split(text: &str, decimal: Decimal) -> Result<(f64, &str), TextError> {
    let mut room = [0_u8; ROOM];
    let Taken { end, digits, form } = take(text.as_bytes(), &mut room);
    let rest = text.get(end..).unwrap_or("");
    if !digits.iter().any(u8::is_ascii_digit) {
        return Err(no_number(text));
    }
    if rest.starts_with(',') {
        return Err(TextError::Comma);
    }
    form?;
    if !is_json(digits) {
        return Err(TextError::NumberForm);
    }
    let digits = core::str::from_utf8(digits).map_err(|_| TextError::NumberForm)?;
    let number = decimal(digits).ok_or(TextError::NumberForm)?;
    if number.is_finite() { Ok((number, rest)) } else { Err(TextError::TooLarge) }
}

/// The nearest double, by core's own reader.
pub(super) fn nearest(digits: &str) -> Option<f64> {
    digits.parse().ok()
}

/// The count below the line.
pub(super) fn below_line(count: f64) -> Result<f64, TextError> {
    crate::error::positive(crate::Argument::Share, count).map_err(|_| TextError::BelowTheLine)
}

/// What of a text is part of its number.
struct Taken<'a> {
    /// Where the rest begins.
    end: usize,
    /// Without what groups them.
    digits: &'a [u8],
    form: Result<(), TextError>,
}

/// Takes what belongs to a number: an `e` only before its exponent, a sign only where one can stand, a thin
/// space only between digits. What groups digits must stand between digits.
fn take<'a>(text: &[u8], room: &'a mut [u8; ROOM]) -> Taken<'a> {
    let (mut end, mut used, mut before, mut form) = (0_usize, 0_usize, 0, Ok(()));
    loop {
        let after = text.get(end..).unwrap_or(&[]);
        let is_digit = |ahead: usize| after.get(ahead).is_some_and(u8::is_ascii_digit);
        let is_sign = |ahead: usize| matches!(after.get(ahead), Some(b'+' | b'-'));
        let is_after_digit = u8::is_ascii_digit(&before);
        let c = after.first().copied().unwrap_or(0);
        let is_thin = THIN_SPACES.iter().any(|space| after.starts_with(space));
        let width = match c {
            b'0'..=b'9' | b'.' | b'_' => 1,
            b'e' | b'E' if is_after_digit && (is_digit(1) || is_sign(1) && is_digit(2)) => 1,
            b'+' | b'-' if end == 0 || matches!(before, b'e' | b'E') => 1,
            _ if is_thin && is_after_digit && is_digit(3) => 3,
            _ => break,
        };
        if c == b'_' || width == 3 {
            if !(is_after_digit && is_digit(width)) {
                form = form.and(Err(TextError::NumberForm));
            }
        } else if let Some(place) = room.get_mut(used) {
            *place = c;
            used = used.saturating_add(1);
        } else {
            form = form.and(Err(TextError::NumberTooLong));
        }
        before = c;
        end = end.saturating_add(width);
    }
    Taken { end, digits: room.get(..used).unwrap_or(&[]), form }
}

/// Why there is no number at the beginning.
fn no_number(text: &str) -> TextError {
    let word = text.trim_start_matches(['-', '+']);
    let is_word = |known: &str| {
        word.get(..known.len()).is_some_and(|start| start.eq_ignore_ascii_case(known))
            && !word.as_bytes().get(known.len()).is_some_and(u8::is_ascii_alphabetic)
    };
    if text.is_empty() {
        TextError::Empty
    } else if ["inf", "infinity", "nan"].into_iter().any(is_word) {
        TextError::NotFinite
    } else {
        TextError::NotANumber
    }
}

/// Whether this is a number of JSON's grammar.
fn is_json(text: &[u8]) -> bool {
    let mut rest = text.strip_prefix(b"-").unwrap_or(text);
    let is_whole = rest.first() != Some(&b'0') || !rest.get(1).is_some_and(u8::is_ascii_digit);
    let mut is_number = is_whole && digits(&mut rest);
    if let [b'.', fraction @ ..] = rest {
        rest = fraction;
        is_number &= digits(&mut rest);
    }
    if let [b'e' | b'E', b'+' | b'-', exponent @ ..] | [b'e' | b'E', exponent @ ..] = rest {
        rest = exponent;
        is_number &= digits(&mut rest);
    }
    is_number && rest.is_empty()
}

/// Steps over digits; whether there were any.
fn digits(rest: &mut &[u8]) -> bool {
    let before = rest.len();
    while let [b'0'..=b'9', after @ ..] = *rest {
        *rest = after;
    }
    rest.len() < before
}
