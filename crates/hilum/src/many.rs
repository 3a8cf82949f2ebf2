//! Many at once: calculations over whole lists.
//!
//! A list is looked at first, all of it; then come the results, one by one and without a branch, so that the
//! loop that takes them runs as fast as one without checks. A list with a bad element gives no result at all:
//! it is refused with the first of them.
//!
//! ```
//! use hilum::many;
//! use hilum::quantity::{Mass, Volume, mass::kilogram, volume::{liter, milliliter}};
//! use hilum::rate::{PerMass, RatePerMass};
//! # fn main() -> Result<(), hilum::Error> {
//! // Worked by hand: 325 mL/100 kg on 20 t and on 500 kg are 65 L and 1.625 L.
//! let rate: RatePerMass = PerMass::new(Volume::new::<milliliter>(325.0) / Mass::new::<kilogram>(100.0))?;
//! let orders = [20_000.0, 500.0].map(Mass::new::<kilogram>);
//! let mut liters = [0.0; 2];
//! for (into, needed) in liters.iter_mut().zip(many::needed(rate, &orders).map_err(|bad| bad.why)?) {
//!     *into = needed.get::<liter>();
//! }
//! assert!((liters[0] - 65.0).abs() < 1e-12 && (liters[1] - 1.625).abs() < 1e-12);
//! let orders = [20_000.0, 0.0].map(Mass::new::<kilogram>);
//! assert_eq!(many::needed(rate, &orders).map_err(|bad| bad.index).err(), Some(1));
//! # Ok(()) }
//! ```

use crate::Error;
use crate::error::{Argument, positive};
use crate::quantity::{Mass, Seeds, SeedsPerMass, VolumePerSeed, base};
use crate::rate::{CellCount, Liquid, PerMass, PerSeed, Substance};
use crate::seed::{SeedSize, Share};
use crate::viability::TitrePerVolume;

/// The first element of a list that cannot be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bad<E = Error> {
    /// Its place, from 0.
    pub index: usize,
    /// Why.
    pub why: E,
}

/// The numbers of a list are looked at by so many: few enough to stay near the processor.
const CHUNK: usize = 512;
/// The bits of 2^-63. Those of the doubles from there up to 2^65 lie less than 2^59 above them: one subtraction
/// and one OR per number tell of a whole chunk that all of them do.
const USUAL: u64 = 0x3c00_0000_0000_0000;
const USUAL_BITS: u32 = 59;
/// The largest of them.
const MOST_USUAL: u64 = USUAL + ((1 << USUAL_BITS) - 1);

fn are_usual(numbers: impl Iterator<Item = f64>) -> bool {
    let seen = numbers.fold(0, |seen, number| seen | number.to_bits().wrapping_sub(USUAL));
    seen >> USUAL_BITS == 0
}

/// Whether a look finds nothing wrong with the numbers that are usual: with the least and the most of them, and so with
/// those between.
fn passes_usual<E>(look: impl Fn(f64) -> Result<(), E>) -> bool {
    look(f64::from_bits(USUAL)).is_ok() && look(f64::from_bits(MOST_USUAL)).is_ok()
}

/// What a calculation gives for each element of a list: `number` is what it is about, `look` says why one cannot be
/// used, `calculate` does not look.
///
/// Whatever lies between two numbers above 0 that pass `look` must pass too. So it is for every check of this crate,
/// also behind a conversion by a factor.
///
/// # Errors
/// The first element that does not pass.
pub fn each<T: Copy, R, E>(
    list: &[T],
    number: impl Fn(T) -> f64,
    look: impl Fn(f64) -> Result<(), E>,
    calculate: impl Fn(f64) -> R,
) -> Result<impl ExactSizeIterator<Item = R>, Bad<E>> {
    let usual_pass = passes_usual(&look);
    for (chunk, items) in list.chunks(CHUNK).enumerate() {
        if usual_pass && are_usual(items.iter().map(|item| number(*item))) {
            continue;
        }
        for (place, item) in items.iter().enumerate() {
            look(number(*item)).map_err(|why| Bad { index: chunk * CHUNK + place, why })?;
        }
    }
    Ok(list.iter().map(move |item| calculate(number(*item))))
}

/// As [`each`] for numbers that must be more than 0.
fn each_positive<T: Copy, R>(
    argument: Argument,
    list: &[T],
    number: impl Fn(T) -> f64,
    calculate: impl Fn(f64) -> R,
) -> Result<impl ExactSizeIterator<Item = R>, Bad> {
    each(list, number, move |number| positive(argument, number).map(|_| ()), calculate)
}

