//! Every public function of the core, kept in the image.
//!
//! A pointer to a function keeps all of it, for whatever arguments; a call would let the compiler drop
//! what the values of that call do not reach. One function in these files for each module of the core,
//! one line for each function of it, written `Type::function` or `module::function`: `cargo xtask
//! no-panic` compares these lines with the public functions and names what is missing. The doses are of
//! one type whatever the substance, so one substance is enough where the code is the same.
//!
//! Left out, because core's own reading and writing of a number holds bounds checks: `Display` of the
//! errors, `text::read`, `text::read_temperature`, `Compound::read`, `Written::read`, and what they call,
//! `Compound::read_with` and `Written::read_with`.

mod applied;
mod batch;
mod label;
mod living;
mod many;
mod shed;

use core::fmt::Formatter;
use core::hint::black_box;

use hilum::error::Range;
use hilum::quantity::Temperature;
use hilum::unit::Powers;
use hilum::{Argument, Error, error, math, unit};

pub(crate) fn all() {
    quantities();
    units();
    errors();
    mathematics();
    label::all();
    shed::all();
    living::all();
    many::all();
    applied::all();
    batch::all();
    #[cfg(feature = "panics")]
    one(a_panic);
}

/// Any number of values, for functions that take an iterator.
type Each<T> = core::array::IntoIter<T, 8>;

fn one<A, R>(function: fn(A) -> R) {
    black_box(function);
}

fn two<A, B, R>(function: fn(A, B) -> R) {
    black_box(function);
}

fn three<A, B, C, R>(function: fn(A, B, C) -> R) {
    black_box(function);
}

fn four<A, B, C, D, R>(function: fn(A, B, C, D) -> R) {
    black_box(function);
}

fn quantities() {
    one(Temperature::checked);
    one(Temperature::from_celsius);
    one(Temperature::from_fahrenheit);
    one(Temperature::celsius);
    one(Temperature::fahrenheit);
    two(<Temperature as core::ops::Sub>::sub);
    two(<Temperature as core::ops::Add<_>>::add);
}

fn units() {
    one(|()| unit::all().map(|unit| unit.factor).sum::<f64>());
    one(unit::by_number);
    one(Powers::name);
    two(Powers::over);
}

fn errors() {
    two(error::positive);
    two(error::not_negative);
    two(error::share);
    two(Range::holds);
    three(Range::look);
    three::<&Error, &mut Formatter<'_>, _, _>(Error::tell);
    one(|error: Error| error == Error::Needed { argument: Argument::Density });
}

fn mathematics() {
    one(math::round);
    one(math::to_i32);
    one(math::to_i64);
    one(math::to_u64);
    one(math::exp10);
    one(math::log10);
    two(math::pow);
    one(math::sqrt);
    one(math::floor);
    one(math::ceil);
}

#[cfg(feature = "panics")]
fn a_panic(at: usize) -> u8 {
    #[expect(clippy::indexing_slicing, reason = "the panic that must be seen")]
    [1, 2, 3][at]
}
