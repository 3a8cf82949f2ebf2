//! Every calculation: what it takes, what it gives, and which call of the core it is.
//!
//! From this one table come the dispatch inside the wasm, and (with feature `describe`) the functions,
//! types and documentation of the npm package. Two rows of one name are two ways to call it.

mod applied;
mod label;
mod living;
mod seed;
mod shed;

use crate::refusal::Refused;
#[cfg(feature = "describe")]
use crate::take::Kind;

use crate::slot::Slots;

/// One way to calculate something; the result is left in the slots.
pub(crate) type Run = fn(&Slots) -> Result<(), Refused>;

/// The topics' rows, in the order of [`CALCULATORS`].
const ROWS: &[&[Run]] = &[seed::RUNS, label::RUNS, shed::RUNS, living::RUNS, applied::RUNS];

/// The calculation of a number.
pub(crate) fn run(number: usize) -> Option<Run> {
    ROWS.iter().copied().flatten().nth(number).copied()
}

/// What the package is generated from: each calculation for each substance that it takes.
#[cfg(feature = "describe")]
pub const CALCULATORS: &[&[fn() -> Vec<Calculator>]] =
    &[seed::DESCRIBED, label::DESCRIBED, shed::DESCRIBED, living::DESCRIBED, applied::DESCRIBED];

/// A calculation as it is documented.
#[cfg(feature = "describe")]
#[derive(Clone, Debug)]
pub struct Calculator {
    /// `rate`
    pub topic: &'static str,
    /// `per_seed`
    pub name: &'static str,
    /// What it answers.
    pub about: String,
    /// What it takes.
    pub inputs: Vec<Input>,
    /// What it gives.
    pub output: Input,
}

/// An input or an output.
#[cfg(feature = "describe")]
#[derive(Clone, Debug)]
pub struct Input {
    /// `size`
    pub name: &'static str,
    /// What it may be; a plain number when empty.
    pub kinds: &'static [Kind],
}

macro_rules! calculators {
    ($slots:ident => $($topic:ident { $(
        $(#[doc = $about:literal])+
        $name:ident $([$substance:ident])? ($($input:ident: $type:ty),+) -> $result:ident: $given:ty = $body:expr;
    )+ })+) => {
        pub(super) const RUNS: &[crate::table::Run] = &[$($({
            fn run $(<$substance: crate::take::Product>)? (
                $slots: &crate::slot::Slots,
            ) -> Result<(), crate::refusal::Refused> {
                let mut at = 0;
                $(let $input: $type = crate::table::next($slots, &mut at)?;)+
                let given: $given = $body;
                $slots.give(crate::give::Give::give(given));
                Ok(())
            }
            crate::table::by_substance!(run $($substance)?)
        }),+),+];

        #[cfg(feature = "describe")]
        pub(super) const DESCRIBED: &[fn() -> Vec<crate::table::Calculator>] = &[$($({
            fn describe $(<$substance: crate::take::Product>)? () -> crate::table::Calculator {
                crate::table::Calculator {
                    topic: stringify!($topic),
                    name: stringify!($name),
                    about: [$($about),+].map(str::trim).join(" "),
                    inputs: vec![$(crate::table::Input {
                        name: stringify!($input),
                        kinds: <$type as crate::take::Take>::KINDS,
                    }),+],
                    output: crate::table::Input {
                        name: stringify!($result),
                        kinds: <$given as crate::give::Give>::KINDS,
                    },
                }
            }
            crate::table::for_substances!(describe $($substance)?)
        }),+),+];
    };
}

/// A calculation on liquid or dry product: which of them, the first input says.
macro_rules! by_substance {
    ($run:ident) => {
        $run
    };
    ($run:ident $substance:ident) => {
        |slots| {
            if cfg!(not(feature = "text")) || crate::take::is_liquid(slots.get(0)) {
                $run::<hilum::rate::Liquid>(slots)
            } else {
                $run::<hilum::rate::Dry>(slots)
            }
        }
    };
}

#[cfg(feature = "describe")]
macro_rules! for_substances {
    ($describe:ident) => {
        || vec![$describe()]
    };
    ($describe:ident $substance:ident) => {
        || vec![$describe::<hilum::rate::Liquid>(), $describe::<hilum::rate::Dry>()]
    };
}

use by_substance;
use calculators;
#[cfg(feature = "describe")]
use for_substances;

/// The next input, of the type that is wanted.
fn next<T: crate::take::Take>(slots: &Slots, at: &mut usize) -> Result<T, Refused> {
    let field = *at;
    *at = field.saturating_add(1);
    crate::take::take(slots, field)
}
