//! Calculations of one to three numbers, with or without a structure.
//!
//! There are more than a hundred of them, and all do the same around their formula: NULL, a look at each number, the
//! status, the result. So a function only says which numbers it takes and what is done with them, and one piece of
//! code does the rest. Where flash is scarce that piece is there once ([`calculate`]) and takes from a function what
//! to look at and where its formula is; elsewhere it melts into each function, and nothing of that is left.
#![allow(clippy::inline_always, reason = "a table is only free where all of it is seen in place")]

use core::marker::PhantomData;
use core::mem::MaybeUninit;
use core::ptr::NonNull;

use hilum::error::{OneNumber, Range};

use crate::argument::{self, Name};
use crate::call::{Answer, Out};
use crate::status::Status;

/// A number of C, by value.
///
/// # Safety
/// [`Number::Core`] is one `f64` in memory, and may be any that was looked at as [`Number::ASKED`] says.
pub(crate) unsafe trait Number: Copy {
    /// What the core takes: a domain type, or a quantity that the calculation itself looks at.
    type Core: Copy;
    /// What is looked at before.
    const ASKED: Asked;
    /// The number itself.
    fn number(self) -> f64;
}

/// What a number is called in a status, and its range; 0 when the calculation itself looks at it.
#[derive(Clone, Copy)]
pub(crate) struct Asked(u32);

/// Bits of the name.
const NAME: u32 = 7;
/// Bits of name and range.
const EACH: u32 = 9;
/// Whether there must be a structure.
const STRUCTURE: u32 = 1 << 31;

impl Asked {
    pub(crate) const NOTHING: Self = Self(0);

    #[expect(
        clippy::as_conversions,
        clippy::cast_sign_loss,
        reason = "a number of the list, and traits are not const"
    )]
    const fn new(argument: hilum::Argument, range: Range) -> Self {
        let name = argument::of_value(argument) as u32;
        assert!(name > 0 && name < 1 << NAME, "the argument has a number");
        let range = match range {
            Range::Positive => 1,
            Range::NotNegative => 2,
            Range::Share => 3,
        };
        Self(range << NAME | name)
    }

    pub(crate) const fn of<T: OneNumber>() -> Self {
        Self::new(T::ARGUMENT, T::RANGE)
    }

    const fn range(self) -> Option<Range> {
        match self.0 >> NAME & 3 {
            1 => Some(Range::Positive),
            2 => Some(Range::NotNegative),
            3 => Some(Range::Share),
            _ => None,
        }
    }

    const fn of_structure(self) -> Self {
        Self(self.0 | STRUCTURE)
    }

    const fn and(self, next: Self) -> Self {
        Self(self.0 | next.0 << EACH)
    }

    #[cfg_attr(target_os = "none", inline(never))]
    #[cfg_attr(not(target_os = "none"), inline(always))]
    fn look(self, number: f64) -> Answer<f64> {
        let Some(range) = self.range() else { return Ok(number) };
        // The name of the error does not count: the status takes it from the table.
        let name = i32::try_from(self.0 & ((1 << NAME) - 1)).unwrap_or_default();
        range.look(hilum::Argument::Share, number).map_err(|error| Status::parts(error).0.of(name))
    }
}

type Numbers = [MaybeUninit<f64>; 3];
const NONE: MaybeUninit<f64> = MaybeUninit::uninit();

/// Calculates with numbers that were looked at, writes the result, and tells the status.
type Formula = unsafe fn(&Numbers, NonNull<u8>, From) -> i32;

/// A structure that a calculation is of, besides its numbers, or nothing.
type From = MaybeUninit<Option<NonNull<u8>>>;
const NOTHING: From = MaybeUninit::uninit();

/// What all calculations of numbers do.
///
/// # Safety
/// As many numbers are there as are asked for, `out` has room for what the formula writes, and `from` is what it reads.
#[cfg_attr(target_os = "none", inline(never))]
#[cfg_attr(not(target_os = "none"), inline(always))]
unsafe fn calculate(
    a: MaybeUninit<f64>,
    b: MaybeUninit<f64>,
    c: MaybeUninit<f64>,
    out: Option<NonNull<u8>>,
    asked: Asked,
    formula: Formula,
    from: From,
) -> i32 {
    let Some(out) = out else { return Status::NULL.number() };
    // SAFETY: there is one when there should be, by the caller.
    if asked.0 & STRUCTURE != 0 && unsafe { from.assume_init() }.is_none() {
        return Status::NULL.number();
    }
    let mut numbers = [a, b, c];
    let mut asked = asked;
    for number in &mut numbers {
        if asked.0 & ((1 << EACH) - 1) != 0 {
            // SAFETY: what is asked about is there, by the caller.
            match asked.look(unsafe { number.assume_init() }) {
                Ok(looked) => *number = MaybeUninit::new(looked),
                Err(status) => return status.number(),
            }
        }
        asked.0 >>= EACH;
    }
    // SAFETY: all were looked at; room is there, by the caller.
    unsafe { formula(&numbers, out, from) }
}

