//! What goes in the tank?
//!
//! A [`Slurry`] is what one order takes from one tank: every product at its rate, and water. Volumes are
//! taken to add, which is common practice; a mix of concentrated products can shrink by a little.

use crate::error::{Argument, Error, given, not_negative};
use crate::quantity::{Mass, Volume, VolumePerMass, base};
use crate::rate::{Density, RatePerMass};
use crate::seed::Share;
use crate::{math, slack};

/// The density of water at 20 °C; from 5 to 25 °C water stays within 0.2 % of it.
///
/// # References
/// M. Tanaka et al., Recommended table for the density of water between 0 °C and 40 °C, Metrologia 38 (2001)
/// 301: its formula gives 998.2067 kg/m³ (coefficients quoted from memory).
pub const WATER: Density = Density(998.2);

/// What is done about water.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Water {
    /// None is added.
    #[default]
    None,
    /// The mix is made up with water to this volume per mass of seed.
    UpTo(RatePerMass),
    /// So much water is added per mass of seed.
    Plus(RatePerMass),
}

/// What an order takes from a tank, per mass of seed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slurry {
    products: f64,
    total: f64,
}

impl Slurry {
    /// The products at their rates, and water: Σ rates, made up to a volume, or plus water, or as it is.
    ///
    /// ```
    /// use hilum::mix::{Slurry, Water};
    /// use hilum::quantity::{Mass, Volume, mass::{hundredweight, pound}, volume::{fluid_ounce, gallon}};
    /// use hilum::rate::{PerMass, RatePerMass};
    /// # fn main() -> Result<(), hilum::Error> {
    /// let fl_oz_per_cwt = |v| PerMass::new(Volume::new::<fluid_ounce>(v) / Mass::new::<hundredweight>(1.0));
    /// // Worked by hand: 3.2 of 5.0 fl oz/cwt is 64 %; 10 gal are 1280 fl oz and treat 256 cwt.
    /// let product: RatePerMass = fl_oz_per_cwt(3.2)?;
    /// let slurry = Slurry::of([product], Water::UpTo(fl_oz_per_cwt(5.0)?))?;
    /// assert!((slurry.share(product)?.number() - 0.64).abs() < 1e-12);
    /// assert!((slurry.water_share().number() - 0.36).abs() < 1e-12);
    /// assert!((slurry.treats(Volume::new::<gallon>(10.0))?.get::<pound>() - 25_600.0).abs() < 1e-8);
    /// # Ok(()) }
    /// ```
    ///
    /// # Errors
    /// [`Error::Needed`] without a product; [`Error::TooLittle`] when the volume to make up to is below the
    /// products' own (by more than 1e-9 of it).
    pub fn of(products: impl IntoIterator<Item = RatePerMass>, water: Water) -> Result<Self, Error> {
        let products = total_liquid(products)?.0;
        let total = match water {
            Water::None => products,
            Water::UpTo(volume) if slack::below(volume.0, products) => {
                return Err(Error::TooLittle {
                    argument: Argument::MakeUpTo,
                    value: volume.0,
                    least: products,
                });
            }
            Water::UpTo(volume) => math::max(volume.0, products),
            Water::Plus(water) => products + water.0,
        };
        Ok(Self { products, total })
    }

    /// Products and water, per mass of seed: what the pump delivers.
    #[must_use]
    pub fn rate(self) -> RatePerMass {
        RatePerMass::of(self.total)
    }

    /// Water, per mass of seed; may be 0.
    #[must_use]
    pub fn water(self) -> VolumePerMass {
        base!(VolumePerMass, self.total - self.products)
    }

    /// The share of a product in the mix, by volume: rate / slurry.
    ///
    /// # Errors
    /// When the rate is more than the whole mix: the product is not in it.
    pub fn share(self, product: RatePerMass) -> Result<Share, Error> {
        let value = product.0 / self.total;
        if value > 1.0 {
            return Err(Error::NotAShare { argument: Argument::MixShare, value });
        }
        Ok(Share(value))
    }

    /// The share of water in the mix, by volume: (slurry − products) / slurry.
    #[must_use]
    pub fn water_share(self) -> Share {
        Share((self.total - self.products) / self.total)
    }

    /// The seed that a volume of mix treats: volume / slurry.
    ///
    /// # Errors
    /// When the volume is not finite or not more than 0.
    #[inline]
    pub fn treats(self, mix: Volume) -> Result<Mass, Error> {
        given(Argument::MixVolume, mix.value).map(|m3| base!(Mass, m3 / self.total))
    }

    /// The mix that a mass of seed takes up: mass × slurry.
    ///
    /// # Errors
    /// When the mass is not finite or not more than 0.
    #[inline]
    pub fn fill(self, seed: Mass) -> Result<Volume, Error> {
        given(Argument::SeedMass, seed.value).map(|kg| base!(Volume, kg * self.total))
    }
}

/// All liquid that lands on the seed, over the products, waters or slurries of all tanks: Σ rates.
///
/// Compare it with the treater's limits by [`RatePerMass::exceeds`] and [`RatePerMass::falls_below`].
///
/// # Errors
/// [`Error::Needed`] when there is none.
pub fn total_liquid(rates: impl IntoIterator<Item = RatePerMass>) -> Result<RatePerMass, Error> {
    let total: f64 = rates.into_iter().map(|rate| rate.0).sum();
    if total > 0.0 { Ok(RatePerMass::of(total)) } else { Err(Error::Needed { argument: Argument::MixRate }) }
}

