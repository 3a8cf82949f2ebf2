//! What do I open?
//!
//! A product comes in **sets** (its parts are made for each other) that are opened whole. What orders need
//! of a set is summed first and rounded up once; where there are several sizes of pack, [`choose`] finds
//! the best combination.

mod search;

use core::num::NonZeroU32;
#[cfg(not(target_os = "none"))]
use core::num::NonZeroU64;

use crate::error::{Argument, Error, given, not_negative, positive};
use crate::quantity::{Mass, base};
use crate::rate::{PerMass, Substance};
use crate::{math, slack};

/// [`choose`] looks at this many sizes of pack at most.
pub const MOST_SIZES: usize = 8;

/// A stated coverage and the one that volume and rate give may differ by this share of the latter.
pub const COVERAGE_TOLERANCE: f64 = 0.02;

/// Short of this share of the need, without one of the opened sets, the order is almost covered by the rest.
pub const ALMOST_COVERED: f64 = 0.01;

checked! {
    /// The seed that one set covers.
    Coverage(Mass), positive, Coverage
}

impl Coverage {
    /// What the usable content of a set covers at a rate: content / rate.
    ///
    /// ```
    /// use hilum::pack::Coverage;
    /// use hilum::quantity::{Mass, Volume, mass::{hundredweight, pound}, volume::{fluid_ounce, gallon}};
    /// use hilum::rate::{PerMass, RatePerMass};
    /// # fn main() -> Result<(), hilum::Error> {
    /// // Worked by hand: 2.5 gal of 128 fl oz at 3.2 fl oz/cwt cover 320 / 3.2 = 100 cwt.
    /// let rate: RatePerMass = PerMass::new(Volume::new::<fluid_ounce>(3.2) / Mass::new::<hundredweight>(1.0))?;
    /// let set = Coverage::at(Volume::new::<gallon>(2.5), rate)?;
    /// assert!((set.get().get::<pound>() - 10_000.0).abs() < 1e-8);
    /// # Ok(()) }
    /// ```
    ///
    /// # Errors
    /// When the content is not finite or not more than 0.
    pub fn at<S: Substance>(usable: S::Amount, rate: PerMass<S>) -> Result<Self, Error> {
        rate.treats(usable).map(|seed| Self(seed.value))
    }

    /// By how much this, the stated coverage, differs from the calculated one: stated / calculated − 1.
    #[must_use]
    pub fn difference(self, calculated: Self) -> f64 {
        self.0 / calculated.0 - 1.0
    }

    /// Whether one set covers more than a mass of seed, by more than 1e-9 of it.
    #[must_use]
    pub fn exceeds(self, seed: Mass) -> bool {
        slack::above(self.0, seed.value)
    }

    /// Whether stated and calculated coverage differ by more than [`COVERAGE_TOLERANCE`].
    #[must_use]
    pub fn disagrees(self, calculated: Self) -> bool {
        self.difference(calculated).abs() > COVERAGE_TOLERANCE + slack::SLACK
    }
}

/// What orders need, in sets of one size, before it is rounded up.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct SetsNeeded(f64);

impl SetsNeeded {
    /// The sum over orders of seed / what a set covers of that order's seed.
    ///
    /// A set that covers a number of seeds covers less mass of small seed than of large.
    ///
    /// ```
    /// use hilum::pack::{Coverage, SetsNeeded};
    /// use hilum::quantity::{Mass, mass::pound};
    /// # fn main() -> Result<(), hilum::Error> {
    /// // Worked by hand: 0.4 + 0.35 + 0.25 sets are one set, not three.
    /// let set = Coverage::new(Mass::new::<pound>(10_000.0))?;
    /// let orders = [4_000.0, 3_500.0, 2_500.0].map(|lb| (Mass::new::<pound>(lb), set));
    /// assert_eq!(SetsNeeded::sum(orders)?.whole()?, 1);
    /// # Ok(()) }
    /// ```
    ///
    /// # Errors
    /// When a mass of seed is not finite or not more than 0, or there is none.
    pub fn sum(orders: impl IntoIterator<Item = (Mass, Coverage)>) -> Result<Self, Error> {
        let mut sets = 0.0;
        for (seed, set) in orders {
            sets += positive(Argument::SeedMass, seed.value)? / set.0;
        }
        positive(Argument::Sets, sets).map(Self)
    }

