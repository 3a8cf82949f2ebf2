//! How fast do I pump?
//!
//! A treater meters liquid onto a stream of seed. The pump follows the seed: [`SeedFlow::liquid`] for a
//! continuous treater, [`BatchTreater::per_charge`] for one that works charge by charge. A catch
//! ([`caught_volume`], [`caught_mass`]) shows what the pump really delivers, a [`PumpCurve`] which setting
//! delivers what is wanted. While it runs, a [`monitor`] watches the rate.

mod curve;
pub mod monitor;

pub use curve::{CurvePoint, PumpCurve, PumpSetting, Setting};

use crate::error::{Argument, Error, given, positive};
use crate::quantity::{Mass, MassFlow, Time, Volume, VolumeFlow, base};
use crate::rate::{Density, RatePerMass};
use crate::seed::Share;
use crate::slack;

checked! {
    /// How fast seed runs through the treater.
    SeedFlow(MassFlow), positive, SeedFlow
}
checked! {
    /// How fast a pump delivers.
    Flow(VolumeFlow), positive, LiquidFlow
}

impl SeedFlow {
    /// The flow of liquid that puts a slurry on this flow of seed: slurry × seed flow.
    ///
    /// ```
    /// use hilum::quantity::{Mass, Time, Volume, mass::{hundredweight, pound}, time::minute, volume::fluid_ounce};
    /// use hilum::rate::{PerMass, RatePerMass};
    /// use hilum::treater::SeedFlow;
    /// # fn main() -> Result<(), hilum::Error> {
    /// // Worked by hand: 2.4 fl oz per 60-lb bushel is 4 fl oz/cwt; 500 bu/h is 300 cwt/h, so 20 fl oz/min.
    /// let slurry: RatePerMass = PerMass::new(Volume::new::<fluid_ounce>(4.0) / Mass::new::<hundredweight>(1.0))?;
    /// let seed = SeedFlow::new(Mass::new::<pound>(500.0) / Time::new::<minute>(1.0))?;
    /// let flow = seed.liquid(slurry).get() * Time::new::<minute>(1.0);
    /// assert!((flow.get::<fluid_ounce>() - 20.0).abs() < 1e-12);
    /// # Ok(()) }
    /// ```
    #[must_use]
    pub fn liquid(self, slurry: RatePerMass) -> Flow {
        Flow(slurry.0 * self.0)
    }

    /// The flow that a day can count on: flow × utilisation, the share of the time that seed really runs.
    ///
    /// The pump runs at the full flow; this is for the clock.
    ///
    /// # Errors
    /// When the utilisation is 0.
    #[inline]
    pub fn effective(self, utilisation: Share) -> Result<Self, Error> {
        positive(Argument::Utilisation, utilisation.0).map(|share| Self(self.0 * share))
    }

    /// The time that a mass of seed takes: mass / flow.
    ///
    /// # Errors
    /// When the mass is not finite or not more than 0.
    #[inline]
    pub fn time_for(self, seed: Mass) -> Result<Time, Error> {
        given(Argument::SeedMass, seed.value).map(|kg| base!(Time, kg / self.0))
    }
}

impl Flow {
    /// The rate that this flow puts on a flow of seed: flow / seed flow.
    #[must_use]
    pub fn rate(self, seed: SeedFlow) -> RatePerMass {
        RatePerMass::of(self.0 / seed.0)
    }

    /// By how much a measured flow differs from the target: measured / target − 1.
    #[must_use]
    pub fn deviation(self, target: Self) -> f64 {
        self.0 / target.0 - 1.0
    }

    /// Whether a measured flow is off the target by more than a tolerance (with a slack of 1e-9).
    #[must_use]
    pub fn off_target(self, target: Self, tolerance: Share) -> bool {
        self.deviation(target).abs() > tolerance.0 + slack::SLACK
    }
}

/// A treater that takes a charge of seed, puts the liquid on, and turns it out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BatchTreater {
    charge: f64,
    cycle: f64,
}

impl BatchTreater {
    /// So much seed every so often.
    ///
    /// # Errors
    /// When charge or cycle is not finite or not more than 0.
    #[inline]
    pub fn new(charge: Mass, cycle: Time) -> Result<Self, Error> {
        Ok(Self {
            charge: positive(Argument::Charge, charge.value)?,
            cycle: positive(Argument::Cycle, cycle.value)?,
        })
    }

    /// The liquid for one charge: slurry × charge.
    ///
    /// ```
    /// use hilum::quantity::{Mass, Time, Volume, mass::kilogram, time::second, volume::milliliter};
    /// use hilum::rate::{PerMass, RatePerMass};
    /// use hilum::treater::BatchTreater;
    /// # fn main() -> Result<(), hilum::Error> {
    /// // Worked by hand: 325 mL/100 kg on 60 kg is 195 mL; 60 kg every 45 s is 80 kg/min.
    /// let slurry: RatePerMass = PerMass::new(Volume::new::<milliliter>(325.0) / Mass::new::<kilogram>(100.0))?;
    /// let treater = BatchTreater::new(Mass::new::<kilogram>(60.0), Time::new::<second>(45.0))?;
    /// assert!((treater.per_charge(slurry).get::<milliliter>() - 195.0).abs() < 1e-10);
    /// let in_a_minute = treater.seed_flow().get() * Time::new::<second>(60.0);
    /// assert!((in_a_minute.get::<kilogram>() - 80.0).abs() < 1e-12);
    /// # Ok(()) }
    /// ```
    #[must_use]
    pub fn per_charge(self, slurry: RatePerMass) -> Volume {
        base!(Volume, slurry.0 * self.charge)
    }

