//! Numbers as people read and measure them: few digits, whole pounds, gallons with fluid ounces.

use hilum_job::document::Out;

/// A space at which no line is broken: between thousands, and before a unit.
pub(crate) const JOIN: char = '\u{a0}';
/// Numbers that need more decimals are written with a power of ten.
const MOST_DECIMALS: usize = 6;
/// Fluid ounces in a gallon.
const FL_OZ_PER_GAL: f64 = 128.0;

/// A number with so many significant digits.
pub(crate) fn significant(value: f64, digits: usize) -> String {
    let scientific = format!("{value:.*e}", digits.saturating_sub(1));
    let exponent = scientific.split_once('e').and_then(|(_, exponent)| exponent.parse::<i32>().ok());
    match exponent {
        Some(exponent @ -4..=9) => {
            let digits = i32::try_from(digits).unwrap_or(0);
            let decimals = digits.saturating_sub(1).saturating_sub(exponent);
            grouped(&format!("{value:.*}", usize::try_from(decimals).unwrap_or(0)))
        }
        _ => scientific,
    }
}

/// Numbers of one column with as few decimals as keep each within a thousandth of itself; `None` as nothing.
pub(crate) fn aligned(values: &[Option<f64>]) -> Vec<String> {
    let given = || values.iter().flatten().copied();
    let Some(decimals) = (0..=MOST_DECIMALS).find(|decimals| given().all(|value| fits(value, *decimals)))
    else {
        return values
            .iter()
            .map(|value| value.map(|value| significant(value, 4)).unwrap_or_default())
            .collect();
    };
    let shown = |value: f64| grouped(&format!("{value:.decimals$}"));
    values.iter().map(|value| value.map(shown).unwrap_or_default()).collect()
}

/// Whether a number with so many decimals is still within a thousandth of itself.
fn fits(value: f64, decimals: usize) -> bool {
    let shown = format!("{value:.decimals$}").parse::<f64>();
    shown.is_ok_and(|shown| (shown - value).abs() <= 1e-3 * value.abs()) && value.abs() < 1e12
}

/// A dose, flow or share, to within a thousandth of itself.
pub(crate) fn dose(value: f64) -> String {
    aligned(&[Some(value)]).concat()
}

/// A limit: four significant digits, never rounded up.
pub(crate) fn at_most(value: f64) -> String {
    let digits = format!("{value:.11e}");
    let cut = digits.split_once('e').and_then(|(digits, exponent)| {
        let four: String = digits.chars().take(5).collect();
        format!("{four}e{exponent}").parse::<f64>().ok()
    });
    trimmed(&significant(cut.unwrap_or(value), 4))
}

/// Cells on a seed: `1.06e6`, as the trade writes them.
pub(crate) fn cells(out: &Out) -> String {
    if out.value > 0.0 { format!("{:.2e}", out.value) } else { "0".to_owned() }
}

/// A share as a percentage, to a tenth of one.
pub(crate) fn percent(share: f64) -> String {
    let percent = share * 100.0;
    joined(&if percent < 1.0 { dose(percent) } else { format!("{percent:.1}") }, "%")
}

/// A number without its unit: whole from 100 on, else three significant digits.
pub(crate) fn count(out: &Out) -> String {
    if out.value >= 100.0 { significant_whole(out.value) } else { trimmed(&significant(out.value, 3)) }
}

/// An amount of seed with its unit.
pub(crate) fn seed(out: &Out) -> String {
    joined(&count(out), &out.unit)
}

/// A number of seeds, in millions where there are so many.
pub(crate) fn seeds(out: &Out) -> String {
    if out.value >= 1e6 { joined(&significant(out.value / 1e6, 4), "M") } else { count(out) }
}

/// An amount of product as it is measured out.
pub(crate) fn product(out: &Out) -> String {
    match out.unit.as_ref() {
        "fl oz" => gallons(out.value),
        "L" if out.value < 1.0 => joined(&pour(out.value * 1000.0), "mL"),
        "kg" if out.value < 1.0 => joined(&pour(out.value * 1000.0), "g"),
        "lb" if out.value < 1.0 => joined(&pour(out.value * 16.0), "oz av"),
        unit => joined(&pour(out.value), unit),
    }
}

/// Money.
pub(crate) fn money(value: f64) -> String {
    grouped(&format!("{value:.2}"))
}

/// Four significant digits, trailing zeros left out; 0 as `0`.
fn pour(value: f64) -> String {
    if value.abs() < 1e-9 { "0".to_owned() } else { trimmed(&significant(value, 4)) }
}

