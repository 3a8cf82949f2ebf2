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

use crate::take::Check;
#[cfg(feature = "describe")]
use crate::take::Kind;

/// The checks that an input alone is refused by, as the script numbers them.
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
    /// What that number measures; nothing for an output, whose units say it.
    pub of: Option<i32>,
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
        $($(crate::table::substances!(
            [$($substance)?] concat!(stringify!($topic), ".", stringify!($name) $(, " ", stringify!($input))+),
            ($($input: $type),+) -> $given = |$slots| $body
        );)+)+

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
                        of: Some(<$type as crate::take::Take>::WANTED.of.0),
                    }),+],
                    output: crate::table::Input {
                        name: stringify!($result),
                        kinds: <$given as crate::give::Give>::KINDS,
                        check: None,
                        of: None,
                    },
                }
            }
            crate::table::for_substances!(describe $($substance)?)
        }),+),+];
    };
}

/// A calculation, or one for liquid and one for dry product.
macro_rules! substances {
    ([] $($calculation:tt)+) => {
        crate::table::exported!("0 ", [] $($calculation)+);
    };
    ([$substance:ident] $($calculation:tt)+) => {
        crate::table::exported!("0 ", [$substance = hilum::rate::Liquid] $($calculation)+);
        // Numbers do not say whether they are of liquid or of dry product, and the bits are the same.
        #[cfg(feature = "text")]
        crate::table::exported!("1 ", [$substance = hilum::rate::Dry] $($calculation)+);
    };
}

/// What the build takes the script and the wasm from: a calculation that tells why it is refused, one that does not, which may
/// be arithmetic alone, and a loop over columns.
macro_rules! exported {
    ($which:literal, [$($substance:ident = $is:ty)?] $id:expr, ($($input:ident: $type:ty),+) -> $given:ty = |$slots:ident| $body:expr) => {
        #[cfg_attr(not(target_arch = "wasm32"), allow(dead_code, reason = "only a wasm's exports may have such names"))]
        const _: () = {
            $(
                #[allow(unused_imports, reason = "some call what a product can do, and some only its doses")]
                use crate::take::Product as _;
                type $substance = $is;
            )?

            #[inline(always)]
            fn called($slots: &crate::slots::Slots) -> Option<f64> {
                let result = || -> Result<$given, crate::refusal::Refused> {
                    let mut at = 0;
                    $(let $input: $type = crate::take::next($slots, &mut at)?;)+
                    Ok($body)
                };
                result().ok().map(|given| crate::give::Give::give(given, $slots))
            }

            #[cfg(all(feature = "text", not(feature = "formulas")))]
            #[cfg_attr(target_arch = "wasm32", unsafe(export_name = concat!("each ", $which, $id)))]
            extern "C" fn each(rows: usize) {
                crate::text::rows(rows, || called(&crate::slots::Slots {}).unwrap_or(f64::NAN));
            }

            #[cfg(feature = "formulas")]
            #[cfg_attr(target_arch = "wasm32", unsafe(export_name = concat!("quiet ", $which, $id)))]
            extern "C" fn quiet($($input: f64),+) -> f64 {
                called(&crate::slots::Slots::of(crate::slots::Telling::Nothing, [$($input),+])).unwrap_or(f64::NAN)
            }

            #[cfg(not(feature = "text"))]
            #[inline(always)]
            #[allow(clippy::too_many_arguments, reason = "as many as the calculation has")]
            fn result(telling: crate::slots::Telling, $($input: f64),+) -> Option<f64> {
                let looked = [$(crate::slots::looked::<$type>($input)?),+];
                called(&crate::slots::Slots::of(telling, looked))
            }

            #[cfg(not(feature = "text"))]
            #[unsafe(export_name = concat!("once ", $which, $id))]
            extern "C" fn once($($input: f64),+) -> f64 {
                result(crate::slots::Telling::Why, $($input),+).unwrap_or(f64::NAN)
            }

            #[cfg(not(feature = "text"))]
            #[unsafe(export_name = concat!("quiet ", $which, $id))]
            extern "C" fn quiet($($input: f64),+) -> f64 {
                result(crate::slots::Telling::Nothing, $($input),+).unwrap_or(f64::NAN)
            }

            #[cfg(not(feature = "text"))]
            #[unsafe(export_name = concat!("each ", $which, $id))]
            extern "C" fn each(pairs: usize) -> u32 {
                crate::numbers::rows(pairs, |[$($input),+]| {
                    result(crate::slots::Telling::Nothing, $($input),+)
                })
            }
        };
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
use exported;
#[cfg(feature = "describe")]
use for_substances;
use substances;
