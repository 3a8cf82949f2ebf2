//! Names, numbers and lists as messages say them.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use hilum::quantity::Temperature;

use crate::digits::{to_digits, to_two_digits};
use crate::document::{Out, Units};
use crate::plan::Worked;
use crate::problem::quoted;

/// As many names are spelt out; of the others the number is told.
const NAMED: usize = 3;

/// A quantity with its unit, to four significant digits.
pub(crate) fn told(out: &Out) -> String {
    with_digits(out, 4)
}

/// Two quantities, to as many digits as it takes to tell them apart.
pub(crate) fn apart(one: &Out, other: &Out) -> (String, String) {
    let pairs = (3..=12).map(|digits| (with_digits(one, digits), with_digits(other, digits)));
    pairs
        .into_iter()
        .find(|(one, other)| one != other)
        .unwrap_or_else(|| (with_digits(one, 12), with_digits(other, 12)))
}

fn with_digits(out: &Out, digits: i32) -> String {
    format!("{} {}", to_digits(out.value, digits), out.unit)
}

/// Cells on a seed, as the trade writes them.
pub(crate) fn cells(out: &Out) -> String {
    if out.value > 0.0 {
        format!("{} {}", to_two_digits(out.value), out.unit)
    } else {
        format!("0 {}", out.unit)
    }
}

/// A share as a percentage.
pub(crate) fn percent(share: f64) -> String {
    format!("{} %", to_digits(share * 100.0, 3))
}

/// A point on the job's scale of temperature.
pub(super) fn degrees(temperature: Temperature, units: Units) -> String {
    match units {
        Units::Us => format!("{} °F", to_digits(temperature.fahrenheit(), 3)),
        Units::Metric => format!("{} °C", to_digits(temperature.celsius(), 3)),
    }
}

/// A time in the two largest units that it fills.
pub(crate) fn duration(seconds: f64) -> String {
    let units = [(86_400.0, "d"), (3_600.0, "h"), (60.0, "min"), (1.0, "s")];
    let mut left = seconds;
    let mut said: Vec<String> = Vec::new();
    for (unit, name) in units {
        let whole = hilum::math::floor(left / unit);
        if whole > 0.0 || (unit <= 1.0 && said.is_empty()) {
            said.push(format!("{} {name}", to_digits(whole, 9)));
            left -= whole * unit;
        }
        if said.len() == 2 || (!said.is_empty() && left < unit / 60.0) {
            break;
        }
    }
    said.join(" ")
}

/// Names in quotes: the first few, and how many more.
#[inline(never)]
pub(super) fn names(names: &[&str]) -> String {
    let mut shown: Vec<String> = names.iter().take(NAMED).map(|name| quoted(name)).collect();
    let more = names.len().saturating_sub(shown.len());
    if more > 0 {
        return format!("{} and {more} more", shown.join(", "));
    }
    match shown.pop() {
        Some(last) if !shown.is_empty() => format!("{} and {last}", shown.join(", ")),
        last => last.unwrap_or_default(),
    }
}

/// `order "1"`, or `orders "1", "2" and "3"`.
pub(super) fn orders(worked: &Worked<'_, '_>, places: &[usize]) -> String {
    let word = if places.len() == 1 { "order" } else { "orders" };
    let mut of_orders = Vec::new();
    for order in places {
        of_orders.push(order_name(worked, *order));
    }
    format!("{word} {}", names(&of_orders))
}

/// An order's own name.
pub(super) fn order_name<'m>(worked: &Worked<'m, '_>, order: usize) -> &'m str {
    worked.draft.order(order).map_or("", |order| order.doc.order.as_str())
}

/// A product's name in quotes.
pub(super) fn product(worked: &Worked<'_, '_>, treatment: usize) -> String {
    worked.draft.lines.get(treatment).map_or_else(String::new, |line| quoted(&line.treatment.doc.product))
}

/// A tank's name in quotes.
pub(super) fn tank(worked: &Worked<'_, '_>, tank: usize) -> String {
    worked.draft.model.tanks.get(tank).map_or_else(String::new, |tank| quoted(&tank.doc.tank))
}

#[cfg(test)]
mod tests {
    use alloc::borrow::Cow;
    use alloc::string::ToString;

    use super::*;

    #[test]
    fn numbers_are_short_and_two_that_differ_look_different() {
        assert_eq!(to_digits(3.2, 4), "3.2");
        assert_eq!(to_digits(29_999.7, 4), "30000");
        assert_eq!(to_digits(0.012_345, 3), "0.0123");
        assert_eq!(to_digits(4.2e13, 3), "4.2e13");
        assert_eq!(to_digits(0.0, 3), "0");
        let oz = |value| Out { value, unit: Cow::Borrowed("fl oz/cwt") };
        let pair = ("3.20001 fl oz/cwt".to_string(), "3.2 fl oz/cwt".to_string());
        assert_eq!(apart(&oz(3.200_01), &oz(3.2)), pair);
    }

    #[test]
    fn times_are_told_in_two_units() {
        assert_eq!(duration(8_100.0), "2 h 15 min");
        assert_eq!(duration(86_400.0 * 45.0), "45 d");
        assert_eq!(duration(90_000.0), "1 d 1 h");
        // What is less than a sixtieth of the larger unit does not count beside it: 24 min of a day.
        assert_eq!(duration(86_430.0), "1 d");
        assert_eq!(duration(86_400.0 * 3.0 + 1_440.0), "3 d 24 min");
        assert_eq!(duration(0.0), "0 s");
        assert_eq!(duration(59.0), "59 s");
    }

    #[test]
    fn long_lists_are_cut_and_counted() {
        assert_eq!(names(&["a"]), "\"a\"");
        assert_eq!(names(&["a", "b"]), "\"a\" and \"b\"");
        assert_eq!(names(&["a", "b", "c"]), "\"a\", \"b\" and \"c\"");
        assert_eq!(names(&["a", "b", "c", "d", "e"]), "\"a\", \"b\", \"c\" and 2 more");
    }
}
