//! What did I really apply?
//!
//! From what the scales and the tank showed before and after: how much was used, on how much seed, at
//! what rate, and whether the readings are fine enough to say that it was right.
//!
//! A reading is good to half a division either way, whatever lies in that range being equally likely; so
//! its standard uncertainty is resolution / √12, and independent readings combine in quadrature. What is
//! reported is expanded by k = 2, about 95 % coverage. Only the resolution is counted: a scale that is
//! wrong, or seed that drifts in moisture, is not in it.
//!
//! ```
//! use hilum::account::{Achieved, Measured, Reading, Verdict};
//! use hilum::quantity::{Mass, Ratio, Volume, mass::kilogram, ratio::percent, volume::liter};
//! use hilum::rate::PerMass;
//! use hilum::seed::Share;
//! # fn main() -> Result<(), hilum::Error> {
//! // Worked by hand: 180.0 − 42.5 + 0 − 2.5 = 135 L on 41,000 kg is 329.3 mL/100 kg, 1.3 % above 325.
//! let tank = |liters| Reading::new(Volume::new::<liter>(liters), Volume::new::<liter>(0.5));
//! let used = Measured::used(tank(180.0)?, tank(42.5)?, &[], &[tank(2.5)?])?;
//! let seed = Measured::from(Reading::new(Mass::new::<kilogram>(41_000.0), Mass::new::<kilogram>(20.0))?);
//! let achieved = Achieved::on(used, seed)?;
//! let target = PerMass::new(Volume::new::<liter>(0.325) / Mass::new::<kilogram>(100.0))?;
//! assert!((achieved.deviation(target) - 0.013_133).abs() < 1e-6);
//! let tolerance = Share::new(Ratio::new::<percent>(5.0))?;
//! assert_eq!(achieved.verdict(target, tolerance), Verdict::OnTarget);
//! # Ok(()) }
//! ```
//!
//! # References
//! JCGM 100:2008 (GUM) F.2.2.1 for the resolution of a display, 5.1.6 for quotients: quoted from memory.
//! NIST/SEMATECH e-Handbook of Statistical Methods 2.5.7: k = 2 approximates 95 % coverage.

use core::marker::PhantomData;

use crate::error::{Argument, Error, not_negative, positive};
use crate::math::sqrt;
use crate::quantity::{Mass, Volume, base};
use crate::rate::{Density, Dry, Liquid, PerMass, Substance};
use crate::seed::Share;
use crate::slack::SLACK;

/// How many standard uncertainties are reported: about 95 % coverage.
pub const COVERAGE: f64 = 2.0;

/// How far an applied rate may be from its target before it is set right: 5 %. Common practice.
pub const USUAL_TOLERANCE: Share = Share(0.05);

/// What is read off a scale, a meter or a gauge: a volume or a mass.
pub trait Quantity: Copy + sealed::Quantity {
    /// The product that is measured so.
    type Product: Substance<Amount = Self>;
}
impl Quantity for Volume {
    type Product = Liquid;
}
impl Quantity for Mass {
    type Product = Dry;
}

mod sealed {
    /// To base units and back.
    pub trait Quantity {
        fn to_base(self) -> f64;
        fn of_base(base: f64) -> Self;
    }
    impl Quantity for super::Volume {
        fn to_base(self) -> f64 {
            self.value
        }
        fn of_base(base: f64) -> Self {
            super::base!(Self, base)
        }
    }
    impl Quantity for super::Mass {
        fn to_base(self) -> f64 {
            self.value
        }
        fn of_base(base: f64) -> Self {
            super::base!(Self, base)
        }
    }
}

/// What was read, and the smallest step the instrument shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading<Q> {
    shown: f64,
    resolution: f64,
    of: PhantomData<Q>,
}

impl<Q: Quantity> Reading<Q> {
    /// A resolution of 0 says that the amount is known exactly.
    ///
    /// # Errors
    /// When either is not finite or negative.
    pub fn new(shown: Q, resolution: Q) -> Result<Self, Error> {
        Ok(Self {
            shown: not_negative(Argument::Reading, shown.to_base())?,
            resolution: not_negative(Argument::Resolution, resolution.to_base())?,
            of: PhantomData,
        })
    }

    /// Variance of a uniform error of half a division either way.
    pub(crate) const fn variance(resolution: f64) -> f64 {
        resolution * resolution / 12.0
    }
}