/// What the core takes for a number.
///
/// # Safety
/// It is there, and was looked at as [`Number::ASKED`] says.
#[inline(always)]
unsafe fn trusted<N: Number>(number: MaybeUninit<f64>) -> N::Core {
    const { assert!(size_of::<N::Core>() == size_of::<f64>(), "it is one number in memory") };
    if let Some(range) = const { N::ASKED.range() } {
        // SAFETY: it was looked at, by the caller.
        unsafe { core::hint::assert_unchecked(range.holds(number.assume_init())) };
    }
    // SAFETY: one number in memory, by `Number`, and one that may be, by the caller.
    unsafe { core::mem::transmute_copy(&number) }
}

/// A number as the core takes it, looked at.
pub(crate) fn looked<N: Number>(number: N) -> Answer<N::Core> {
    let number = N::ASKED.look(number.number())?;
    // SAFETY: it is there, and was looked at.
    Ok(unsafe { trusted::<N>(MaybeUninit::new(number)) })
}

/// A quantity that has no type of its own, by the name that it has in a calculation.
pub(crate) struct Named<A, N>(N, PhantomData<A>);

impl<A, N: Copy> Clone for Named<A, N> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<A, N: Copy> Copy for Named<A, N> {}

/// A quantity that must be more than 0, by its name: the calculation itself need not look any more.
pub(crate) const fn positive<A: Name, N: Number>(number: N) -> Named<A, N> {
    Named(number, PhantomData)
}

// SAFETY: as of the quantity.
unsafe impl<A: Name, N: Number> Number for Named<A, N> {
    type Core = N::Core;
    const ASKED: Asked = Asked::new(A::ARGUMENT, Range::Positive);
    fn number(self) -> f64 {
        self.0.number()
    }
}

/// A formula that is code alone: it needs no place to be kept.
///
/// # Safety
/// There is one: the caller was given it.
unsafe fn stateless<F: Copy>() -> F {
    const { assert!(size_of::<F>() == 0, "the formula holds nothing") };
    // SAFETY: it has no bytes to read.
    unsafe { NonNull::<F>::dangling().read() }
}

/// As [`calculate`], of a structure: the pointers come as the functions of C have them.
///
/// # Safety
/// As for [`calculate`].
#[cfg_attr(target_os = "none", inline(never))]
#[cfg_attr(not(target_os = "none"), inline(always))]
unsafe fn calculate_of(
    a: MaybeUninit<f64>,
    b: MaybeUninit<f64>,
    from: Option<NonNull<u8>>,
    out: Option<NonNull<u8>>,
    asked: Asked,
    formula: Formula,
) -> i32 {
    // SAFETY: by the caller.
    unsafe { calculate(a, b, NONE, out, asked.of_structure(), formula, MaybeUninit::new(from)) }
}

/// The structure that a calculation is of.
///
/// # Safety
/// There is one.
unsafe fn structure<'a, S>(from: From) -> &'a S {
    // SAFETY: by the caller; the conventions say that nothing writes it meanwhile.
    unsafe { from.assume_init().unwrap_unchecked().cast().as_ref() }
}

/// Writes a result, and tells the status.
///
/// # Safety
/// `out` has room for it.
#[inline(always)]
unsafe fn write<O, E: Refusal>(out: NonNull<u8>, result: Result<impl Into<O>, E>) -> i32 {
    match result {
        Ok(result) => {
            // SAFETY: by the caller.
            unsafe { out.cast::<O>().write(result.into()) };
            Status::OK.number()
        }
        Err(error) => error.number(),
    }
}

/// Why there is no result.
trait Refusal {
    fn number(self) -> i32;
}

impl Refusal for hilum::Error {
    #[cold]
    #[inline(never)]
    fn number(self) -> i32 {
        Status::from(self).number()
    }
}

impl Refusal for Status {
    fn number(self) -> i32 {
        Self::number(self)
    }
}

/// Where a result goes, whatever it is.
fn place<O>(out: Out<'_, O>) -> Option<NonNull<u8>> {
    out.map(|out| NonNull::from(out).cast())
}