/// As [`each_positive`] for two lists; the longer one's rest is not looked at.
fn each_pair<A: Copy, B: Copy, R>(
    arguments: (Argument, Argument),
    (first, second): (&[A], &[B]),
    number: (impl Fn(A) -> f64, impl Fn(B) -> f64),
    calculate: impl Fn(f64, f64) -> R,
) -> Result<impl ExactSizeIterator<Item = R>, Bad> {
    let pairs = first.chunks(CHUNK).zip(second.chunks(CHUNK));
    for (chunk, (a, b)) in pairs.enumerate() {
        if are_usual(a.iter().map(|item| number.0(*item))) && are_usual(b.iter().map(|item| number.1(*item)))
        {
            continue;
        }
        for (place, (a, b)) in a.iter().zip(b).enumerate() {
            positive(arguments.0, number.0(*a))
                .and_then(|_| positive(arguments.1, number.1(*b)))
                .map_err(|why| Bad { index: chunk * CHUNK + place, why })?;
        }
    }
    Ok(first.iter().zip(second).map(move |(a, b)| calculate(number.0(*a), number.1(*b))))
}

fn kilograms<T: Into<Mass>>(seed: T) -> f64 {
    seed.into().value
}
fn count<T: Into<Seeds>>(seeds: T) -> f64 {
    seeds.into().value
}
fn size<T: Into<SeedsPerMass>>(size: T) -> f64 {
    size.into().value
}

/// What each mass of seed needs: rate × mass, as [`PerMass::needed`].
///
/// # Errors
/// The first mass that is not finite or not more than 0.
pub fn needed<S: Substance, T: Copy + Into<Mass>>(
    rate: PerMass<S>,
    seed: &[T],
) -> Result<impl ExactSizeIterator<Item = S::Amount>, Bad> {
    each_positive(Argument::SeedMass, seed, kilograms, move |kg| S::amount(rate.0 * kg))
}

/// What each number of seeds needs: dose × seeds, as [`PerSeed::needed`].
///
/// # Errors
/// The first number that is not finite or not more than 0.
pub fn needed_by_seeds<S: Substance, T: Copy + Into<Seeds>>(
    dose: PerSeed<S>,
    seeds: &[T],
) -> Result<impl ExactSizeIterator<Item = S::Amount>, Bad> {
    each_positive(Argument::Seeds, seeds, count, move |n| S::amount(dose.0 * n))
}

/// One rate on one seed of each size: rate / size, as [`PerMass::per_seed`].
///
/// # Errors
/// The first size that is not finite or not more than 0.
pub fn per_seed<S: Copy, T: Copy + Into<SeedsPerMass>>(
    rate: PerMass<S>,
    sizes: &[T],
) -> Result<impl ExactSizeIterator<Item = PerSeed<S>>, Bad> {
    each_positive(Argument::SeedSize, sizes, size, move |size| rate.per_seed(SeedSize(size)))
}

/// One dose on a mass of seed of each size: dose × size, as [`PerSeed::per_mass`].
///
/// # Errors
/// The first size that is not finite or not more than 0.
pub fn per_mass<S: Copy, T: Copy + Into<SeedsPerMass>>(
    dose: PerSeed<S>,
    sizes: &[T],
) -> Result<impl ExactSizeIterator<Item = PerMass<S>>, Bad> {
    each_positive(Argument::SeedSize, sizes, size, move |size| dose.per_mass(SeedSize(size)))
}

/// How many seeds each mass holds, each of its own size: mass × size, as [`SeedSize::count_in`].
///
/// # Errors
/// The first size or mass that is not finite or not more than 0.
pub fn count_in<A: Copy + Into<SeedsPerMass>, B: Copy + Into<Mass>>(
    sizes: &[A],
    seed: &[B],
) -> Result<impl ExactSizeIterator<Item = Seeds>, Bad> {
    let arguments = (Argument::SeedSize, Argument::SeedMass);
    each_pair(arguments, (sizes, seed), (size, kilograms), |size, kg| base!(Seeds, kg * size))
}

/// What each number of seeds weighs, each of its own size: seeds / size, as [`SeedSize::mass_of`].
///
/// # Errors
/// The first size or number that is not finite or not more than 0.
pub fn mass_of<A: Copy + Into<SeedsPerMass>, B: Copy + Into<Seeds>>(
    sizes: &[A],
    seeds: &[B],
) -> Result<impl ExactSizeIterator<Item = Mass>, Bad> {
    let arguments = (Argument::SeedSize, Argument::Seeds);
    each_pair(arguments, (sizes, seeds), (size, count), |size, n| base!(Mass, n / size))
}

/// Cells on each seed at each dose: titre × dose × recovery, as [`TitrePerVolume::cells`].
///
/// # Errors
/// The first dose that is not finite or not more than 0.
pub fn cells<T: Copy + Into<VolumePerSeed>>(
    titre: TitrePerVolume,
    recovery: Share,
    doses: &[T],
) -> Result<impl ExactSizeIterator<Item = PerSeed<CellCount>>, Bad> {
    let dose = |dose: T| dose.into().value;
    each_positive(Argument::RatePerSeed, doses, dose, move |dose| {
        titre.cells(PerSeed::<Liquid>::of(dose), recovery)
    })
}

#[cfg(test)]
mod tests;
