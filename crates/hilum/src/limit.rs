//! Is it allowed?
//!
//! The label's limits per mass, per seed and per area, and what a season has left. The label is the law;
//! these are sums.

use crate::error::{Argument, Error, not_negative, positive};
use crate::quantity::{MassPerArea, SeedsPerArea, base};
use crate::rate::{ActivePerArea, ActivePerSeed, PerArea, PerMass, PerSeed};
use crate::seed::Sown;
use crate::{math, slack};

/// The same two questions of a dose in every basis.
macro_rules! limited {
    ($($dose:ident),+) => { $(
        impl<S: Copy> $dose<S> {
            /// Whether this is above a maximum, by more than 1e-9 of it.
            #[must_use]
            pub fn exceeds(self, most: Self) -> bool {
                slack::above(self.0, most.0)
            }

            /// Whether this is below a minimum, by more than 1e-9 of it.
            #[must_use]
            pub fn falls_below(self, least: Self) -> bool {
                slack::below(self.0, least.0)
            }
        }
    )+ };
}
limited!(PerMass, PerSeed, PerArea);

/// An active on the seed, over all products and what was on it before: Σ doses.
///
/// # Errors
/// [`Error::Needed`] when there is none.
pub fn total_on_seed(doses: impl IntoIterator<Item = ActivePerSeed>) -> Result<ActivePerSeed, Error> {
    let total: f64 = doses.into_iter().map(|dose| dose.0).sum();
    if total > 0.0 {
        Ok(ActivePerSeed::of(total))
    } else {
        Err(Error::Needed { argument: Argument::RatePerSeed })
    }
}

/// What a label allows of an active per area and season, and what the season has used of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeasonLimit {
    limit: f64,
    used: f64,
}

impl SeasonLimit {
    /// A limit, and what earlier treatments or sprays of this season used of it (0 when none).
    ///
    /// # Errors
    /// When the limit is not finite or not more than 0; when the use is not finite or negative.
    #[inline]
    pub fn new(limit: MassPerArea, used: MassPerArea) -> Result<Self, Error> {
        Ok(Self {
            limit: positive(Argument::SeasonLimit, limit.value)?,
            used: not_negative(Argument::SeasonUsed, used.value)?,
        })
    }

    /// What the season comes to with this seed: active per seed × seeds sown per area + used.
    #[must_use]
    pub fn total(self, on_seed: ActivePerSeed, sown: Sown) -> ActivePerArea {
        ActivePerArea::of(on_seed.per_area(sown).0 + self.used)
    }

    /// The share of the limit that this is: total / limit. 1 is all of it; more is not allowed.
    ///
    /// ```
    /// use hilum::limit::SeasonLimit;
    /// use hilum::quantity::{Area, Mass, Seeds, area::hectare, mass::{gram, milligram}, seeds::seed};
    /// use hilum::rate::ActivePerSeed;
    /// use hilum::seed::Sown;
    /// # fn main() -> Result<(), hilum::Error> {
    /// // Worked by hand: 0.25 mg × 400,000 seeds/ha is 100 g/ha; with 50 g/ha used, 150 of 200 g/ha.
    /// let g_per_ha = |g| Mass::new::<gram>(g) / Area::new::<hectare>(1.0);
    /// let season = SeasonLimit::new(g_per_ha(200.0), g_per_ha(50.0))?;
    /// let on_seed = ActivePerSeed::new(Mass::new::<milligram>(0.25) / Seeds::new::<seed>(1.0))?;
    /// let sown = Sown::new(Seeds::new::<seed>(400_000.0) / Area::new::<hectare>(1.0))?;
    /// assert!((season.share(on_seed, sown) - 0.75).abs() < 1e-12);
    /// // 150 g/ha are left for seed: 600,000 seeds/ha.
    /// let most = season.max_sowing(on_seed) * Area::new::<hectare>(1.0);
    /// assert!((most.get::<seed>() - 600_000.0).abs() < 1e-6);
    /// # Ok(()) }
    /// ```
    #[must_use]
    pub fn share(self, on_seed: ActivePerSeed, sown: Sown) -> f64 {
        self.total(on_seed, sown).0 / self.limit
    }

    /// Whether this is more than the limit, by more than 1e-9 of it.
    #[must_use]
    pub fn exceeded(self, on_seed: ActivePerSeed, sown: Sown) -> bool {
        slack::above(self.total(on_seed, sown).0, self.limit)
    }

    /// The sowing rate at which the limit is met: (limit − used) / active per seed; 0 when nothing is left.
    #[must_use]
    pub fn max_sowing(self, on_seed: ActivePerSeed) -> SeedsPerArea {
        base!(SeedsPerArea, math::max(self.limit - self.used, 0.0) / on_seed.0)
    }
}

#[cfg(test)]
mod tests;
