//! From a titre to cells on the seed and back.

use crate::error::{Argument, Error, given, positive};
use crate::quantity::{CellsPerMass, CellsPerVolume, Mass, Volume};
use crate::rate::{CellCount, Density, Dry, Liquid, PerSeed};
use crate::seed::Share;

checked! {
    /// Living cells per volume: CFU/mL.
    TitrePerVolume(CellsPerVolume), positive, Titre
}
checked! {
    /// Living cells per mass: CFU/g.
    TitrePerMass(CellsPerMass), positive, Titre
}

/// How a maker states the living cells of a product.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Titre {
    /// Cells per volume of product.
    PerVolume(TitrePerVolume),
    /// Cells per mass of product.
    PerMass(TitrePerMass),
}

impl Titre {
    /// Cells per volume: as stated, or titre × density.
    ///
    /// # Errors
    /// [`Error::Needed`] when the titre is per mass and no density is given.
    pub fn per_volume(self, density: Option<Density>) -> Result<TitrePerVolume, Error> {
        match (self, density) {
            (Self::PerVolume(titre), _) => Ok(titre),
            (Self::PerMass(titre), Some(density)) => Ok(TitrePerVolume(titre.0 * density.0)),
            (Self::PerMass(_), None) => Err(Error::Needed { argument: Argument::Density }),
        }
    }

    /// Cells per mass: as stated, or titre / density.
    ///
    /// # Errors
    /// [`Error::Needed`] when the titre is per volume and no density is given.
    pub fn per_mass(self, density: Option<Density>) -> Result<TitrePerMass, Error> {
        match (self, density) {
            (Self::PerMass(titre), _) => Ok(titre),
            (Self::PerVolume(titre), Some(density)) => Ok(TitrePerMass(titre.0 / density.0)),
            (Self::PerVolume(_), None) => Err(Error::Needed { argument: Argument::Density }),
        }
    }
}

impl TitrePerVolume {
    /// Titre of the mix, when the living part of a set has this one: titre × part / set.
    ///
    /// # Errors
    /// When a volume is not finite or not more than 0; when the part is more than the set.
    #[inline]
    pub fn in_set(self, part: Volume, set: Volume) -> Result<Self, Error> {
        share_of_set(part.value, set.value).map(|share| Self(self.0 * share))
    }

    /// Cells on each seed when it is treated: titre × dose × recovery.
    ///
    /// ```
    /// use hilum::quantity::{Cells, Ratio, Seeds, Volume, cells::cell, ratio::percent, seeds::seed};
    /// use hilum::quantity::volume::{microliter, milliliter};
    /// use hilum::rate::PerSeed;
    /// use hilum::seed::Share;
    /// use hilum::viability::TitrePerVolume;
    /// # fn main() -> Result<(), hilum::Error> {
    /// // Worked by hand: 1e9 CFU/mL = 1e6 CFU/µL; × 0.5 µL/seed × 80 % = 4e5 CFU/seed.
    /// let titre = TitrePerVolume::new(Cells::new::<cell>(1e9) / Volume::new::<milliliter>(1.0))?;
    /// let dose = PerSeed::new(Volume::new::<microliter>(0.5) / Seeds::new::<seed>(1.0))?;
    /// let recovery = Share::new(Ratio::new::<percent>(80.0))?;
    /// assert!((titre.cells(dose, recovery).get().value - 4e5).abs() < 1e-6);
    /// # Ok(()) }
    /// ```
    #[must_use]
    pub fn cells(self, dose: PerSeed<Liquid>, recovery: Share) -> PerSeed<CellCount> {
        PerSeed::of(self.0 * dose.0 * recovery.0)
    }

    /// The dose that lands so many cells: cells / (titre × recovery).
    ///
    /// # Errors
    /// When the recovery is 0: no dose would do.
    #[inline]
    pub fn dose_for(self, cells: PerSeed<CellCount>, recovery: Share) -> Result<PerSeed<Liquid>, Error> {
        positive(Argument::Recovery, recovery.0).map(|recovery| PerSeed::of(cells.0 / (self.0 * recovery)))
    }

    /// The titre at which a dose lands so many cells: cells / (dose × recovery).
    ///
    /// # Errors
    /// When the recovery is 0: no titre would do.
    #[inline]
    pub fn needed(cells: PerSeed<CellCount>, dose: PerSeed<Liquid>, recovery: Share) -> Result<Self, Error> {
        positive(Argument::Recovery, recovery.0).map(|recovery| Self(cells.0 / (dose.0 * recovery)))
    }
}

