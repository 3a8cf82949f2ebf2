//! How much seed is it?
//!
//! Seed is sold by mass, by number and by the unit, measured by the bushel and sown by the area. Its
//! **size** (seeds per mass, or the mass of a thousand seeds) ties them together.

use crate::error::{Argument, Error, given, positive};
use crate::quantity::{Area, Mass, MassPerArea, MassPerSeed, Ratio, Seeds, SeedsPerArea, SeedsPerMass, base};

checked! {
    /// How small the seed is: seeds per mass.
    ///
    /// ```
    /// use hilum::quantity::{Mass, Seeds, mass::{gram, pound}, seeds::seed};
    /// use hilum::seed::SeedSize;
    /// # fn main() -> Result<(), hilum::Error> {
    /// // Iowa State University Agron 212: a bushel of 60 lb at 2,200 seeds per pound is 132,000 seeds.
    /// let size = SeedSize::new(Seeds::new::<seed>(2_200.0) / Mass::new::<pound>(1.0))?;
    /// let count = size.count_in(Mass::new::<pound>(60.0))?;
    /// assert!((count.get::<seed>() - 132_000.0).abs() < 1e-6);
    /// # Ok(()) }
    /// ```
    SeedSize(SeedsPerMass), positive, SeedSize
}

impl SeedSize {
    /// The size of seed of which a thousand weigh this much: 1000 / mass.
    ///
    /// # Errors
    /// When the mass is not finite or not more than 0.
    #[inline]
    pub fn of_thousand(mass: Mass) -> Result<Self, Error> {
        given(Argument::ThousandSeedMass, mass.value).map(|kg| Self(1000.0 / kg))
    }

    /// The size of seed of which one weighs this much: 1 / mass per seed.
    ///
    /// # Errors
    /// When the mass is not finite or not more than 0.
    #[inline]
    pub fn of_seed(mass: MassPerSeed) -> Result<Self, Error> {
        given(Argument::SeedMass, mass.value).map(|kg| Self(1.0 / kg))
    }

    /// What a thousand seeds weigh: 1000 / size.
    #[must_use]
    pub fn thousand(self) -> Mass {
        base!(Mass, 1000.0 / self.0)
    }

    /// What one seed weighs, on average.
    #[must_use]
    pub fn seed_mass(self) -> MassPerSeed {
        base!(MassPerSeed, 1.0 / self.0)
    }

    /// How many seeds there are in a mass: mass × size.
    ///
    /// # Errors
    /// When the mass is not finite or not more than 0.
    #[inline]
    pub fn count_in(self, seed: Mass) -> Result<Seeds, Error> {
        given(Argument::SeedMass, seed.value).map(|kg| base!(Seeds, kg * self.0))
    }

    /// What a number of seeds weighs: seeds / size.
    ///
    /// # Errors
    /// When the number is not finite or not more than 0.
    #[inline]
    pub fn mass_of(self, seeds: Seeds) -> Result<Mass, Error> {
        given(Argument::Seeds, seeds.value).map(|n| base!(Mass, n / self.0))
    }

    /// The sizes that a tolerance leaves possible: size × (1 − tolerance) and size × (1 + tolerance).
    ///
    /// # Errors
    /// When the tolerance is 100 %: no seed is that large.
    #[inline]
    pub fn within(self, tolerance: Share) -> Result<(Self, Self), Error> {
        let low = positive(Argument::SizeTolerance, 1.0 - tolerance.0)
            .map_err(|_| Error::NotAShare { argument: Argument::SizeTolerance, value: tolerance.0 })?;
        Ok((Self(self.0 * low), Self(self.0 * (1.0 + tolerance.0))))
    }
}

checked! {
    /// A share, 0 % to 100 %: purity, germination, emergence, recovery, a content by mass.
    Share(Ratio), share, Share
}

impl Share {
    /// All of it: 100 %.
    pub const WHOLE: Self = Self(1.0);
    /// Nothing of it: 0 %.
    pub const NONE: Self = Self(0.0);

    /// As a number, 0 to 1.
    #[must_use]
    pub const fn number(self) -> f64 {
        self.0
    }
}

/// What a seller calls one unit of this seed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SeedUnit {
    /// So many seeds: the unit of a label's dose.
    Count(UnitOfSeeds),
    /// So much seed, whatever its size: a bag sold by weight. A dose per unit of it is a dose per mass.
    Mass(UnitOfMass),
}

checked! {
    /// A unit that is a number of seeds, such as 140 000 for soybean or 80 000 for maize.
    UnitOfSeeds(Seeds), positive, SeedUnit
}
checked! {
    /// A unit that is a mass of seed, such as a 50-lb bag.
    UnitOfMass(Mass), positive, SeedUnit
}
checked! {
    /// The crop's standard bushel: a mass by law or custom (60 lb for soybean), not a test weight.
    Bushel(Mass), positive, Bushel
}

