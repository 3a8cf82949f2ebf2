//! Do two statements of one dose agree?

use super::PerMass;
use crate::slack::SLACK;

/// Statements that differ by more than this share are worth a note.
pub const WORTH_A_NOTE: f64 = 0.02;
/// Statements that differ by more than this share are worth a warning.
pub const WORTH_A_WARNING: f64 = 0.10;

/// How far a statement of a dose lies from the one that governs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Agreement {
    /// Within rounding: up to [`WORTH_A_NOTE`].
    Close,
    /// Beyond [`WORTH_A_NOTE`]: the label was written for seed of another size.
    Apart,
    /// Beyond [`WORTH_A_WARNING`]: one of the statements may be wrong.
    FarApart,
}

impl<S: Copy> PerMass<S> {
    /// Whether this statement of a dose agrees with the one that governs, at the size of the seed at hand.
    ///
    /// ```
    /// use hilum::quantity::{Mass, Seeds, Volume, mass::{hundredweight, pound}, seeds::seed, volume::fluid_ounce};
    /// use hilum::rate::{Agreement, PerMass, PerSeed, RatePerMass, RatePerSeed};
    /// use hilum::seed::{SeedSize, UnitOfSeeds};
    /// # fn main() -> Result<(), hilum::Error> {
    /// let label: RatePerMass = PerMass::new(Volume::new::<fluid_ounce>(2.0) / Mass::new::<hundredweight>(1.0))?;
    /// let unit = UnitOfSeeds::new(Seeds::new::<seed>(140_000.0))?;
    /// let also: RatePerSeed = PerSeed::from_unit(Volume::new::<fluid_ounce>(0.96), unit)?;
    /// // Common practice: 0.96 fl oz per unit was written for 2,917 seeds/lb; at 3,000 it is 2.9 % more.
    /// let size = SeedSize::new(Seeds::new::<seed>(3_000.0) / Mass::new::<pound>(1.0))?;
    /// assert_eq!(also.per_mass(size).agreement(label), Agreement::Apart);
    /// # Ok(()) }
    /// ```
    #[must_use]
    pub fn agreement(self, governing: Self) -> Agreement {
        let apart = self.difference(governing).abs();
        if apart > WORTH_A_WARNING + SLACK {
            Agreement::FarApart
        } else if apart > WORTH_A_NOTE + SLACK {
            Agreement::Apart
        } else {
            Agreement::Close
        }
    }
}
