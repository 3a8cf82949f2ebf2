//! Every calculation: what it takes, what it gives, and which call of the core it is.
//!
//! From this one table come the dispatch inside the wasm, and (with feature `describe`) the functions,
//! types and documentation of the npm package. Two rows of one name are two ways to call it.

mod applied;
mod label;
mod living;
mod seed;
mod shed;

#[cfg(feature = "text")]
use crate::give::Given;
use crate::refusal::Refusal;
#[cfg(feature = "text")]
use crate::slot::Slot;
use crate::slot::Slots;
#[cfg(feature = "describe")]
use crate::take::Kind;
use crate::take::Wanted;

/// One way to calculate something.
pub(crate) struct Way {
    inputs: &'static [Wanted],
    #[cfg(feature = "text")]
    given: Given,
    /// NaN is never a result, so it says that there is none, and the slots why.
    run: fn(&Slots) -> f64,
}

/// A calculation: on liquid and on dry product where it is made for both.
pub(crate) type Row = &'static [Way];

/// The topics' rows, in the order of [`CALCULATORS`].
const ROWS: &[&[Row]] = &[seed::ROWS, label::ROWS, shed::ROWS, living::ROWS, applied::ROWS];

/// The calculation of a number.
pub(crate) fn row(number: usize) -> Option<Row> {
    ROWS.iter().copied().flatten().nth(number).copied()
}

fn way(row: Row, slots: &Slots) -> Option<&'static Way> {
    let is_dry = cfg!(feature = "text") && !crate::take::is_liquid(slots.get(0));
    row.get(usize::from(is_dry)).or(row.first())
}

/// Calculates, in base units; which way, the first input says.
pub(crate) fn calculate(row: Row, slots: &Slots) -> Result<f64, Refusal> {
    let way = way(row, slots).ok_or(Refusal::NONE)?;
    let looked = slots.look(way.inputs).map(|()| (way.run)(slots));
    looked.ok().filter(|result| !result.is_nan()).ok_or(slots.refusal())
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

/// A result and what it measures.
#[cfg(feature = "text")]
pub(crate) fn given(row: Row, slots: &Slots, result: f64) -> Slot {
    match way(row, slots).map_or(Given::Number, |way| way.given) {
        Given::Number => Slot::Number(result),
        Given::Quantity(powers) => Slot::Quantity(result, powers),
        Given::Said => slots.said(),
    }
}

macro_rules! calculators {
    ($slots:ident => $($topic:ident { $(
        $(#[doc = $about:literal])+
        $name:ident $([$substance:ident])? ($($input:ident: $type:ty),+) -> $result:ident: $given:ty = $body:expr;
    )+ })+) => {
        pub(super) const ROWS: &[crate::table::Row] = &[$($({
            #[inline(always)]
            fn result $(<$substance: crate::take::Product>)? (
                $slots: &crate::slot::Slots,
            ) -> Result<$given, crate::refusal::Refused> {
                let mut at = 0;
                $(let $input: $type = crate::take::next($slots, &mut at)?;)+
                Ok($body)
            }
            fn run $(<$substance: crate::take::Product>)? (slots: &crate::slot::Slots) -> f64 {
                let given = crate::table::called!(result $($substance)? (slots));
                given.map_or(f64::NAN, |given| crate::give::Give::give(given, slots))
            }
            crate::table::ways!(run $(for $substance)?, [$($type),+] -> $given)
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

/// One way, or one for liquid and one for dry product; numbers do not say which of them they are.
macro_rules! ways {
    ($run:ident, [$($type:ty),+] -> $given:ty) => {
        &[crate::table::Way {
            inputs: &[$(<$type as crate::take::Take>::WANTED),+],
            #[cfg(feature = "text")]
            given: <$given as crate::give::Give>::GIVEN,
            run: $run,
        }]
    };
    ($run:ident for $substance:ident, [$($type:ty),+] -> $given:ty) => {{
        const fn way<$substance: crate::take::Product>() -> crate::table::Way {
            crate::table::Way {
                inputs: const { &[$(<$type as crate::take::Take>::WANTED),+] },
                #[cfg(feature = "text")]
                given: <$given as crate::give::Give>::GIVEN,
                run: $run::<$substance>,
            }
        }
        &[way::<hilum::rate::Liquid>(), #[cfg(feature = "text")] way::<hilum::rate::Dry>()]
    }};
}

macro_rules! called {
    ($result:ident ($slots:ident)) => {
        $result($slots)
    };
    ($result:ident $substance:ident ($slots:ident)) => {
        $result::<$substance>($slots)
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

use calculators;
use called;
#[cfg(feature = "describe")]
use for_substances;
use ways;
