//! What do I open?

use core::mem::MaybeUninit;
use core::num::NonZeroU32;

use hilum::pack::{self, Coverage, MOST_SIZES, Objective, PackSize, Price, Proof, SetsNeeded, Supply};
use hilum::quantity::{Mass, Measure};
use hilum::rate::{Dry, Liquid};

use crate::argument::{Covered, Need, ProductAmount};
use crate::call::{self, Answer, give};
use crate::dose::dry::hilum_dry_per_mass;
use crate::dose::liquid::hilum_rate_per_mass;
use crate::number::{number, of_three, of_two, positive};
use crate::quantity::amount::{hilum_mass, hilum_volume};
use crate::status::Status;

/// The seed that one set covers.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_coverage {
    /// Kilograms of seed.
    pub kg: f64,
}

number!(hilum_coverage: kg, Coverage);

impl From<Coverage> for hilum_coverage {
    fn from(coverage: Coverage) -> Self {
        Self { kg: coverage.get().to_base() }
    }
}

/// Stated and calculated coverage may differ by this share of the latter.
pub const HILUM_COVERAGE_TOLERANCE: f64 = 0.02;
/// Short of this share of the need without one of the opened sets, an order is almost covered by the rest.
pub const HILUM_ALMOST_COVERED: f64 = 0.01;

/// What the usable content of a set of liquid covers at a rate: content / rate.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_coverage_at(
    usable: hilum_volume,
    rate: hilum_rate_per_mass,
    out: Option<&mut MaybeUninit<hilum_coverage>>,
) -> i32 {
    of_two(out, rate, positive::<ProductAmount, _>(usable), |rate, usable| {
        Coverage::at::<Liquid>(usable, rate)
    })
}

/// What the usable content of a set of dry product covers at a rate: content / rate.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_coverage_at_dry(
    usable: hilum_mass,
    rate: hilum_dry_per_mass,
    out: Option<&mut MaybeUninit<hilum_coverage>>,
) -> i32 {
    of_two(out, rate, positive::<ProductAmount, _>(usable), |rate, usable| Coverage::at::<Dry>(usable, rate))
}

/// By how much a stated coverage differs from the calculated one: stated / calculated - 1.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_coverage_difference(
    stated: hilum_coverage,
    calculated: hilum_coverage,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    of_two(out, stated, calculated, |stated, calculated| Ok(stated.difference(calculated)))
}

/// Whether they differ by more than HILUM_COVERAGE_TOLERANCE.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_coverage_disagrees(
    stated: hilum_coverage,
    calculated: hilum_coverage,
    out: Option<&mut MaybeUninit<bool>>,
) -> i32 {
    of_two(out, stated, calculated, |stated, calculated| Ok(stated.disagrees(calculated)))
}

/// One order's seed, and what a set covers of it. A set that covers a number of seeds covers less mass of
/// small seed than of large.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_order_need {
    /// Seed to treat.
    pub seed: hilum_mass,
    /// What one set covers of this order's seed.
    pub set: hilum_coverage,
}

/// What orders need, in sets of one size, before it is rounded up.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_sets_needed {
    /// Sets; not a whole number.
    pub sets: f64,
}

impl hilum_sets_needed {
    /// One order of so many kilograms, of which a set covers one: sets x 1 / 1 changes no bit.
    pub(crate) fn core(self) -> Answer<SetsNeeded> {
        let sets = hilum::error::positive(hilum::Argument::Sets, self.sets)?;
        let one = Coverage::new(Mass::from_base(1.0))?;
        Ok(SetsNeeded::sum([(Mass::from_base(sets), one)])?)
    }
}

/// What n orders need: the sum of seed / what a set covers. Summed first and rounded up once.
/// Errors: NULL; HILUM_NOT_POSITIVE when n is 0; a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_sets_needed_sum(
    orders: *const hilum_order_need,
    n: usize,
    out: Option<&mut MaybeUninit<hilum_sets_needed>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let orders = unsafe { call::list(orders, n) }?;
        for order in orders {
            order.set.core()?;
        }
        let needs = orders.iter().filter_map(|order| Some((order.seed.into(), order.set.core().ok()?)));
        Ok(hilum_sets_needed { sets: SetsNeeded::sum(needs)?.number() })
    })
}

/// As whole sets: one ceiling, with a slack of 1e-9 of the number.
/// Errors: a number that is not finite or not more than 0; HILUM_TOO_MANY_SETS beyond 2^53.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_sets_needed_whole(
    needed: hilum_sets_needed,
    out: Option<&mut MaybeUninit<u64>>,
) -> i32 {
    give(out, || Ok(needed.core()?.whole()?))
}

/// The seed that the same number of sets covers where one covers so much: sets x coverage. Orders of different
/// seed size have one need in sets; this is that need in the seed of one of them, for hilum_pack_choose.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_sets_needed_seed(
    needed: hilum_sets_needed,
    set: hilum_coverage,
    out: Option<&mut MaybeUninit<hilum_mass>>,
) -> i32 {
    give(out, || Ok(needed.core()?.seed(set.core()?).into()))
}

/// The most sizes of pack that a choice is made among.
pub const HILUM_MOST_SIZES: usize = 8;
/// There is no limit to the sets on hand.
pub const HILUM_NO_LIMIT: u32 = 0xFFFF_FFFF;