impl TitrePerMass {
    /// Titre of a dry mix, when the living part of a set has this one: titre × part / set.
    ///
    /// # Errors
    /// When a mass is not finite or not more than 0; when the part is more than the set.
    #[inline]
    pub fn in_set(self, part: Mass, set: Mass) -> Result<Self, Error> {
        share_of_set(part.value, set.value).map(|share| Self(self.0 * share))
    }

    /// Titre of the liquid made when a living powder is stirred into a set: titre × powder / set.
    ///
    /// # Errors
    /// When the mass or the volume is not finite or not more than 0.
    #[inline]
    pub fn stirred_into(self, powder: Mass, set: Volume) -> Result<TitrePerVolume, Error> {
        let kg = given(Argument::Part, powder.value)?;
        given(Argument::Set, set.value).map(|m3| TitrePerVolume(self.0 * kg / m3))
    }

    /// Cells on each seed when it is treated: titre × dose × recovery.
    ///
    /// ```
    /// use hilum::quantity::{Cells, Mass, Seeds, cells::cell, mass::{gram, kilogram}, seeds::seed};
    /// use hilum::rate::{Dry, PerMass};
    /// use hilum::seed::{SeedSize, Share};
    /// use hilum::viability::TitrePerMass;
    /// # fn main() -> Result<(), hilum::Error> {
    /// // Worked by hand: 1e9 CFU/g × 5 g/kg / 6,000 seeds/kg = 8.33e5 CFU/seed.
    /// let titre = TitrePerMass::new(Cells::new::<cell>(1e9) / Mass::new::<gram>(1.0))?;
    /// let rate: PerMass<Dry> = PerMass::new(Mass::new::<gram>(5.0) / Mass::new::<kilogram>(1.0))?;
    /// let size = SeedSize::new(Seeds::new::<seed>(6_000.0) / Mass::new::<kilogram>(1.0))?;
    /// let cells = titre.cells(rate.per_seed(size), Share::WHOLE);
    /// assert!((cells.get().value - 5e9 / 6e3).abs() < 1e-6);
    /// # Ok(()) }
    /// ```
    #[must_use]
    pub fn cells(self, dose: PerSeed<Dry>, recovery: Share) -> PerSeed<CellCount> {
        PerSeed::of(self.0 * dose.0 * recovery.0)
    }

    /// The dose that lands so many cells: cells / (titre × recovery).
    ///
    /// # Errors
    /// When the recovery is 0: no dose would do.
    #[inline]
    pub fn dose_for(self, cells: PerSeed<CellCount>, recovery: Share) -> Result<PerSeed<Dry>, Error> {
        positive(Argument::Recovery, recovery.0).map(|recovery| PerSeed::of(cells.0 / (self.0 * recovery)))
    }

    /// The titre at which a dose lands so many cells: cells / (dose × recovery).
    ///
    /// # Errors
    /// When the recovery is 0: no titre would do.
    #[inline]
    pub fn needed(cells: PerSeed<CellCount>, dose: PerSeed<Dry>, recovery: Share) -> Result<Self, Error> {
        positive(Argument::Recovery, recovery.0).map(|recovery| Self(cells.0 / (dose.0 * recovery)))
    }
}