/// An amount, and how sure the readings make it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured<Q> {
    pub(crate) amount: f64,
    pub(crate) variance: f64,
    pub(crate) of: PhantomData<Q>,
}

impl<Q: Quantity> From<Reading<Q>> for Measured<Q> {
    fn from(reading: Reading<Q>) -> Self {
        Self::of(reading.shown, Reading::<Q>::variance(reading.resolution))
    }
}

impl<Q: Quantity> Measured<Q> {
    pub(crate) const fn of(amount: f64, variance: f64) -> Self {
        Self { amount, variance, of: PhantomData }
    }

    /// The amount.
    #[must_use]
    pub fn get(self) -> Q {
        Q::of_base(self.amount)
    }

    /// Its expanded uncertainty, k = 2.
    #[must_use]
    pub fn uncertainty(self) -> Q {
        Q::of_base(COVERAGE * sqrt(self.variance))
    }

    /// Drawn from a tank or a bin and put to use: start − end + added − lost. Lost is what was drawn but
    /// not applied: priming, flushing, catches not returned.
    ///
    /// # Errors
    /// [`Error::Negative`] when more was left and lost than there was.
    pub fn used(
        start: Reading<Q>,
        end: Reading<Q>,
        added: &[Reading<Q>],
        lost: &[Reading<Q>],
    ) -> Result<Self, Error> {
        let shown = |of: &[Reading<Q>]| of.iter().map(|reading| reading.shown).sum::<f64>();
        let amount = start.shown - end.shown + shown(added) - shown(lost);
        let variance = [start, end]
            .iter()
            .chain(added)
            .chain(lost)
            .map(|reading| Reading::<Q>::variance(reading.resolution))
            .sum();
        not_negative(Argument::Used, amount).map(|amount| Self::of(amount, variance))
    }

    /// One product's share of what was used of a mix.
    #[must_use]
    pub fn share(self, share: Share) -> Self {
        Self::of(self.amount * share.0, self.variance * share.0 * share.0)
    }
}

impl Measured<Volume> {
    /// The same liquid, weighed: volume × density.
    #[must_use]
    pub fn weighed(self, density: Density) -> Measured<Mass> {
        Measured::of(self.amount * density.0, self.variance * density.0 * density.0)
    }
}

impl Measured<Mass> {
    /// The same liquid, by volume: mass / density.
    #[must_use]
    pub fn measured(self, density: Density) -> Measured<Volume> {
        Measured::of(self.amount / density.0, self.variance / density.0 / density.0)
    }

    /// Seed before treating, from its weight afterwards: the liquids' mass comes off. That a liquid's
    /// reading enters a rate twice then is neglected: it is small by the liquid's share of the seed.
    ///
    /// # Errors
    /// When the liquids weigh as much as the seed or more.
    pub fn before_treating(self, liquids: &[Measured<Mass>]) -> Result<Self, Error> {
        let (mass, variance) =
            liquids.iter().fold((self.amount, self.variance), |(mass, variance), liquid| {
                (mass - liquid.amount, variance + liquid.variance)
            });
        positive(Argument::SeedMass, mass).map(|mass| Self::of(mass, variance))
    }
}

/// Whether the right rate was applied.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Less than the tolerance allows, whatever the readings' resolution hides.
    Low,
    /// Within the tolerance, whatever the readings' resolution hides.
    OnTarget,
    /// More than the tolerance allows, whatever the readings' resolution hides.
    High,
    /// The border of the tolerance lies within what the resolution hides.
    CannotTell,
}

/// A rate that was achieved, and how sure the readings make it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Achieved<S> {
    rate: PerMass<S>,
    uncertainty: PerMass<S>,
}

impl<S: Substance> Achieved<S> {
    /// The rate on seed as it was before treating: used / seed, with
    /// u(rate) = √(u(used)² + (rate · u(seed))²) / seed. The seed's uncertainty must be small beside its mass.
    ///
    /// # Errors
    /// When there is no seed.
    pub fn on<Q: Quantity<Product = S>>(used: Measured<Q>, seed: Measured<Mass>) -> Result<Self, Error> {
        let kg = positive(Argument::SeedMass, seed.amount)?;
        let rate = used.amount / kg;
        let uncertainty = sqrt(used.variance + rate * rate * seed.variance) / kg;
        Ok(Self { rate: PerMass::of(rate), uncertainty: PerMass::of(COVERAGE * uncertainty) })
    }

