//! What one treatment puts on one order's seed, whatever basis its label states the dose in.

use alloc::format;
use alloc::string::String;

use hilum::quantity::{CellsPerSeed, Length, Mass, Measure, Volume, VolumePerMass, VolumePerSeed};
use hilum::rate::{Active, Agreement, CellCount, Dry, Liquid, PerArea, PerMass, PerSeed, Substance};
use hilum::seed::{SeedSize, SeedUnit};
use hilum::text::{Bases, Measured, TextError, Written};
use hilum::unit::Powers;
use hilum::viability::Titre;

use super::out::Written as _;
use crate::document::{Out, Units};
use crate::model::ask::{Asked, in_words};
use crate::model::order::{Order, Seed};
use crate::model::treatment::{Stated, Treatment};
use crate::problem::quoted;

/// A dose of product, in the measure it is handled by: a product in a tank by volume, one without by mass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Rate {
    Liquid(PerMass<Liquid>),
    Dry(PerMass<Dry>),
}

/// An amount of product.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Amount {
    Liquid(Volume),
    Dry(Mass),
}

/// Whether a statement depends on the seed's size when it is turned into a dose per mass, or per seed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Basis {
    Mass,
    Seed,
}

/// Why a statement is no dose for an order.
#[derive(Clone, Debug)]
pub(crate) enum Refused {
    /// Something is wrong with the statement itself.
    Statement(String),
    /// The product's density is needed.
    Density(&'static str),
}

impl From<hilum::Error> for Refused {
    fn from(error: hilum::Error) -> Self {
        match error {
            hilum::Error::Needed { argument: hilum::Argument::Density } => {
                Self::Density("to go between volume and mass of this product")
            }
            other => Self::Statement(crate::model::ask::refusal(other)),
        }
    }
}

/// What a statement is turned into a dose with.
#[derive(Clone, Copy)]
pub(crate) struct Label<'a, 'j> {
    pub(crate) treatment: &'a Treatment<'j>,
    pub(crate) order: &'a Order<'j>,
    pub(crate) seed: &'a Seed,
    /// Of the mix, for a dose in cells.
    pub(crate) titre: Option<Titre>,
}

impl Label<'_, '_> {
    /// What `unit` and `bu` mean on this label, for this order.
    pub(crate) fn bases(&self) -> Bases {
        let unit = self.treatment.label_unit.map(SeedUnit::Count);
        let own = self.order.bases.unit.filter(|unit| matches!(unit, SeedUnit::Count(_)));
        Bases { unit: unit.or(own), bushel: self.treatment.label_bushel.or(self.order.bases.bushel) }
    }

    /// The dose that governs.
    pub(crate) fn governing(&self) -> Result<(Rate, Basis), Refused> {
        match self.treatment.stated {
            Stated::Product(asked) => self.product(&asked),
            Stated::Active(asked, content) => {
                let (active, basis) =
                    self.per_mass::<Active>(&asked.written, "a dose of active ingredient, mass")?;
                let rate = if self.treatment.tank.is_some() {
                    Rate::Liquid(active.in_liquid(content.per_volume(self.treatment.density)?))
                } else {
                    Rate::Dry(active.in_dry(content.by_mass(self.treatment.density)?)?)
                };
                Ok((rate, basis))
            }
            Stated::Cells(asked) => self.cells(&asked),
        }
    }

    /// A statement of product, in the measure that it is handled by.
    pub(crate) fn product(&self, asked: &Asked<'_>) -> Result<(Rate, Basis), Refused> {
        let (_, powers) = self.measured(&asked.written)?;
        let by_volume = [VolumePerMass::POWERS, VolumePerSeed::POWERS, Length::POWERS].contains(&powers);
        let (density, in_tank) = (self.treatment.density, self.treatment.tank.is_some());
        if by_volume {
            let (rate, basis) = self.per_mass::<Liquid>(&asked.written, "a dose, volume")?;
            return match (in_tank, density) {
                (true, _) => Ok((Rate::Liquid(rate), basis)),
                (false, Some(density)) => Ok((Rate::Dry(rate.weighed(density)), basis)),
                (false, None) => {
                    Err(Refused::Density("because the dose is a volume and the product goes into no tank"))
                }
            };
        }
        let (rate, basis) = self.per_mass::<Dry>(&asked.written, "a dose, volume or mass")?;
        match (in_tank, density) {
            (false, _) => Ok((Rate::Dry(rate), basis)),
            (true, Some(density)) => Ok((Rate::Liquid(rate.measured(density)), basis)),
            (true, None) => {
                Err(Refused::Density("because the dose is a mass and the product goes into a tank"))
            }
        }
    }

