//! Does the result agree?

use hilum::text::{Bases, Written};

use crate::case::{Amount, Amounts, Case, DataError, Kind, Tolerance};
use crate::code::{Code, Refusal};
use crate::functions::{Function, function};
use crate::inputs::Inputs;
use crate::value::{Measure, Value, split};

/// What came of a case.
#[derive(Clone, Debug)]
pub struct Outcome {
    /// The case.
    pub case: Case,
    /// The results in base units, or why there is none.
    pub result: Result<Vec<Value>, Refusal>,
    /// Whether that is what was expected.
    pub verdict: Verdict,
}

/// Whether a result is what was expected.
#[derive(Clone, Debug, PartialEq)]
pub enum Verdict {
    /// Within the tolerance: the largest deviation, as a fraction of it.
    Within(f64),
    /// Refused for the reason expected.
    Refused(Code),
    /// Anything else, told.
    Wrong(String),
}

impl Outcome {
    /// The case's name.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.case.id
    }

    /// What was calculated.
    #[must_use]
    pub fn function(&self) -> &str {
        &self.case.function
    }

    /// What the expectation rests on.
    #[must_use]
    pub const fn kind(&self) -> Kind {
        self.case.kind
    }
}

/// Runs one case.
///
/// # Errors
/// When the case is not what the README says: an unknown function, an input or a result of another name,
/// a tolerance in another unit than its value, a `printed` value within the tolerance, and so on.
pub fn run(case: Case) -> Result<Outcome, DataError> {
    let at = |problem: String| DataError::new(case.id.as_str(), problem);
    let function = function(&case.function).ok_or_else(|| at(format!("no function {}", case.function)))?;
    if !function.inputs.iter().any(|names| case.inputs.are(names)) {
        return Err(at(format!("{} takes one of the inputs {:?}", function.name, function.inputs)));
    }
    let result = (function.run)(&Inputs::new(&case.inputs));
    if let Err(Refusal::Case(problem)) = &result {
        return Err(at(problem.clone()));
    }
    let verdict = match (&case.expect, case.error, &case.tolerance) {
        (Some(expect), None, Some(tolerance)) => {
            let expected = expected(function, expect, tolerance).map_err(at)?;
            printed(&case, &expected).map_err(at)?;
            within(&result, &expected).map_err(at)?
        }
        (None, Some(code), None) if case.printed.is_none() && case.disagrees.is_none() => {
            refused(&result, code)
        }
        _ => return Err(at("needs either expect and tolerance, or error alone".into())),
    };
    Ok(Outcome { case, result, verdict })
}

/// A value and how far off it may be, in base units.
struct Expected {
    name: String,
    base: f64,
    measure: Measure,
    tolerance: f64,
}

fn expected(function: &Function, expect: &Amounts, tolerance: &Tolerance) -> Result<Vec<Expected>, String> {
    if !expect.are(function.outputs) {
        return Err(format!("{} gives {:?}", function.name, function.outputs));
    }
    let each = expect.0.iter().map(|(name, amount)| {
        let (base, measure) = base(amount)?;
        let tolerance = match tolerance {
            Tolerance::Rel(share) => share * base.abs(),
            Tolerance::Abs(amount) => difference(amount, measure)?,
        };
        if tolerance.is_finite() && tolerance >= 0.0 {
            Ok(Expected { name: name.clone(), base, measure, tolerance })
        } else {
            Err(format!("a tolerance of {tolerance}"))
        }
    });
    each.collect()
}

/// An amount in base units.
fn base(amount: &Amount) -> Result<(f64, Measure), String> {
    match amount {
        Amount::Number(number) => Ok((*number, Measure::Number)),
        Amount::Text(text) => Written::read(text)
            .and_then(|written| written.measured(&Bases::default()))
            .map(split)
            .map_err(|error| format!("\"{text}\" {error}")),
    }
}

/// A tolerance in the base units of its value; that of a temperature is a difference.
fn difference(amount: &Amount, of: Measure) -> Result<f64, String> {
    let (tolerance, measure) = base(amount)?;
    let wanted = match of {
        Measure::Temperature => Measure::Quantity(hilum::quantity::temperature_difference::POWERS),
        other => other,
    };
    if measure == wanted { Ok(tolerance) } else { Err("the tolerance measures something else".into()) }
}

/// What the source prints instead must lie outside the tolerance; else there is no disagreement.
fn printed(case: &Case, expected: &[Expected]) -> Result<(), String> {
    let (Some(_), Some(printed)) = (&case.disagrees, &case.printed) else {
        return if case.disagrees.is_some() || case.printed.is_some() {
            Err("disagrees and printed go together".into())
        } else {
            Ok(())
        };
    };
    for (name, amount) in &printed.0 {
        let of = expected.iter().find(|of| of.name == *name).ok_or_else(|| format!("no result {name}"))?;
        let (base, measure) = base(amount)?;
        if measure != of.measure {
            return Err(format!("the printed {name} measures something else"));
        }
        if (base - of.base).abs() <= of.tolerance {
            return Err(format!("the printed {name} agrees"));
        }
    }
    Ok(())
}

fn within(result: &Result<Vec<Value>, Refusal>, expected: &[Expected]) -> Result<Verdict, String> {
    let values = match result {
        Ok(values) => values,
        Err(refusal) => return Ok(Verdict::Wrong(format!("refused: {refusal}"))),
    };
    let mut most = 0.0_f64;
    for of in expected {
        let got = values.iter().find(|value| value.name == of.name);
        let got = got.ok_or_else(|| format!("the function gave no {}", of.name))?;
        if got.measure != of.measure {
            return Err(format!("{} measures something else", of.name));
        }
        let off = (got.base - of.base).abs();
        if off.is_nan() || off > of.tolerance {
            return Ok(Verdict::Wrong(format!(
                "{} is {}, expected {} ± {} (base units)",
                of.name, got.base, of.base, of.tolerance
            )));
        }
        most = most.max(if of.tolerance > 0.0 { off / of.tolerance } else { 0.0 });
    }
    Ok(Verdict::Within(most))
}

fn refused(result: &Result<Vec<Value>, Refusal>, code: Code) -> Verdict {
    match result {
        Ok(values) => Verdict::Wrong(format!("not refused ({code}): {values:?}")),
        Err(refusal) if refusal.code() == Some(code) => Verdict::Refused(code),
        Err(refusal) => Verdict::Wrong(format!("refused, but not because of {code}: {refusal}")),
    }
}

#[cfg(test)]
mod tests;