/// What to pour of one part of the mix: share × mix.
///
/// ```
/// use hilum::mix::pour;
/// use hilum::quantity::{Ratio, Volume, ratio::percent, volume::liter};
/// use hilum::seed::Share;
/// # fn main() -> Result<(), hilum::Error> {
/// // Worked by hand: 64 % of 50 L.
/// let share = Share::new(Ratio::new::<percent>(64.0))?;
/// assert!((pour(share, Volume::new::<liter>(50.0))?.get::<liter>() - 32.0).abs() < 1e-12);
/// # Ok(()) }
/// ```
///
/// # Errors
/// When the volume of mix is not finite or not more than 0.
#[inline]
pub fn pour(share: Share, mix: Volume) -> Result<Volume, Error> {
    given(Argument::MixVolume, mix.value).map(|m3| base!(Volume, share.0 * m3))
}

/// What a mix weighs per volume: Σ (share · density) / Σ share, volumes taken to add. Water is [`WATER`].
///
/// ```
/// use hilum::mix::{WATER, density};
/// use hilum::quantity::{Mass, Ratio, Volume, mass::kilogram, ratio::percent, volume::liter};
/// use hilum::rate::Density;
/// use hilum::seed::Share;
/// # fn main() -> Result<(), hilum::Error> {
/// // Worked by hand: 0.64 × 1.25 + 0.36 × 0.9982 = 1.159352 kg/L.
/// let share = |p| Share::new(Ratio::new::<percent>(p));
/// let product = Density::new(Mass::new::<kilogram>(1.25) / Volume::new::<liter>(1.0))?;
/// let mix = density([(share(64.0)?, product), (share(36.0)?, WATER)])?;
/// assert!(((mix.get() * Volume::new::<liter>(1.0)).get::<kilogram>() - 1.159_352).abs() < 1e-12);
/// # Ok(()) }
/// ```
///
/// # Errors
/// [`Error::Needed`] when there is no part with a share.
pub fn density(parts: impl IntoIterator<Item = (Share, Density)>) -> Result<Density, Error> {
    let (mass, volume) = parts
        .into_iter()
        .fold((0.0, 0.0), |(mass, volume), (share, density)| (mass + share.0 * density.0, volume + share.0));
    if volume > 0.0 {
        Ok(Density(mass / volume))
    } else {
        Err(Error::Needed { argument: Argument::MixShare })
    }
}

/// What a pour weighs: volume × density.
///
/// # Errors
/// When the volume is not finite or negative.
#[inline]
pub fn weigh(pour: Volume, density: Density) -> Result<Mass, Error> {
    not_negative(Argument::ProductAmount, pour.value).map(|m3| base!(Mass, m3 * density.0))
}

/// Whether an order may be treated with the mix of another: for every product,
/// |share in the recipe / own share − 1| ≤ tolerance (with a slack of 1e-9).
///
/// Each item is a product's share in the recipe and its share in the order's own slurry; water is not
/// compared. A product that only one of them holds has a share of 0 in the other, and no recipe is kept.
///
/// ```
/// use hilum::mix::keeps_recipe;
/// use hilum::quantity::{Ratio, ratio::percent};
/// use hilum::seed::Share;
/// # fn main() -> Result<(), hilum::Error> {
/// let share = |p| Share::new(Ratio::new::<percent>(p));
/// // Worked by hand: 50.5 / 50 is 1 % off, 30 / 31 is 3.2 % off.
/// let shares = [(share(50.5)?, share(50.0)?), (share(30.0)?, share(31.0)?)];
/// assert!(keeps_recipe(shares, share(4.0)?));
/// assert!(!keeps_recipe(shares, share(2.0)?));
/// # Ok(()) }
/// ```
#[must_use]
pub fn keeps_recipe(shares: impl IntoIterator<Item = (Share, Share)>, tolerance: Share) -> bool {
    shares.into_iter().all(|(recipe, own)| (recipe.0 - own.0).abs() <= own.0 * (tolerance.0 + slack::SLACK))
}

checked! {
    /// What pump and lines hold: filled when they are empty, lost when the recipe changes or the mix expires.
    HoldUp(Volume), not_negative, HoldUp
}

impl HoldUp {
    /// None: the lines are counted as part of the tank.
    pub const NONE: Self = Self(0.0);

    /// What to mix so that a mass of seed can be treated from empty lines: mass × slurry + hold-up.
    ///
    /// # Errors
    /// When the mass is not finite or not more than 0.
    #[inline]
    pub fn mixed(self, slurry: Slurry, seed: Mass) -> Result<Volume, Error> {
        slurry.fill(seed).map(|fill| base!(Volume, fill.value + self.0))
    }

    /// The seed that a mix treats when it starts with empty lines: (mix − hold-up) / slurry; 0 when the
    /// lines take it all.
    ///
    /// # Errors
    /// When the volume is not finite or not more than 0.
    #[inline]
    pub fn treats(self, slurry: Slurry, mix: Volume) -> Result<Mass, Error> {
        let m3 = given(Argument::MixVolume, mix.value)?;
        Ok(base!(Mass, math::max(m3 - self.0, 0.0) / slurry.total))
    }
}

checked! {
    /// The least that must be in a tank for its agitator and pump to work.
    MinFill(Volume), positive, MinFill
}

impl MinFill {
    /// Whether a mix stays below it, by more than 1e-9 of it.
    ///
    /// # Errors
    /// When the volume is not finite or not more than 0.
    pub fn missed_by(self, mix: Volume) -> Result<bool, Error> {
        given(Argument::MixVolume, mix.value).map(|m3| slack::below(m3, self.0))
    }
}

#[cfg(test)]
mod tests;