    /// The rate.
    #[must_use]
    pub const fn rate(self) -> PerMass<S> {
        self.rate
    }

    /// Its expanded uncertainty, k = 2.
    #[must_use]
    pub fn uncertainty(self) -> S::PerMass {
        self.uncertainty.get()
    }

    /// By how much it differs from a target: achieved / target − 1.
    #[must_use]
    pub fn deviation(self, target: PerMass<S>) -> f64 {
        self.rate.difference(target)
    }

    /// Whether it lies within a tolerance of a target.
    #[must_use]
    pub fn verdict(self, target: PerMass<S>, tolerance: Share) -> Verdict {
        let (off, unsure) = (self.deviation(target), self.uncertainty.0 / target.0);
        let border = tolerance.0 + SLACK;
        if off - unsure > border {
            Verdict::High
        } else if off + unsure < -border {
            Verdict::Low
        } else if off.abs() + unsure <= border {
            Verdict::OnTarget
        } else {
            Verdict::CannotTell
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Ratio;
    use crate::quantity::mass::kilogram;
    use crate::quantity::ratio::percent;
    use crate::quantity::volume::{liter, milliliter};

    fn close(got: f64, expected: f64, relative: f64) {
        assert!((got / expected - 1.0).abs() < relative, "{got} is not {expected}");
    }
    fn liters(shown: f64, resolution: f64) -> Reading<Volume> {
        Reading::new(Volume::new::<liter>(shown), Volume::new::<liter>(resolution)).unwrap()
    }
    fn kilograms(shown: f64, resolution: f64) -> Reading<Mass> {
        Reading::new(Mass::new::<kilogram>(shown), Mass::new::<kilogram>(resolution)).unwrap()
    }
    fn per_100_kg(ml: f64) -> PerMass<Liquid> {
        PerMass::new(Volume::new::<milliliter>(ml) / Mass::new::<kilogram>(100.0)).unwrap()
    }
    fn tolerance(of: f64) -> Share {
        Share::new(Ratio::new::<percent>(of)).unwrap()
    }
    fn density(kg_per_liter: f64) -> Density {
        Density::new(Mass::new::<kilogram>(kg_per_liter) / Volume::new::<liter>(1.0)).unwrap()
    }

    // EURACHEM/CITAC guide "Quantifying Uncertainty in Analytical Measurement", app. E.1 (example read in a
    // copy without a title page, the title from memory): a value between
    // 7 and 10, any part of the range as likely, has u = 1.5/√3 = 0.87. A reading of 8.5 with a division of 3.
    #[test]
    fn a_reading_is_uniform_over_its_division() {
        let reading = Measured::from(kilograms(8.5, 3.0));
        assert!((reading.uncertainty().get::<kilogram>() / COVERAGE - 0.87).abs() < 0.005);
    }

    // Python package uncertainties 3.2.3: (180 − 42.5 + 60 − 2.5 L, each ± r/√12 with r 0.5, 0.5, 1, 0.1) over
    // 41,000 kg ± 20/√12, prints 0.00475609756097561 ± 8.677833145578958e-06 L/kg.
    #[test]
    fn readings_combine_as_a_reference_library_combines_them() {
        let used =
            Measured::used(liters(180.0, 0.5), liters(42.5, 0.5), &[liters(60.0, 1.0)], &[liters(2.5, 0.1)])
                .unwrap();
        let achieved = Achieved::on(used, kilograms(41_000.0, 20.0).into()).unwrap();
        close(achieved.rate().0 * 1e3, 0.004_756_097_560_975_61, 1e-14);
        close(achieved.uncertainty().value * 1e3 / COVERAGE, 8.677_833_145_578_958e-6, 1e-12);
    }

    // Worked by hand: 20,000 kg weighed after treating, with 60 kg and 40 L × 1.25 kg/L on it, were 19,890 kg.
    #[test]
    fn the_liquids_come_off_seed_weighed_afterwards() {
        let liquid = Measured::from(liters(40.0, 0.0)).weighed(density(1.25));
        let seed = Measured::from(kilograms(20_000.0, 0.0));
        let before = seed.before_treating(&[kilograms(60.0, 0.0).into(), liquid]).unwrap();
        close(before.get().get::<kilogram>(), 19_890.0, 1e-15);
        assert!(Measured::from(kilograms(50.0, 0.0)).before_treating(&[liquid]).is_err());
    }

    // Exactly known amounts, 5 % tolerance of 300 mL/100 kg: 285 and 315 are still right.
    #[test]
    fn exact_readings_always_give_an_answer() {
        let verdict = |ml: f64| {
            let used = Measured::from(liters(ml / 1000.0, 0.0));
            let achieved = Achieved::on(used, kilograms(100.0, 0.0).into()).unwrap();
            achieved.verdict(per_100_kg(300.0), tolerance(5.0))
        };
        assert_eq!(verdict(284.9), Verdict::Low);
        assert_eq!(verdict(285.0), Verdict::OnTarget);
        assert_eq!(verdict(315.0), Verdict::OnTarget);
        assert_eq!(verdict(315.1), Verdict::High);
        assert_eq!(verdict(0.0), Verdict::Low);
    }

    // Worked by hand: 30 L of 10,000 kg is the target; two readings to 1 L leave 2 × √(2/12) L = 0.816 L, 2.7 %,
    // open: within 5 % that decides nothing, within 2 % it does. 33 L is 10 % high beyond doubt.
    #[test]
    fn a_coarse_gauge_cannot_tell() {
        let verdict = |used: f64, of: f64| {
            let used = Measured::used(liters(100.0, 1.0), liters(100.0 - used, 1.0), &[], &[]).unwrap();
            let achieved = Achieved::on(used, kilograms(10_000.0, 0.0).into()).unwrap();
            achieved.verdict(per_100_kg(300.0), tolerance(of))
        };
        assert_eq!(verdict(30.0, 5.0), Verdict::OnTarget);
        assert_eq!(verdict(30.0, 2.0), Verdict::CannotTell);
        assert_eq!(verdict(31.0, 5.0), Verdict::CannotTell);
        assert_eq!(verdict(33.0, 5.0), Verdict::High);
        assert_eq!(verdict(27.0, 5.0), Verdict::Low);
    }

    #[test]
    fn the_usual_tolerance_is_five_percent() {
        assert_eq!(USUAL_TOLERANCE, tolerance(5.0));
    }

    #[test]
    fn a_product_has_its_share_of_the_mix() {
        let mix = Measured::from(liters(50.0, 1.0));
        let product = mix.share(tolerance(64.0));
        close(product.get().get::<liter>(), 32.0, 1e-15);
        close(product.uncertainty().value, mix.uncertainty().value * 0.64, 1e-15);
    }

    // Worked by hand: a division of 1 L is known to 2/√12 L, which weighs 1.04 times as many kg, and the other way
    // round. Seed to 2 kg less liquid to 1 kg is known to 2 × √(5/12) kg = 1.290994 kg.
    #[test]
    fn uncertainty_goes_through_density_and_difference() {
        let mix = Measured::from(liters(50.0, 1.0));
        let weighed = mix.weighed(density(1.04)).measured(density(1.04));
        close(weighed.get().value, mix.get().value, 1e-15);
        let of_a_division = 2.0 / sqrt(12.0);
        close(mix.weighed(density(1.04)).uncertainty().get::<kilogram>(), of_a_division * 1.04, 1e-14);
        let by_volume = Measured::from(kilograms(52.0, 1.0)).measured(density(1.04));
        close(by_volume.get().get::<liter>(), 50.0, 1e-14);
        close(by_volume.uncertainty().get::<liter>(), of_a_division / 1.04, 1e-14);
        let seed = Measured::from(kilograms(20_000.0, 2.0));
        let before = seed.before_treating(&[kilograms(60.0, 1.0).into()]).unwrap();
        close(before.uncertainty().get::<kilogram>(), 1.290_994, 1e-6);
    }

    #[test]
    fn what_cannot_be_is_refused() {
        assert!(Reading::new(Volume::new::<liter>(-1.0), Volume::new::<liter>(1.0)).is_err());
        assert!(Reading::new(Volume::new::<liter>(1.0), Volume::new::<liter>(f64::NAN)).is_err());
        let more = Measured::used(liters(10.0, 1.0), liters(12.0, 1.0), &[], &[]);
        assert!(matches!(more, Err(Error::Negative { argument: Argument::Used, .. })));
        let none = Achieved::on(Measured::from(liters(10.0, 1.0)), kilograms(0.0, 1.0).into());
        assert!(matches!(none, Err(Error::NotPositive { argument: Argument::SeedMass, .. })));
    }
}