    /// A dose in cells on the seed, after recovery.
    fn cells(&self, asked: &Asked<'_>) -> Result<(Rate, Basis), Refused> {
        let (value, powers) = self.measured(&asked.written)?;
        if powers != CellsPerSeed::POWERS {
            let message = format!("gives {}, where cells per seed is needed", in_words(powers));
            return Err(Refused::Statement(message));
        }
        let cells = PerSeed::<CellCount>::new(CellsPerSeed::from_base(value))?;
        let (Some(titre), Some(living)) = (self.titre, &self.treatment.living) else {
            return Err(Refused::Statement("needs a titre; give the product's living titre".into()));
        };
        let density = self.treatment.density;
        let rate = if self.treatment.tank.is_some() {
            let dose = titre.per_volume(density)?.dose_for(cells, living.recovery);
            Rate::Liquid(self.of_cells(dose)?)
        } else {
            Rate::Dry(self.of_cells(titre.per_mass(density)?.dose_for(cells, living.recovery))?)
        };
        Ok((rate, Basis::Seed))
    }

    fn of_cells<S: Substance>(&self, dose: Result<PerSeed<S>, hilum::Error>) -> Result<PerMass<S>, Refused> {
        match dose {
            Ok(dose) => Ok(dose.per_mass(self.seed.size)),
            Err(_) => Err(Refused::Statement("cannot be reached: the recovery is 0 %; check it".into())),
        }
    }

    /// Number of base units and dimension, with the label's own units.
    fn measured(&self, written: &Written) -> Result<(f64, Powers), Refused> {
        match written.measured(&self.bases()) {
            // A percentage would pass for a mass per mass.
            Ok(Measured::Quantity { value, powers }) if written.unit.below.is_some() => Ok((value, powers)),
            Ok(_) => Err(Refused::Statement(
                "is no dose; write an amount per mass, bushel, unit, seed or area".into(),
            )),
            Err(TextError::UnitNotGiven) => Err(Refused::Statement(format!(
                "is per unit, but neither label_unit nor the unit of order {} says how many seeds that is; give label_unit",
                quoted(&self.order.doc.order)
            ))),
            Err(TextError::BushelNotGiven) => Err(Refused::Statement(format!(
                "is per bushel, but neither label_bushel nor the bushel of order {} says what that weighs; give label_bushel",
                quoted(&self.order.doc.order)
            ))),
            Err(error) => Err(Refused::Statement(format!("{error}"))),
        }
    }

