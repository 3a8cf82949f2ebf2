//! Every calculation: what it takes, what it gives, and which call of the core it is.
//!
//! From this one table come the dispatch inside the wasm, and (with feature `describe`) the functions,
//! types and documentation of the npm package. Two rows of one name are two ways to call it.

#[cfg(any(feature = "text", feature = "after"))]
mod applied;
#[cfg(any(feature = "text", not(feature = "after")))]
mod label;
#[cfg(any(feature = "text", feature = "after"))]
mod living;
#[cfg(any(feature = "text", not(feature = "after")))]
mod seed;
#[cfg(any(feature = "text", not(feature = "after")))]
mod shed;
#[cfg(any(feature = "text", feature = "after"))]
mod survival;
#[cfg(any(feature = "text", not(feature = "after")))]
mod treater;

#[cfg(feature = "text")]
mod dispatch;
#[cfg(feature = "text")]
pub(crate) use dispatch::{Row, Way, row};

#[cfg(any(feature = "describe", not(feature = "text")))]
use crate::take::Check;
#[cfg(feature = "describe")]
use crate::take::Kind;

/// The checks that an input alone is refused by, as `hilum/numbers` numbers them.
#[cfg(any(feature = "describe", not(feature = "text")))]
pub(crate) const CHECKS: [Check; 4] = [Check::Positive, Check::NotNegative, Check::Share, Check::Temperature];

/// What the package is generated from: each calculation for each substance that it takes.
#[cfg(feature = "describe")]
pub const CALCULATORS: &[&[fn() -> Vec<Calculator>]] = &[
    seed::DESCRIBED,
    label::DESCRIBED,
    shed::DESCRIBED,
    living::DESCRIBED,
    survival::DESCRIBED,
    treater::DESCRIBED,
    applied::DESCRIBED,
];

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
    /// What looks at the number of an input before the calculation does: its place in the list of checks.
    pub check: Option<usize>,
}

/// The place of a check among [`CHECKS`].
#[cfg(feature = "describe")]
pub(crate) fn check(check: Check) -> Option<usize> {
    CHECKS.iter().position(|known| *known == check)
}

macro_rules! calculators {
    ($slots:ident => $($topic:ident { $(
        $(#[doc = $about:literal])+
        $name:ident $([$substance:ident])? ($($input:ident: $type:ty),+) -> $result:ident: $given:ty = $body:expr;
    )+ })+) => {
        // Numbers do not say whether they are of liquid or of dry product, and the bits are the same.
        $($(#[cfg(not(feature = "text"))]
        const _: () = {
            $(
                #[allow(unused_imports, reason = "some call what a product can do, and some only its doses")]
                use crate::take::Product as _;
                type $substance = hilum::rate::Liquid;
            )?

            #[inline(always)]
            #[allow(clippy::too_many_arguments, reason = "as many as the calculation has")]
            fn result(telling: crate::slot::Telling, $($input: f64),+) -> Option<f64> {
                let looked = [$(crate::slot::looked::<$type>($input)?),+];
                let $slots = &crate::slot::Slots::of(telling, looked);
                let result = || -> Result<$given, crate::refusal::Refused> {
                    let mut at = 0;
                    $(let $input: $type = crate::take::next($slots, &mut at)?;)+
                    Ok($body)
                };
                result().ok().map(|given| crate::give::Give::give(given, $slots))
            }

            #[unsafe(export_name = concat!(stringify!($topic), ".", stringify!($name) $(, " ", stringify!($input))+))]
            extern "C" fn once($($input: f64),+) -> f64 {
                result(crate::slot::Telling::Why, $($input),+).unwrap_or(f64::NAN)
            }

            #[unsafe(export_name = concat!("quiet ", stringify!($topic), ".", stringify!($name) $(, " ", stringify!($input))+))]
            extern "C" fn quiet($($input: f64),+) -> f64 {
                result(crate::slot::Telling::Nothing, $($input),+).unwrap_or(f64::NAN)
            }

            #[unsafe(export_name = concat!("each ", stringify!($topic), ".", stringify!($name) $(, " ", stringify!($input))+))]
            extern "C" fn each(pairs: usize) -> u32 {
                crate::numbers::rows(pairs, |[$($input),+]| {
                    result(crate::slot::Telling::Nothing, $($input),+)
                })
            }
        };)+)+

        #[cfg(feature = "text")]
        pub(super) const ROWS: &[crate::table::Row] = &[$($({
            #[inline(always)]
            fn result $(<$substance: crate::take::Product>)? (
                $slots: &crate::slot::Slots<'_>,
            ) -> Result<$given, crate::refusal::Refused> {
                let mut at = 0;
                $(let $input: $type = crate::take::next($slots, &mut at)?;)+
                Ok($body)
            }
            fn run $(<$substance: crate::take::Product>)? (rows: &crate::slot::Rows<'_>, results: &mut crate::slot::Column) {
                rows.each(results, |slots| {
                    let given = crate::table::called!(result $($substance)? (slots));
                    given.map_or(f64::NAN, |given| crate::give::Give::give(given, slots))
                });
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
                        check: crate::table::check(<$type as crate::take::Take>::WANTED.check),
                    }),+],
                    output: crate::table::Input {
                        name: stringify!($result),
                        kinds: <$given as crate::give::Give>::KINDS,
                        check: None,
                    },
                }
            }
            crate::table::for_substances!(describe $($substance)?)
        }),+),+];
    };
}

/// One way, or one for liquid and one for dry product.
#[cfg(feature = "text")]
macro_rules! ways {
    ($run:ident, [$($type:ty),+] -> $given:ty) => {
        &[crate::table::Way {
            inputs: &[$(<$type as crate::take::Take>::WANTED),+],
            given: <$given as crate::give::Give>::GIVEN,
            run: $run,
        }]
    };
    ($run:ident for $substance:ident, [$($type:ty),+] -> $given:ty) => {{
        const fn way<$substance: crate::take::Product>() -> crate::table::Way {
            crate::table::Way {
                inputs: const { &[$(<$type as crate::take::Take>::WANTED),+] },
                given: <$given as crate::give::Give>::GIVEN,
                run: $run::<$substance>,
            }
        }
        &[way::<hilum::rate::Liquid>(), way::<hilum::rate::Dry>()]
    }};
}

#[cfg(feature = "text")]
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
#[cfg(feature = "text")]
use called;
#[cfg(feature = "describe")]
use for_substances;
#[cfg(feature = "text")]
use ways;