impl SeedUnit {
    /// The mass of one unit at a seed size.
    #[must_use]
    pub fn mass(self, size: SeedSize) -> Mass {
        match self {
            Self::Count(unit) => base!(Mass, unit.0 / size.0),
            Self::Mass(unit) => unit.get(),
        }
    }

    /// How many units a mass of seed is: mass × size / unit, or mass / unit.
    ///
    /// # Errors
    /// When the mass is not finite or not more than 0.
    #[inline]
    pub fn units_in(self, seed: Mass, size: SeedSize) -> Result<f64, Error> {
        let kg = given(Argument::SeedMass, seed.value)?;
        Ok(match self {
            Self::Count(unit) => kg * size.0 / unit.0,
            Self::Mass(unit) => kg / unit.0,
        })
    }
}

impl Bushel {
    /// How many bushels a mass of seed is.
    ///
    /// # Errors
    /// When the mass is not finite or not more than 0.
    #[inline]
    pub fn bushels_in(self, seed: Mass) -> Result<f64, Error> {
        given(Argument::SeedMass, seed.value).map(|kg| kg / self.0)
    }
}

/// The share of a lot that is pure seed which germinates: purity × germination.
///
/// ```
/// use hilum::quantity::{Ratio, ratio::percent};
/// use hilum::seed::{Share, pure_live_seed};
/// # fn main() -> Result<(), hilum::Error> {
/// // Worked by hand: 98.75 % pure, 93 % germinates; a soil and water district prints 91.83 %, cut off.
/// let purity = Share::new(Ratio::new::<percent>(98.75))?;
/// let germination = Share::new(Ratio::new::<percent>(93.0))?;
/// assert!((pure_live_seed(purity, germination).get().get::<percent>() - 91.8375).abs() < 1e-9);
/// # Ok(()) }
/// ```
#[must_use]
pub fn pure_live_seed(purity: Share, germination: Share) -> Share {
    Share(purity.0 * germination.0)
}

checked! {
    /// Seeds sown per area.
    Sown(SeedsPerArea), positive, Sown
}

impl Sown {
    /// What to sow for a stand of plants: stand / (germination × emergence of viable seed).
    ///
    /// # Errors
    /// When germination or emergence is 0.
    #[inline]
    pub fn for_stand(stand: Sown, germination: Share, emergence: Share) -> Result<Self, Error> {
        let live =
            positive(Argument::Germination, germination.0)? * positive(Argument::Emergence, emergence.0)?;
        Ok(Self(stand.0 / live))
    }

    /// Sown by mass: rate × size.
    ///
    /// ```
    /// use hilum::quantity::{Area, Mass, Seeds, area::acre, mass::pound, seeds::seed};
    /// use hilum::seed::{SeedSize, Sown};
    /// # fn main() -> Result<(), hilum::Error> {
    /// // Iowa State University Agron 212: 60 lb/ac of 3,000 seeds/lb is 180,000 seeds/ac.
    /// let size = SeedSize::new(Seeds::new::<seed>(3_000.0) / Mass::new::<pound>(1.0))?;
    /// let sown = Sown::by_mass(Mass::new::<pound>(60.0) / Area::new::<acre>(1.0), size)?;
    /// let expected: hilum::quantity::SeedsPerArea = Seeds::new::<seed>(180_000.0) / Area::new::<acre>(1.0);
    /// assert!(((sown.get() / expected).value - 1.0).abs() < 1e-12);
    /// # Ok(()) }
    /// ```
    ///
    /// # Errors
    /// When the rate is not finite or not more than 0.
    #[inline]
    pub fn by_mass(rate: MassPerArea, size: SeedSize) -> Result<Self, Error> {
        given(Argument::SowingRate, rate.value).map(|kg_m2| Self(kg_m2 * size.0))
    }

    /// Mass of seed per area: sown / size.
    #[must_use]
    pub fn mass_per_area(self, size: SeedSize) -> MassPerArea {
        base!(MassPerArea, self.0 / size.0)
    }

    /// The area that a number of seeds sows: seeds / sown.
    ///
    /// # Errors
    /// When the number is not finite or not more than 0.
    #[inline]
    pub fn area(self, seeds: Seeds) -> Result<Area, Error> {
        given(Argument::Seeds, seeds.value).map(|n| base!(Area, n / self.0))
    }

    /// The seeds that an area takes: area × sown.
    ///
    /// # Errors
    /// When the area is not finite or not more than 0.
    #[inline]
    pub fn seeds_for(self, area: Area) -> Result<Seeds, Error> {
        given(Argument::Area, area.value).map(|m2| base!(Seeds, m2 * self.0))
    }
}
