//! Numbers as JSON writes them, with digits grouped by `_` or a thin space.

use super::{Decimal, TextError};

/// Room for the digits of a number; doubles are printed with 24 characters at most.
const ROOM: usize = 100;
/// U+2009, and its no-break form U+202F.
const THIN_SPACES: [char; 2] = ['\u{2009}', '\u{202F}'];

/// A number and what follows it.
pub(super) fn split(text: &str, decimal: Decimal) -> Result<(f64, &str), TextError> {
    let end = text.char_indices().find(|&(at, c)| !belongs(text, at, c)).map_or(text.len(), |(at, _)| at);
    let (written, rest) = text.split_at_checked(end).ok_or(TextError::NotANumber)?;
    if !written.contains(|c: char| c.is_ascii_digit()) {
        return Err(no_number(text));
    }
    if rest.starts_with(',') {
        return Err(TextError::Comma);
    }
    let mut room = [0_u8; ROOM];
    let digits = ungrouped(written, &mut room)?;
    if !is_json(digits) {
        return Err(TextError::NumberForm);
    }
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

/// Whether a character at a place is part of the number: an `e` only before its exponent, a sign only
/// where one can stand, a thin space only between digits.
fn belongs(text: &str, at: usize, c: char) -> bool {
    let before = text.get(..at).and_then(|t| t.chars().next_back());
    let mut after = text.get(at..).unwrap_or("").chars().skip(1);
    let digit = |c: Option<char>| c.is_some_and(|c| c.is_ascii_digit());
    match c {
        '0'..='9' | '.' | '_' => true,
        'e' | 'E' => {
            let next = after.next();
            digit(before) && (digit(next) || matches!(next, Some('+' | '-')) && digit(after.next()))
        }
        '+' | '-' => before.is_none_or(|c| matches!(c, 'e' | 'E')),
        c if THIN_SPACES.contains(&c) => digit(before) && digit(after.next()),
        _ => false,
    }
}

/// Why there is no number at the beginning.
fn no_number(text: &str) -> TextError {
    let word = text.trim_start_matches(['-', '+']);
    if text.is_empty() {
        TextError::Empty
    } else if ["inf", "infinity", "nan"].iter().any(|w| starts_with_word(word, w)) {
        TextError::NotFinite
    } else {
        TextError::NotANumber
    }
}

fn starts_with_word(text: &str, word: &str) -> bool {
    let first = text.split(|c: char| !c.is_ascii_alphabetic()).next().unwrap_or("");
    first.eq_ignore_ascii_case(word)
}

/// The number without what groups its digits; a group sign must stand between digits.
fn ungrouped<'a>(written: &str, room: &'a mut [u8; ROOM]) -> Result<&'a str, TextError> {
    let mut used = 0_usize;
    let mut before = None;
    let mut chars = written.chars().peekable();
    while let Some(c) = chars.next() {
        if c == '_' || THIN_SPACES.contains(&c) {
            let between = |c: Option<char>| c.is_some_and(|c| c.is_ascii_digit());
            if !between(before) || !between(chars.peek().copied()) {
                return Err(TextError::NumberForm);
            }
        } else {
            let byte = u8::try_from(c).map_err(|_| TextError::NumberForm)?;
            *room.get_mut(used).ok_or(TextError::NumberTooLong)? = byte;
            used = used.saturating_add(1);
        }
        before = Some(c);
    }
    room.get(..used).and_then(|bytes| core::str::from_utf8(bytes).ok()).ok_or(TextError::NumberForm)
}

/// Whether this is a number of JSON's grammar.
fn is_json(text: &str) -> bool {
    let text = text.strip_prefix('-').unwrap_or(text);
    let (mantissa, exponent) = text.split_once(['e', 'E']).map_or((text, None), |(m, e)| (m, Some(e)));
    let (whole, fraction) = mantissa.split_once('.').map_or((mantissa, None), |(w, f)| (w, Some(f)));
    let digits = |t: &str| !t.is_empty() && t.bytes().all(|b| b.is_ascii_digit());
    digits(whole)
        && (whole == "0" || !whole.starts_with('0'))
        && fraction.is_none_or(digits)
        && exponent.is_none_or(|e| digits(e.strip_prefix(['+', '-']).unwrap_or(e)))
}