    /// As a number, before it is rounded up.
    #[must_use]
    pub const fn number(self) -> f64 {
        self.0
    }

    /// As whole sets: one ceiling, with a slack of 1e-9 of the number.
    ///
    /// # Errors
    /// When it is more than 2^53.
    #[inline]
    pub fn whole(self) -> Result<u64, Error> {
        count(slack::ceil(self.0))
    }

    /// The seed that the same number of sets covers where one covers so much: sets × coverage.
    ///
    /// Orders of different seed size have one need in sets; this is that need in the seed of one of them,
    /// for [`choose`].
    #[must_use]
    pub fn seed(self, set: Coverage) -> Mass {
        base!(Mass, self.0 * set.0)
    }
}

/// A whole number of sets out of a double.
fn count(sets: f64) -> Result<u64, Error> {
    math::to_u64(sets).ok_or(Error::TooManySets { value: sets })
}

/// What one set costs, in the currency of the job.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Price(f64);

impl Price {
    /// Looks at the value, once.
    ///
    /// # Errors
    /// When it is not finite or negative.
    pub fn new(price: f64) -> Result<Self, Error> {
        not_negative(Argument::Price, price).map(Self)
    }

    /// The plain number.
    #[must_use]
    pub const fn number(self) -> f64 {
        self.0
    }
}

/// One size of pack that the product is sold in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PackSize {
    /// The seed that one set covers.
    pub covers: Coverage,
    /// Sets on hand; `None` when there is no limit.
    pub stock: Option<u32>,
    /// What a set costs; `None` counts as 0.
    pub price: Option<Price>,
}

/// What makes one choice of packs better than another.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Objective {
    /// Least left over in opened sets.
    #[default]
    LeastLeftover,
    /// Least cost of the opened sets.
    LeastCost,
    /// Fewest sets to open.
    FewestSets,
}

/// Whether a choice is known to be the best.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Proof {
    /// No other choice is better.
    Proven,
    /// The search stopped at its bound of work; the choice covers the need, but a better one may exist.
    BoundReached,
}

/// Whether the stock covers the need.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Supply {
    /// It does.
    Enough,
    /// It does not: all that is on hand is opened.
    Short,
}

/// What to open.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Choice {
    sets: [u64; MOST_SIZES],
    sizes: usize,
    /// The seed that the opened sets cover.
    pub covered: Mass,
    /// The seed that they cover beyond the need; never negative.
    pub leftover: Mass,
    /// What they cost.
    pub cost: f64,
    /// Whether it is known to be the best.
    pub proof: Proof,
    /// Whether there is enough on hand.
    pub supply: Supply,
}

impl Choice {
    /// Sets to open of each size, in the order in which the sizes were given.
    pub fn sets(&self) -> impl Iterator<Item = u64> + '_ {
        self.sets.iter().copied().take(self.sizes)
    }
}