/// One size of pack that the product is sold in.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_pack_size {
    /// The seed that one set covers.
    pub covers: hilum_coverage,
    /// What a set costs, in the currency of the job; 0 when there is no price.
    pub price: f64,
    /// Sets on hand; HILUM_NO_LIMIT when there is no limit.
    pub stock: u32,
}

impl hilum_pack_size {
    fn core(self) -> Answer<PackSize> {
        Ok(PackSize {
            covers: self.covers.core()?,
            stock: (self.stock != HILUM_NO_LIMIT).then_some(self.stock),
            price: Some(Price::new(self.price)?),
        })
    }
}

/// The best choice leaves least over in opened sets.
pub const HILUM_LEAST_LEFTOVER: i32 = 1;
/// The best choice costs least.
pub const HILUM_LEAST_COST: i32 = 2;
/// The best choice opens fewest sets.
pub const HILUM_FEWEST_SETS: i32 = 3;

/// No other choice or plan is better.
pub const HILUM_PROVEN: i32 = 1;
/// The search stopped at a bound: valid, but a better one may exist.
pub const HILUM_BOUND_REACHED: i32 = 2;

/// The stock covers the need.
pub const HILUM_ENOUGH: i32 = 1;
/// It does not.
pub const HILUM_SHORT: i32 = 2;

/// What to open.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_choice {
    /// Sets to open of each size, in the order in which the sizes were given; 0 beyond.
    pub sets: [u64; 8],
    /// The seed that the opened sets cover.
    pub covered: hilum_mass,
    /// The seed that they cover beyond the need; never negative.
    pub leftover: hilum_mass,
    /// What they cost, in the currency of the prices.
    pub cost: f64,
    /// HILUM_PROVEN or HILUM_BOUND_REACHED.
    pub proof: i32,
    /// HILUM_ENOUGH or HILUM_SHORT.
    pub supply: i32,
}

impl From<pack::Choice> for hilum_choice {
    fn from(choice: pack::Choice) -> Self {
        let mut sets = [0; 8];
        for (to, from) in sets.iter_mut().zip(choice.sets()) {
            *to = from;
        }
        Self {
            sets,
            covered: choice.covered.into(),
            leftover: choice.leftover.into(),
            cost: choice.cost,
            proof: match choice.proof {
                Proof::Proven => HILUM_PROVEN,
                Proof::BoundReached => HILUM_BOUND_REACHED,
            },
            supply: match choice.supply {
                Supply::Enough => HILUM_ENOUGH,
                Supply::Short => HILUM_SHORT,
            },
        }
    }
}

/// Which of n sizes of pack to open, opened whole, for a mass of seed: the exact best under an objective
/// (HILUM_LEAST_LEFTOVER, HILUM_LEAST_COST, HILUM_FEWEST_SETS).
///
/// Ties go by least leftover, then least cost, then fewest sets, then more sets of the sizes given earlier. The
/// work is bounded; proof says whether the choice is proven.
///
/// Errors: NULL; a need that is not finite or not more than 0; a coverage or price that cannot be;
/// HILUM_SIZES_OF_PACK when n is 0 or more than HILUM_MOST_SIZES; HILUM_NO_SUCH_CHOICE; HILUM_TOO_MANY_SETS.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_pack_choose(
    need: hilum_mass,
    sizes: *const hilum_pack_size,
    n: usize,
    objective: i32,
    out: Option<&mut MaybeUninit<hilum_choice>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let sizes = unsafe { call::list(sizes, n) }?;
        let objective = match objective {
            HILUM_LEAST_LEFTOVER => Ok(Objective::LeastLeftover),
            HILUM_LEAST_COST => Ok(Objective::LeastCost),
            HILUM_FEWEST_SETS => Ok(Objective::FewestSets),
            _ => Err(Status::NO_SUCH_CHOICE),
        }?;
        let (first, more) = sizes.split_first().ok_or(Status::SIZES_OF_PACK)?;
        let mut all = [first.core()?; MOST_SIZES];
        let room = all.get_mut(1..n).ok_or(Status::SIZES_OF_PACK)?;
        for (to, from) in room.iter_mut().zip(more) {
            *to = from.core()?;
        }
        let sizes = all.get(..n).ok_or(Status::SIZES_OF_PACK)?;
        Ok(pack::choose(need.into(), sizes, objective)?.into())
    })
}

/// Cases to fetch for a number of sets: sets / sets per case, rounded up.
/// Errors: HILUM_NOT_POSITIVE when there are no sets in a case.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_pack_cases(sets: u64, per_case: u32, out: Option<&mut MaybeUninit<u64>>) -> i32 {
    give(out, || {
        let per_case = NonZeroU32::new(per_case).ok_or(Status::NOT_POSITIVE.of(SETS))?;
        Ok(pack::cases(sets, per_case))
    })
}

const SETS: i32 = crate::argument::of_value(hilum::Argument::Sets);

/// Whether the opened sets without one of them would leave at most HILUM_ALMOST_COVERED of the need untreated:
/// need - (covered - set) <= 1 % x need. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_pack_almost_covered(
    need: hilum_mass,
    covered: hilum_mass,
    set: hilum_coverage,
    out: Option<&mut MaybeUninit<bool>>,
) -> i32 {
    of_three(out, positive::<Need, _>(need), positive::<Covered, _>(covered), set, |need, covered, set| {
        pack::almost_covered(need, covered, set)
    })
}