/// What share of a set its living part is.
fn share_of_set(part: f64, set: f64) -> Result<f64, Error> {
    let share = given(Argument::Part, part)? / given(Argument::Set, set)?;
    crate::error::share(Argument::PartOfSet, share)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::cells::cell;
    use crate::quantity::mass::{gram, kilogram};
    use crate::quantity::ratio::percent;
    use crate::quantity::seeds::seed;
    use crate::quantity::volume::{liter, microliter, milliliter};
    use crate::quantity::{Cells, CellsPerSeed, Ratio, Seeds, base};
    use crate::rate::PerMass;
    use crate::seed::SeedSize;

    fn close(got: f64, expected: f64) {
        assert!((got / expected - 1.0).abs() < 1e-12, "{got} is not {expected}");
    }
    fn per_gram(count: f64) -> TitrePerMass {
        TitrePerMass::new(Cells::new::<cell>(count) / Mass::new::<gram>(1.0)).unwrap()
    }
    fn per_ml(count: f64) -> TitrePerVolume {
        TitrePerVolume::new(Cells::new::<cell>(count) / Volume::new::<milliliter>(1.0)).unwrap()
    }
    fn grams_per_kg(rate: f64, seeds_per_kg: f64) -> PerSeed<Dry> {
        let size = SeedSize::new(Seeds::new::<seed>(seeds_per_kg) / Mass::new::<kilogram>(1.0)).unwrap();
        PerMass::<Dry>::new(Mass::new::<gram>(rate) / Mass::new::<kilogram>(1.0)).unwrap().per_seed(size)
    }
    fn share(of: f64) -> Share {
        Share::new(Ratio::new::<percent>(of)).unwrap()
    }

    // Peat on seed, worked by hand from the pack and rate that the Western Australian department of
    // primary industries prints (2017): 250 g for 25 kg of pasture seed, here at 1e9/g and 500,000 seeds/kg.
    #[test]
    fn a_peat_pack_on_pasture_seed() {
        close(per_gram(1e9).cells(grams_per_kg(10.0, 500_000.0), Share::WHOLE).get().value, 2e4);
    }

    // Worked by hand: 1e5 / (2.5 g/kg / 6,000 seeds/kg) = 2.4e8/g.
    #[test]
    fn the_titre_a_dose_needs() {
        let wanted = PerSeed::new(base!(CellsPerSeed, 1e5)).unwrap();
        let titre = TitrePerMass::needed(wanted, grams_per_kg(2.5, 6_000.0), Share::WHOLE).unwrap();
        close(titre.get().value / 1e3, 2.4e8);
    }

    #[test]
    fn backwards_is_the_inverse_of_forwards() {
        let dose = PerSeed::<Liquid>::new(Volume::new::<microliter>(0.37) / Seeds::new::<seed>(1.0)).unwrap();
        let cells = per_ml(3e9).cells(dose, share(70.0));
        close(per_ml(3e9).dose_for(cells, share(70.0)).unwrap().0, dose.0);
        close(TitrePerVolume::needed(cells, dose, share(70.0)).unwrap().0, per_ml(3e9).0);
        let dose = grams_per_kg(5.0, 6_000.0);
        let cells = per_gram(1e9).cells(dose, share(70.0));
        close(per_gram(1e9).dose_for(cells, share(70.0)).unwrap().0, dose.0);
        close(TitrePerMass::needed(cells, dose, share(70.0)).unwrap().0, per_gram(1e9).0);
    }

    // Worked by hand: 2 L of culture at 1e10/mL in a set of 8 L is 2.5e9/mL.
    #[test]
    fn a_part_is_diluted_in_its_set() {
        let mix = per_ml(1e10).in_set(Volume::new::<liter>(2.0), Volume::new::<liter>(8.0)).unwrap();
        close(mix.0, per_ml(2.5e9).0);
        let powder = per_gram(5e9).stirred_into(Mass::new::<gram>(400.0), Volume::new::<liter>(2.0)).unwrap();
        close(powder.0, per_ml(1e9).0);
        let dry = per_gram(5e9).in_set(Mass::new::<gram>(100.0), Mass::new::<gram>(500.0)).unwrap();
        close(dry.0, per_gram(1e9).0);
    }

    #[test]
    fn a_part_larger_than_its_set_is_refused() {
        let set = per_ml(1e10).in_set(Volume::new::<liter>(8.0), Volume::new::<liter>(2.0));
        assert_eq!(set, Err(Error::NotAShare { argument: Argument::PartOfSet, value: 4.0 }));
        let none = per_ml(1e10).in_set(Volume::new::<liter>(0.0), Volume::new::<liter>(2.0));
        assert_eq!(none, Err(Error::NotPositive { argument: Argument::Part, value: 0.0 }));
    }

    #[test]
    fn density_turns_one_titre_into_the_other() {
        let density = Density::new(Mass::new::<kilogram>(1.25) / Volume::new::<liter>(1.0)).unwrap();
        close(Titre::PerMass(per_gram(4e9)).per_volume(Some(density)).unwrap().0, per_ml(5e9).0);
        close(Titre::PerVolume(per_ml(5e9)).per_mass(Some(density)).unwrap().0, per_gram(4e9).0);
        assert_eq!(Titre::PerVolume(per_ml(5e9)).per_volume(None), Ok(per_ml(5e9)));
        let needed = Err(Error::Needed { argument: Argument::Density });
        assert_eq!(Titre::PerMass(per_gram(4e9)).per_volume(None), needed);
    }

    #[test]
    fn nothing_recovered_is_no_cells_and_no_dose() {
        let dose = grams_per_kg(5.0, 6_000.0);
        assert_eq!(per_gram(1e9).cells(dose, share(0.0)).get().value.to_bits(), 0);
        let wanted = PerSeed::new(base!(CellsPerSeed, 1e5)).unwrap();
        let error = Err(Error::NotPositive { argument: Argument::Recovery, value: 0.0 });
        assert_eq!(per_gram(1e9).dose_for(wanted, share(0.0)), error);
    }

    #[test]
    fn a_titre_must_be_a_number_above_nothing() {
        assert!(TitrePerMass::new(base!(CellsPerMass, f64::NAN)).is_err());
        assert!(TitrePerVolume::new(base!(CellsPerVolume, 0.0)).is_err());
        assert!(TitrePerVolume::new(base!(CellsPerVolume, 1e31)).is_err());
    }
}