    /// A statement of a substance per mass of seed, and what its basis is.
    fn per_mass<S: Stateable>(
        &self,
        written: &Written,
        wanted: &str,
    ) -> Result<(PerMass<S>, Basis), Refused> {
        let (value, powers) = self.measured(written)?;
        let size = self.seed.size;
        if powers == <S::PerMass as Measure>::POWERS {
            return Ok((PerMass::new(S::PerMass::from_base(value))?, Basis::Mass));
        }
        if powers == <S::PerSeed as Measure>::POWERS {
            return Ok((PerSeed::<S>::new(S::PerSeed::from_base(value))?.per_mass(size), Basis::Seed));
        }
        if powers == <S::PerArea as Measure>::POWERS {
            let per_area = PerArea::<S>::new(S::PerArea::from_base(value))?;
            let Some(sown) = self.seed.sown else {
                return Err(Refused::Statement(format!(
                    "is per area, but order {} does not say how it is sown; give its sowing",
                    quoted(&self.order.doc.order)
                )));
            };
            let basis = match self.order.sowing {
                Some(crate::model::order::Sowing::Mass(_)) => Basis::Mass,
                _ => Basis::Seed,
            };
            return Ok((per_area.per_seed(sown).per_mass(size), basis));
        }
        Err(Refused::Statement(format!(
            "gives {}, where {wanted} per mass of seed, bushel, unit, seed or area, is needed",
            in_words(powers)
        )))
    }
}

/// A substance whose doses documents state.
trait Stateable: Substance<PerMass: Measure, PerSeed: Measure, PerArea: Measure> {}
impl<S: Substance<PerMass: Measure, PerSeed: Measure, PerArea: Measure>> Stateable for S {}

impl Rate {
    /// Product for a mass of seed.
    pub(crate) fn needed(self, seed: Mass) -> Result<Amount, hilum::Error> {
        match self {
            Self::Liquid(rate) => rate.needed(seed).map(Amount::Liquid),
            Self::Dry(rate) => rate.needed(seed).map(Amount::Dry),
        }
    }

    /// Per mass of seed, as a plan writes it.
    pub(crate) fn out(self, units: Units) -> Out {
        match self {
            Self::Liquid(rate) => rate.out(units),
            Self::Dry(rate) => rate.out(units),
        }
    }

    /// stated / this − 1.
    pub(crate) fn differs(self, stated: Self) -> f64 {
        match (stated, self) {
            (Self::Liquid(stated), Self::Liquid(own)) => stated.difference(own),
            (Self::Dry(stated), Self::Dry(own)) => stated.difference(own),
            // Both are of one treatment, which is handled in one measure.
            _ => 0.0,
        }
    }

    /// The size at which a dose per mass and one per seed, here turned into one per mass, are the same.
    pub(crate) fn implied_size(self, per_seed: Self, size: SeedSize) -> Option<SeedSize> {
        match (self, per_seed) {
            (Self::Liquid(own), Self::Liquid(other)) => Some(own.implied_size(other.per_seed(size))),
            (Self::Dry(own), Self::Dry(other)) => Some(own.implied_size(other.per_seed(size))),
            _ => None,
        }
    }

    /// How far a statement of this dose lies from it.
    pub(crate) fn agreement(self, stated: Self) -> Agreement {
        match (stated, self) {
            (Self::Liquid(stated), Self::Liquid(own)) => stated.agreement(own),
            (Self::Dry(stated), Self::Dry(own)) => stated.agreement(own),
            _ => Agreement::Close,
        }
    }

    /// Whether this dose is above the most, beyond rounding.
    pub(crate) fn exceeds(self, most: Self) -> bool {
        match (self, most) {
            (Self::Liquid(own), Self::Liquid(most)) => own.exceeds(most),
            (Self::Dry(own), Self::Dry(most)) => own.exceeds(most),
            _ => false,
        }
    }

    /// Whether this dose is below the least, beyond rounding.
    pub(crate) fn falls_below(self, least: Self) -> bool {
        match (self, least) {
            (Self::Liquid(own), Self::Liquid(least)) => own.falls_below(least),
            (Self::Dry(own), Self::Dry(least)) => own.falls_below(least),
            _ => false,
        }
    }
}

impl Amount {
    /// In base units: m³ or kg.
    pub(crate) fn base(self) -> f64 {
        match self {
            Self::Liquid(volume) => volume.value,
            Self::Dry(mass) => mass.value,
        }
    }

    /// The same kind of amount, of another size.
    pub(crate) fn like(self, base: f64) -> Self {
        match self {
            Self::Liquid(_) => Self::Liquid(Volume::from_base(base)),
            Self::Dry(_) => Self::Dry(Mass::from_base(base)),
        }
    }

    /// As a plan writes it.
    pub(crate) fn out(self, units: Units) -> Out {
        match self {
            Self::Liquid(volume) => super::out::LIQUID.of(volume, units),
            Self::Dry(mass) => super::out::DRY.of(mass, units),
        }
    }
}