/// Which packs to open, opened whole, for a mass of seed: the exact best under an objective.
///
/// Chosen are whole numbers nᵢ, at most the stock, with Σ nᵢ × coverageᵢ ≥ need × (1 − 1e-9). The objective
/// decides; ties go by least leftover (Σ nᵢ × coverageᵢ − need), then least cost (Σ nᵢ × priceᵢ), then
/// fewest sets, then more sets of the sizes given earlier. Differences below 1e-9 of the need or the cost
/// are ties.
///
/// Where the stock does not cover the need, all of it is chosen, and [`Choice::supply`] says so.
///
/// The search looks at no more than a fixed number of partial choices (some milliseconds). A handful of
/// sizes that share a common measure is always proven; [`Choice::proof`] says so.
///
/// ```
/// use hilum::pack::{Coverage, Objective, PackSize, Proof, choose};
/// use hilum::quantity::{Mass, mass::kilogram};
/// # fn main() -> Result<(), hilum::Error> {
/// // Worked by hand: 11 t from sets for 4 t and 3 t. 4 + 4 + 3 leaves nothing over; three of 4 t leave 1 t.
/// let sizes = [4_000.0, 3_000.0].map(|kg| Coverage::new(Mass::new::<kilogram>(kg)));
/// let sizes = [sizes[0]?, sizes[1]?].map(|covers| PackSize { covers, stock: None, price: None });
/// let open = choose(Mass::new::<kilogram>(11_000.0), &sizes, Objective::LeastLeftover)?;
/// assert!(open.sets().eq([2, 1]));
/// assert_eq!(open.leftover.get::<kilogram>(), 0.0);
/// assert_eq!(open.proof, Proof::Proven);
/// # Ok(()) }
/// ```
///
/// # Errors
/// When the need is not finite or not more than 0, when there are no sizes or more than [`MOST_SIZES`], or
/// when more than 2^53 sets would have to be opened.
pub fn choose(need: Mass, sizes: &[PackSize], objective: Objective) -> Result<Choice, Error> {
    let kg = positive(Argument::Need, need.value)?;
    if sizes.is_empty() || sizes.len() > MOST_SIZES {
        return Err(Error::SizesOfPack { value: sizes.len() });
    }
    let found = search::best(kg, sizes, objective);
    let mut choice = Choice {
        sets: [0; MOST_SIZES],
        sizes: sizes.len(),
        covered: base!(Mass, 0.0),
        leftover: base!(Mass, 0.0),
        cost: 0.0,
        proof: found.proof(),
        supply: found.supply,
    };
    for ((size, sets), into) in sizes.iter().zip(found.sets).zip(&mut choice.sets) {
        *into = count(sets)?;
        choice.covered.value += sets * size.covers.0;
        choice.cost += sets * size.price.map_or(0.0, Price::number);
    }
    choice.leftover.value = math::max(choice.covered.value - kg, 0.0);
    Ok(choice)
}

/// Cases to fetch for a number of sets: sets / sets per case, rounded up.
///
/// ```
/// // Worked by hand: five sets at two to the case are in three cases.
/// let per_case = core::num::NonZeroU32::new(2).unwrap();
/// assert_eq!(hilum::pack::cases(5, per_case), 3);
/// ```
#[must_use]
pub fn cases(sets: u64, per_case: NonZeroU32) -> u64 {
    #[cfg(target_os = "none")]
    let (cases, left) = divided(sets, per_case);
    #[cfg(not(target_os = "none"))]
    let (cases, left) = (sets / NonZeroU64::from(per_case), sets % NonZeroU64::from(per_case));
    cases + u64::from(left > 0)
}

/// How many times one number goes into another, and what is left.
///
/// Bit by bit: a microcontroller has no division of 64 bits, and its library's takes 0.8 kB.
#[cfg(any(target_os = "none", test))]
fn divided(number: u64, by: NonZeroU32) -> (u64, u64) {
    let by = u64::from(by.get());
    let (mut times, mut left) = (number, 0);
    for _ in 0..u64::BITS {
        left = left << 1 | times >> 63;
        times <<= 1;
        if left >= by {
            left -= by;
            times |= 1;
        }
    }
    (times, left)
}

/// Whether the opened sets without one of them would leave at most [`ALMOST_COVERED`] of the need untreated:
/// need − (covered − set) ≤ 1 % × need.
///
/// # Errors
/// When the need or what is covered is not finite or not more than 0.
pub fn almost_covered(need: Mass, covered: Mass, set: Coverage) -> Result<bool, Error> {
    let need = given(Argument::Need, need.value)?;
    let without = given(Argument::Covered, covered.value)? - set.0;
    Ok(need - without <= need * (ALMOST_COVERED + slack::SLACK))
}

#[cfg(test)]
mod tests;
