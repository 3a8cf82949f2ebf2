//! From product to active ingredient and back.

use super::{Active, Dry, Liquid, PerMass};
use crate::error::{Argument, Error};
use crate::quantity::MassPerVolume;
use crate::seed::Share;

checked! {
    /// Mass of a product per its volume.
    Density(MassPerVolume), positive, Density
}
checked! {
    /// Mass of active ingredient per volume of product: g/L, lb/gal.
    ActiveContent(MassPerVolume), positive, ActiveContent
}

/// How a label states what is in the product.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Content {
    /// Active per volume of product.
    PerVolume(ActiveContent),
    /// Active per mass of product: a percentage is by mass.
    ByMass(Share),
}

impl Content {
    /// Active per volume of product: as stated, or share × density.
    ///
    /// # Errors
    /// [`Error::Needed`] when the content is by mass and no density is given.
    pub fn per_volume(self, density: Option<Density>) -> Result<ActiveContent, Error> {
        match (self, density) {
            (Self::PerVolume(content), _) => Ok(content),
            (Self::ByMass(share), Some(density)) => Ok(ActiveContent(share.0 * density.0)),
            (Self::ByMass(_), None) => Err(Error::Needed { argument: Argument::Density }),
        }
    }

    /// Active per mass of product: as stated, or content / density.
    ///
    /// # Errors
    /// [`Error::Needed`] when the content is per volume and no density is given; [`Error::NotAShare`] when
    /// a litre would hold more active than it weighs.
    pub fn by_mass(self, density: Option<Density>) -> Result<Share, Error> {
        match (self, density) {
            (Self::ByMass(share), _) => Ok(share),
            (Self::PerVolume(content), Some(density)) => {
                crate::error::share(Argument::ActiveContent, content.0 / density.0).map(Share)
            }
            (Self::PerVolume(_), None) => Err(Error::Needed { argument: Argument::Density }),
        }
    }
}

impl PerMass<Liquid> {
    /// Active ingredient in this dose: rate × content.
    ///
    /// ```
    /// use hilum::quantity::{Mass, Volume, mass::{hundredweight, pound, kilogram, milligram}, volume::{fluid_ounce, gallon}};
    /// use hilum::rate::{ActiveContent, PerMass, RatePerMass};
    /// # fn main() -> Result<(), hilum::Error> {
    /// // US EPA, seed treatment exposure algebra (2012): 1 fl oz/cwt of 1 lb/gal is 78.125 mg active per kg seed.
    /// let rate: RatePerMass = PerMass::new(Volume::new::<fluid_ounce>(1.0) / Mass::new::<hundredweight>(1.0))?;
    /// let content = ActiveContent::new(Mass::new::<pound>(1.0) / Volume::new::<gallon>(1.0))?;
    /// assert!((rate.active(content).get().value * 1e6 - 78.125).abs() < 1e-9);
    /// # Ok(()) }
    /// ```
    #[must_use]
    pub fn active(self, content: ActiveContent) -> PerMass<Active> {
        PerMass::of(self.0 * content.0)
    }

    /// The same dose, weighed: rate × density.
    #[must_use]
    pub fn weighed(self, density: Density) -> PerMass<Dry> {
        PerMass::of(self.0 * density.0)
    }
}

impl PerMass<Dry> {
    /// Active ingredient in this dose: rate × share by mass.
    ///
    /// # Errors
    /// When there is none: a content must be more than 0.
    pub fn active(self, content: Share) -> Result<PerMass<Active>, Error> {
        crate::error::positive(Argument::ActiveContent, content.0).map(|share| PerMass::of(self.0 * share))
    }

    /// The same dose, measured by volume: rate / density.
    #[must_use]
    pub fn measured(self, density: Density) -> PerMass<Liquid> {
        PerMass::of(self.0 / density.0)
    }
}

impl PerMass<Active> {
    /// The liquid product that holds this dose: active / content.
    #[must_use]
    pub fn in_liquid(self, content: ActiveContent) -> PerMass<Liquid> {
        PerMass::of(self.0 / content.0)
    }

    /// The dry product that holds this dose: active / share by mass.
    ///
    /// # Errors
    /// When the share is 0.
    pub fn in_dry(self, content: Share) -> Result<PerMass<Dry>, Error> {
        crate::error::positive(Argument::ActiveContent, content.0).map(|share| PerMass::of(self.0 / share))
    }
}