    /// The flow of seed: charge / cycle.
    #[must_use]
    #[inline]
    pub fn seed_flow(self) -> SeedFlow {
        SeedFlow(self.charge / self.cycle)
    }
}

/// Seed that is weighed in dumps of the same mass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dumps {
    dump: f64,
}

impl Dumps {
    /// So much seed at a dump.
    ///
    /// # Errors
    /// When the mass is not finite or not more than 0.
    #[inline]
    pub fn of(dump: Mass) -> Result<Self, Error> {
        positive(Argument::Dump, dump.value).map(|dump| Self { dump })
    }

    /// The flow of seed from counting: mass of a dump × dumps / time.
    ///
    /// ```
    /// use hilum::quantity::{Mass, Time, Volume, mass::{hundredweight, pound}, time::minute, volume::fluid_ounce};
    /// use hilum::rate::{PerMass, RatePerMass};
    /// use hilum::treater::Dumps;
    /// # fn main() -> Result<(), hilum::Error> {
    /// // Worked by hand: 10 lb, 6 dumps a minute, 5 fl oz/cwt: 0.5 fl oz per dump, 3 fl oz/min.
    /// let slurry: RatePerMass = PerMass::new(Volume::new::<fluid_ounce>(5.0) / Mass::new::<hundredweight>(1.0))?;
    /// let dumps = Dumps::of(Mass::new::<pound>(10.0))?;
    /// assert!((dumps.liquid(slurry).get::<fluid_ounce>() - 0.5).abs() < 1e-12);
    /// let flow = dumps.seed_flow(6, Time::new::<minute>(1.0))?.liquid(slurry);
    /// assert!(((flow.get() * Time::new::<minute>(1.0)).get::<fluid_ounce>() - 3.0).abs() < 1e-12);
    /// # Ok(()) }
    /// ```
    ///
    /// # Errors
    /// When there was no dump, or the time is not finite or not more than 0.
    #[inline]
    pub fn seed_flow(self, dumps: u32, time: Time) -> Result<SeedFlow, Error> {
        let dumps = positive(Argument::Dumps, f64::from(dumps))?;
        positive(Argument::DumpTime, time.value).map(|s| SeedFlow(self.dump * dumps / s))
    }

    /// The liquid for one dump: slurry × mass of a dump.
    #[must_use]
    pub fn liquid(self, slurry: RatePerMass) -> Volume {
        base!(Volume, slurry.0 * self.dump)
    }
}

/// The flow that a catch test measured: volume / time.
///
/// ```
/// use hilum::quantity::{Time, Volume, time::{minute, second}, volume::milliliter};
/// use hilum::treater::{Flow, caught_volume};
/// # fn main() -> Result<(), hilum::Error> {
/// // Worked by hand: 61 mL in 30 s against 118.294 mL/min is 122 / 118.294 − 1 = +3.13 %.
/// let caught = caught_volume(Volume::new::<milliliter>(61.0), Time::new::<second>(30.0))?;
/// let target = Flow::new(Volume::new::<milliliter>(118.294) / Time::new::<minute>(1.0))?;
/// assert!((caught.deviation(target) - 0.0313).abs() < 5e-5);
/// # Ok(()) }
/// ```
///
/// # Errors
/// When volume or time is not finite or not more than 0.
#[inline]
pub fn caught_volume(volume: Volume, time: Time) -> Result<Flow, Error> {
    let m3 = given(Argument::CaughtVolume, volume.value)?;
    given(Argument::CatchTime, time.value).map(|s| Flow(m3 / s))
}

/// The flow that a weighed catch measured: mass / (density × time).
///
/// # Errors
/// When mass or time is not finite or not more than 0.
#[inline]
pub fn caught_mass(mass: Mass, density: Density, time: Time) -> Result<Flow, Error> {
    let kg = given(Argument::CaughtMass, mass.value)?;
    given(Argument::CatchTime, time.value).map(|s| Flow(kg / (density.0 * s)))
}

/// What a pump can deliver; `None` where nothing is known.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct PumpRange {
    /// The least.
    pub min: Option<Flow>,
    /// The most.
    pub max: Option<Flow>,
}

/// How a wanted flow lies to a pump's range.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Reach {
    /// The pump can do it.
    Within,
    /// Less than the pump can do, by more than 1e-9.
    TooSlow,
    /// More than the pump can do, by more than 1e-9.
    TooFast,
}

impl PumpRange {
    /// Whether the pump can deliver a flow.
    #[must_use]
    pub fn reach(self, wanted: Flow) -> Reach {
        if self.min.is_some_and(|min| slack::below(wanted.0, min.0)) {
            Reach::TooSlow
        } else if self.max.is_some_and(|max| slack::above(wanted.0, max.0)) {
            Reach::TooFast
        } else {
            Reach::Within
        }
    }
}

#[cfg(test)]
mod tests;