/// A calculation of one number.
pub(crate) fn of_one<A: Number, O, R: Into<O>, F>(out: Out<'_, O>, a: A, formula: F) -> i32
where
    F: Fn(A::Core) -> Result<R, hilum::Error> + Copy,
{
    let _ = formula;
    let a = MaybeUninit::new(a.number());
    let run: Formula = |&[a, ..], out, _| {
        // SAFETY: looked at, and `out` is for an `O`: see below.
        unsafe { write::<O, _>(out, stateless::<F>()(trusted::<A>(a))) }
    };
    // SAFETY: one number is asked for, and `out` is for what is written.
    unsafe { calculate(a, NONE, NONE, place(out), A::ASKED, run, NOTHING) }
}

/// A calculation of two numbers.
pub(crate) fn of_two<A: Number, B: Number, O, R: Into<O>, F>(out: Out<'_, O>, a: A, b: B, formula: F) -> i32
where
    F: Fn(A::Core, B::Core) -> Result<R, hilum::Error> + Copy,
{
    let _ = formula;
    let (a, b) = (MaybeUninit::new(a.number()), MaybeUninit::new(b.number()));
    let run: Formula = |&[a, b, _], out, _| {
        // SAFETY: looked at, and `out` is for an `O`: see below.
        unsafe { write::<O, _>(out, stateless::<F>()(trusted::<A>(a), trusted::<B>(b))) }
    };
    // SAFETY: two numbers are asked for, and `out` is for what is written.
    unsafe { calculate(a, b, NONE, place(out), const { A::ASKED.and(B::ASKED) }, run, NOTHING) }
}

/// A calculation of three numbers.
pub(crate) fn of_three<A: Number, B: Number, C: Number, O, R: Into<O>, F>(
    out: Out<'_, O>,
    a: A,
    b: B,
    c: C,
    formula: F,
) -> i32
where
    F: Fn(A::Core, B::Core, C::Core) -> Result<R, hilum::Error> + Copy,
{
    let _ = formula;
    let (a, b, c) =
        (MaybeUninit::new(a.number()), MaybeUninit::new(b.number()), MaybeUninit::new(c.number()));
    let run: Formula = |&[a, b, c], out, _| {
        // SAFETY: looked at, and `out` is for an `O`: see below.
        unsafe { write::<O, _>(out, stateless::<F>()(trusted::<A>(a), trusted::<B>(b), trusted::<C>(c))) }
    };
    // SAFETY: three numbers are asked for, and `out` is for what is written.
    unsafe { calculate(a, b, c, place(out), const { A::ASKED.and(B::ASKED.and(C::ASKED)) }, run, NOTHING) }
}

/// A calculation of a structure and a number.
pub(crate) fn of_made_one<S, A: Number, O, R: Into<O>, F>(
    out: Out<'_, O>,
    from: Option<&S>,
    a: A,
    formula: F,
) -> i32
where
    F: Fn(&S, A::Core) -> Answer<R> + Copy,
{
    let _ = formula;
    let a = MaybeUninit::new(a.number());
    let run: Formula = |&[a, ..], out, from| {
        // SAFETY: looked at, `from` is an `S` and `out` is for an `O`: see below.
        unsafe { write::<O, _>(out, stateless::<F>()(structure(from), trusted::<A>(a))) }
    };
    let from = from.map(|from| NonNull::from(from).cast());
    // SAFETY: a structure and one number are asked for, and `out` is for what is written.
    unsafe { calculate_of(a, NONE, from, place(out), A::ASKED, run) }
}

/// A calculation of a structure and two numbers.
pub(crate) fn of_made_two<S, A: Number, B: Number, O, R: Into<O>, F>(
    out: Out<'_, O>,
    from: Option<&S>,
    a: A,
    b: B,
    formula: F,
) -> i32
where
    F: Fn(&S, A::Core, B::Core) -> Answer<R> + Copy,
{
    let _ = formula;
    let (a, b) = (MaybeUninit::new(a.number()), MaybeUninit::new(b.number()));
    let run: Formula = |&[a, b, _], out, from| {
        // SAFETY: looked at, `from` is an `S` and `out` is for an `O`: see below.
        unsafe { write::<O, _>(out, stateless::<F>()(structure(from), trusted::<A>(a), trusted::<B>(b))) }
    };
    let from = from.map(|from| NonNull::from(from).cast());
    // SAFETY: a structure and two numbers are asked for, and `out` is for what is written.
    unsafe { calculate_of(a, b, from, place(out), const { A::ASKED.and(B::ASKED) }, run) }
}

/// A structure of one number, as the core takes it.
macro_rules! number {
    ($name:ty: $field:ident, $core:ty) => {
        impl $name {
            /// As the core takes it.
            #[allow(dead_code, reason = "some are only taken by calculations of numbers")]
            pub(crate) fn core(self) -> $crate::call::Answer<$core> {
                $crate::number::looked(self)
            }
        }
        // SAFETY: `OneNumber`: one number in memory, which may be whatever was looked at.
        unsafe impl $crate::number::Number for $name {
            type Core = $core;
            const ASKED: $crate::number::Asked = $crate::number::Asked::of::<$core>();
            fn number(self) -> f64 {
                self.$field
            }
        }
    };
}
pub(crate) use number;

// SAFETY: itself.
unsafe impl Number for f64 {
    type Core = Self;
    const ASKED: Asked = Asked::NOTHING;
    fn number(self) -> f64 {
        self
    }
}
