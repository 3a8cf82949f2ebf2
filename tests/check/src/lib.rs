//! The check values of `tests/data`, run against the core.
//!
//! [`run_all`] runs every case through the public API of the core and says how far each result lies from
//! what is expected, as a fraction of the tolerance. [`vectors::text`] writes the same inputs and results as
//! exact bits, for the runners of other languages.

mod case;
mod code;
mod compare;
mod functions;
mod inputs;
mod source;
mod value;
pub mod vectors;

pub use case::{Amount, Amounts, Case, DataError, Kind, TOPICS, Tolerance, Topic, topics};
pub use code::{Code, Refusal};
pub use compare::{Outcome, Verdict, run};
pub use functions::{Function, TABLE, function};
pub use inputs::Inputs;
pub use source::{Seen, Source, sources};
pub use value::{Measure, Value};

/// The outcome of every case, in the order of the files.
///
/// # Errors
/// When a file is not what its README says.
pub fn run_all() -> Result<Vec<Outcome>, DataError> {
    let mut outcomes = Vec::new();
    for topic in topics()? {
        for case in topic.cases {
            outcomes.push(run(case)?);
        }
    }
    Ok(outcomes)
}