/// `2 gal 20.4 fl oz`; fluid ounces alone below a gallon.
fn gallons(fl_oz: f64) -> String {
    // Rounded before it is split, so that 127.99 becomes a gallon.
    let decimals = if fl_oz < 1000.0 { 10.0 } else { 1.0 };
    let rounded = (fl_oz * decimals).round() / decimals;
    if rounded < FL_OZ_PER_GAL {
        return joined(&pour(fl_oz), "fl oz");
    }
    let gallons = (rounded / FL_OZ_PER_GAL).floor();
    let rest = rounded - gallons * FL_OZ_PER_GAL;
    let gallons = grouped(&format!("{gallons:.0}"));
    match trimmed(&format!("{rest:.1}")).as_str() {
        "0" => joined(&gallons, "gal"),
        rest => joined(&joined(&gallons, "gal"), &joined(rest, "fl oz")),
    }
}

fn significant_whole(value: f64) -> String {
    if value < 1e15 { grouped(&format!("{value:.0}")) } else { significant(value, 4) }
}

/// Two texts that stay on one line, as a number and its unit do.
pub(crate) fn joined(left: &str, right: &str) -> String {
    format!("{left} {right}").replace(' ', &JOIN.to_string())
}

/// Without zeros behind the point.
fn trimmed(text: &str) -> String {
    if text.contains('.') && !text.contains('e') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text.to_owned()
    }
}

/// Spaces between thousands, from five digits on.
fn grouped(text: &str) -> String {
    let (whole, rest) = text.find('.').map_or((text, ""), |point| text.split_at(point));
    if whole.trim_start_matches('-').len() < 5 {
        return text.to_owned();
    }
    let digits = whole.chars().count();
    let mut shown = String::new();
    for (i, c) in whole.chars().enumerate() {
        if i > 0 && digits.saturating_sub(i).is_multiple_of(3) && !shown.ends_with('-') {
            shown.push(JOIN);
        }
        shown.push(c);
    }
    shown + rest
}

#[cfg(test)]
mod tests {
    use std::borrow::Cow;

    use super::*;

    fn out(value: f64, unit: &'static str) -> Out {
        Out { value, unit: Cow::Borrowed(unit) }
    }

    fn spaced(text: &str) -> String {
        text.replace(JOIN, " ")
    }

    #[test]
    fn a_dose_is_as_short_as_a_thousandth_allows() {
        assert_eq!(dose(2.309_87), "2.31");
        assert_eq!(dose(2.312_9), "2.313");
        assert_eq!(dose(1.175), "1.175");
        assert_eq!(dose(1.6), "1.6");
        assert_eq!(dose(210.000_000_01), "210");
        assert_eq!(dose(0.0), "0");
        assert_eq!(dose(1.234e-12), "1.234e-12");
    }

    #[test]
    fn a_column_has_one_number_of_decimals() {
        assert_eq!(aligned(&[Some(0.9), None, Some(11.52)]), ["0.90", "", "11.52"]);
    }

    #[test]
    fn a_limit_is_never_rounded_up() {
        assert_eq!(spaced(&at_most(511_899.9)), "511 800");
        assert_eq!(at_most(52.399_99), "52.39");
        assert_eq!(at_most(0.0), "0");
    }

    #[test]
    fn an_amount_of_seed_is_whole() {
        assert_eq!(spaced(&seed(&out(21_385.43, "lb"))), "21 385 lb");
        assert_eq!(spaced(&seed(&out(4200.0, "kg"))), "4200 kg");
        assert_eq!(spaced(&seed(&out(12.5, "kg"))), "12.5 kg");
        assert_eq!(spaced(&seeds(&out(60_198_000.0, "seeds"))), "60.20 M");
    }

    #[test]
    fn liquid_is_measured_in_gallons_and_fluid_ounces() {
        assert_eq!(spaced(&product(&out(112.44, "fl oz"))), "112.4 fl oz");
        assert_eq!(spaced(&product(&out(276.44, "fl oz"))), "2 gal 20.4 fl oz");
        assert_eq!(spaced(&product(&out(256.0, "fl oz"))), "2 gal");
        assert_eq!(spaced(&product(&out(1151.7, "fl oz"))), "9 gal");
        assert_eq!(spaced(&product(&out(127.99, "fl oz"))), "1 gal");
        assert_eq!(spaced(&product(&out(0.0, "fl oz"))), "0 fl oz");
    }

    #[test]
    fn metric_amounts_below_one_take_the_smaller_unit() {
        assert_eq!(spaced(&product(&out(0.85, "L"))), "850 mL");
        assert_eq!(spaced(&product(&out(35.42, "L"))), "35.42 L");
        assert_eq!(spaced(&product(&out(0.0405, "kg"))), "40.5 g");
    }

    #[test]
    fn thousands_stand_apart() {
        assert_eq!(spaced(&money(1_234_567.891)), "1 234 567.89");
        assert_eq!(spaced(&money(-12_345.0)), "-12 345.00");
        assert_eq!(spaced(&money(999.5)), "999.50");
    }
}
