//! The same cases as exact bits, for runners that read neither JSON nor quantities.
//!
//! One line per case, its fields separated by tabs: the id, the function, each input as `name=…`, then each
//! result as `>name=…` or the refusal as `!code`. A number is the 16 hexadecimal digits of its double; that of
//! a quantity is in base units, which follow it: `3f40…:m3.kg-1`, `:1` for a share, `:degC` for a point of
//! temperature. A text that is no quantity stands in quotes. The order is that of the files, so two runners
//! can compare line by line.

use core::fmt::Write as _;

use crate::case::{Amount, DataError};
use crate::compare::Outcome;
use crate::inputs::Inputs;
use crate::value::{Measure, split};

/// Every case.
///
/// # Errors
/// When a file is not what its README says.
pub fn text() -> Result<String, DataError> {
    let mut lines = String::new();
    for outcome in crate::run_all()? {
        lines.push_str(&line(&outcome));
        lines.push('\n');
    }
    Ok(lines)
}

/// One case.
#[must_use]
pub fn line(outcome: &Outcome) -> String {
    let mut line = format!("{}\t{}", outcome.id(), outcome.function());
    let inputs = Inputs::new(&outcome.case.inputs);
    for (name, amount) in &outcome.case.inputs.0 {
        let number = match amount {
            Amount::Number(number) => Ok((*number, Measure::Number)),
            Amount::Text(text) => inputs.measured(name).map(split).map_err(|_| text),
        };
        // Writing to a string does not fail.
        let _ = match number {
            Ok((number, measure)) => write!(line, "\t{name}={:016x}{measure}", number.to_bits()),
            Err(text) => write!(line, "\t{name}=\"{text}\""),
        };
    }
    match &outcome.result {
        Ok(values) => {
            for value in values {
                let _ = write!(line, "\t>{}={:016x}{}", value.name, value.base.to_bits(), value.measure);
            }
        }
        Err(refusal) => {
            let _ = write!(line, "\t!{}", refusal.code().map_or("?", |code| code.word()));
        }
    }
    line
}

#[cfg(test)]
mod tests {
    use super::*;

    // 150000 / 4046.8564224 and 2750 / 0.45359237 as doubles, and their quotient: worked out with Python's
    // `struct`, apart from this library.
    #[test]
    fn a_line_holds_the_exact_bits() {
        let case = r#"{"id": "sown", "function": "sowing.mass_per_area",
            "inputs": {"sown": "150000 seeds/ac", "size": "2750 seeds/lb"},
            "expect": {"rate": "54.5 lb/ac"}, "tolerance": {"abs": "0.05 lb/ac"},
            "source": "ia-agron212", "locator": "problem 1", "kind": "published"}"#;
        let outcome = crate::run(serde_json::from_str(case).unwrap()).unwrap();
        let bits = "sown\tsowing.mass_per_area\tsown=4042886c5ef907ee:m-2.seeds\tsize=40b7aeb653666b3c:kg-1.seeds\t>rate=3f790ab6dc7806f5:m-2.kg";
        assert_eq!(line(&outcome), bits);
    }

    #[test]
    fn a_text_that_is_no_quantity_stands_in_quotes() {
        let case = r#"{"id": "firkin", "function": "unit.convert", "inputs": {"value": "5 lb", "to": "firkin"},
            "error": "unknown_unit", "source": "by-hand", "locator": "", "kind": "worked"}"#;
        let outcome = crate::run(serde_json::from_str(case).unwrap()).unwrap();
        let lb = format!("{:016x}", (5.0 * 0.453_592_37_f64).to_bits());
        assert_eq!(
            line(&outcome),
            format!("firkin\tunit.convert\tvalue={lb}:kg\tto=\"firkin\"\t!unknown_unit")
        );
    }

    #[test]
    fn every_case_is_a_line_of_its_own() {
        let text = text().unwrap();
        assert_eq!(text.lines().count(), crate::run_all().unwrap().len());
        assert!(
            text.lines().all(|line| line.contains("\t>") != line.contains("\t!") && !line.ends_with("!?"))
        );
    }
}
