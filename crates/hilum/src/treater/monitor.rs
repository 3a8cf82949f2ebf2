//! Is the rate right while we run?
//!
//! For controllers: feed a [`Monitor`] what the sensors show, as often as you like. It gives the rate over
//! its window and since the start, and says when that leaves its tolerance by more than the resolution of
//! the readings explains. Memory is constant: the last `N` readings.
//!
//! Scales are emptied and refilled, counters start again, hoppers get kicked, clocks are set. A step that
//! cannot be seed or liquid running (a total that falls, a tank that fills, a flow above the most
//! possible) is left out, for seed and liquid alike, so the rate stays that of the steps that could
//! be measured. A refill slower than what runs out cannot be told from running slowly.
//!
//! ```
//! use hilum::treater::monitor::{LiquidReading, LiquidSensor, Monitor, SeedReading, SeedSensor, Setup, Verdict};
//! use hilum::quantity::{Mass, Ratio, Time, Volume, VolumeFlow, MassFlow};
//! use hilum::quantity::{mass::kilogram, ratio::percent, time::{minute, second}, volume::milliliter};
//! use hilum::rate::PerMass;
//! use hilum::seed::Share;
//! # fn main() -> Result<(), hilum::Error> {
//! # let kg = Mass::new::<kilogram>;
//! # let ml = Volume::new::<milliliter>;
//! let setup = Setup {
//!     target: PerMass::new(ml(325.0) / kg(100.0))?,
//!     tolerance: Share::new(Ratio::new::<percent>(5.0))?,
//!     seed: SeedSensor::Total { resolution: kg(1.0), most: kg(400.0) / Time::new::<minute>(1.0) },
//!     liquid: LiquidSensor::Tank { resolution: ml(100.0), most: ml(2_000.0) / Time::new::<minute>(1.0) },
//! };
//! let mut monitor = Monitor::<16>::new(setup)?;
//! // Worked by hand: 250 kg/min at 358 mL/100 kg is 895 mL/min, 10 % high; after ten minutes 8,950 mL have
//! // run, and 325 mL/100 kg and 5 % allow 8,531 mL.
//! let mut report = None;
//! for minutes in [0.0, 5.0, 10.0] {
//!     let seed = SeedReading::Total(kg(250.0 * minutes));
//!     let tank = LiquidReading::Tank(ml(60_000.0 - 895.0 * minutes));
//!     report = Some(monitor.feed(Time::new::<minute>(minutes), seed, tank)?);
//! }
//! assert_eq!(report.map(|report| report.window.verdict), Some(Verdict::High));
//! # Ok(()) }
//! ```

mod run;

pub use crate::account::Verdict;
pub use run::Run;

use run::{Bounds, Point};

use crate::error::{Argument, Error, not_negative, positive};
use crate::quantity::{Mass, MassFlow, Time, Volume, VolumeFlow};
use crate::rate::RatePerMass;
use crate::seed::Share;

/// How the controller knows how much seed has run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SeedSensor {
    /// A counter or scale that shows all seed so far.
    Total {
        /// Its smallest step.
        resolution: Mass,
        /// More than this cannot run.
        most: MassFlow,
    },
    /// A flow meter or a calibrated wheel, read at the moment.
    Flow {
        /// Its smallest step.
        resolution: MassFlow,
        /// More than this cannot run.
        most: MassFlow,
    },
}

/// How the controller knows how much liquid has run. A tank that is weighed: mass / density.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LiquidSensor {
    /// A flow meter's total.
    Total {
        /// Its smallest step.
        resolution: Volume,
        /// More than this cannot run.
        most: VolumeFlow,
    },
    /// What is left in the tank.
    Tank {
        /// The smallest step of its scale or gauge.
        resolution: Volume,
        /// More than this cannot run.
        most: VolumeFlow,
    },
}

/// What the seed sensor shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SeedReading {
    /// All seed so far.
    Total(Mass),
    /// The flow at the moment.
    Flow(MassFlow),
}

/// What the liquid sensor shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LiquidReading {
    /// All liquid so far.
    Total(Volume),
    /// What is left in the tank.
    Tank(Volume),
}

/// What is wanted, and what the sensors can do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setup {
    /// The rate of the slurry.
    pub target: RatePerMass,
    /// How far off it may be.
    pub tolerance: Share,
    /// How seed is measured.
    pub seed: SeedSensor,
    /// How liquid is measured.
    pub liquid: LiquidSensor,
}

/// What became of the step since the reading before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// There was none before.
    First,
    /// It counts.
    Counted,
    /// Left out: the clock went back.
    ClockWentBack,
    /// Left out: the seed sensor started again or jumped.
    SeedJumped,
    /// Left out: the liquid sensor started again or jumped, or the tank was refilled.
    LiquidJumped,
}

/// What the readings so far say.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Report {
    /// Over the last `N` readings.
    pub window: Run,
    /// Since the first reading.
    pub since_start: Run,
    /// What became of this step.
    pub step: Step,
}

/// The rate while running, over the last `N` readings and since the start.
#[derive(Clone, Debug)]
pub struct Monitor<const N: usize> {
    watch: Watch,
    /// A ring: the oldest of the last `N` points lies at `next` once it is full.
    points: [Point; N],
}

/// All but the ring: one code for windows of every length.
#[derive(Clone, Debug)]
struct Watch {
    setup: Setup,
    bounds: Bounds,
    last: Option<Shown>,
    now: Point,
    next: usize,
}

/// One reading of both sensors, in base units.
#[derive(Clone, Copy, Debug)]
struct Shown {
    at: f64,
    seed: f64,
    liquid: f64,
}

impl<const N: usize> Monitor<N> {
    /// A window of one reading would span nothing: `N` of 0 or 1 does not compile.
    ///
    /// # Errors
    /// When a resolution is not finite or negative, or the most that can run is not more than 0.
    pub fn new(setup: Setup) -> Result<Self, Error> {
        const { assert!(N >= 2, "a window spans at least two readings") };
        Ok(Self { watch: Watch::new(setup)?, points: [Point::default(); N] })
    }

    /// Takes one reading of both sensors and says how things stand. `at` is the time on any clock.
    ///
    /// # Errors
    /// When a number is not finite or negative, or a reading is of another kind than its sensor. The
    /// monitor is then as it was before.
    pub fn feed(&mut self, at: Time, seed: SeedReading, liquid: LiquidReading) -> Result<Report, Error> {
        self.watch.feed(&mut self.points, at, seed, liquid)
    }
}

impl Watch {
    #[cfg_attr(target_os = "none", inline(never))]
    fn new(setup: Setup) -> Result<Self, Error> {
        Ok(Self { bounds: Bounds::new(&setup)?, setup, last: None, now: Point::default(), next: 0 })
    }

    fn feed(
        &mut self,
        points: &mut [Point],
        at: Time,
        seed: SeedReading,
        liquid: LiquidReading,
    ) -> Result<Report, Error> {
        let shown = Shown {
            at: not_negative(Argument::ReadingTime, at.value)?,
            seed: seed_shown(self.setup.seed, seed)?,
            liquid: liquid_shown(self.setup.liquid, liquid)?,
        };
        let step = match self.last {
            None => Step::First,
            Some(last) => self.count(last, shown),
        };
        if step == Step::First {
            points.fill(self.now);
        }
        self.last = Some(shown);
        let oldest = self.remember(points);
        let judge = |from: Point| self.now.since(from).judge(&self.bounds, &self.setup);
        Ok(Report { window: judge(oldest), since_start: judge(Point::default()), step })
    }

    /// Adds the step from one reading to the next, if it can be one of running.
    fn count(&mut self, last: Shown, shown: Shown) -> Step {
        let seconds = shown.at - last.at;
        let step = if seconds < 0.0 {
            Step::ClockWentBack
        } else {
            let (seed, flowed) = self.seed_step(last.seed, shown.seed, seconds);
            let liquid = match self.setup.liquid {
                LiquidSensor::Total { .. } => shown.liquid - last.liquid,
                LiquidSensor::Tank { .. } => last.liquid - shown.liquid,
            };
            if !self.bounds.seed_can_run(seed, seconds) {
                Step::SeedJumped
            } else if !self.bounds.liquid_can_run(liquid, seconds) {
                Step::LiquidJumped
            } else {
                self.now.add(seed, liquid, flowed);
                Step::Counted
            }
        };
        if step != Step::Counted {
            self.now.interrupt();
        }
        step
    }

    /// Seed between two readings, and for how long it was known by its flow only.
    fn seed_step(&self, last: f64, shown: f64, seconds: f64) -> (f64, f64) {
        match self.setup.seed {
            SeedSensor::Total { .. } => (shown - last, 0.0),
            SeedSensor::Flow { .. } => (0.5 * (last + shown) * seconds, seconds),
        }
    }

    /// Keeps the present point and gives the oldest that is still kept.
    fn remember(&mut self, points: &mut [Point]) -> Point {
        if let Some(point) = points.get_mut(self.next) {
            *point = self.now;
        }
        self.next = if self.next + 1 < points.len() { self.next + 1 } else { 0 };
        points.get(self.next).copied().unwrap_or_default()
    }
}

fn seed_shown(sensor: SeedSensor, reading: SeedReading) -> Result<f64, Error> {
    match (sensor, reading) {
        (SeedSensor::Total { .. }, SeedReading::Total(mass)) => not_negative(Argument::SeedTotal, mass.value),
        (SeedSensor::Flow { .. }, SeedReading::Flow(flow)) => not_negative(Argument::SeedFlow, flow.value),
        (SeedSensor::Total { .. }, _) => Err(Error::Needed { argument: Argument::SeedTotal }),
        (SeedSensor::Flow { .. }, _) => Err(Error::Needed { argument: Argument::SeedFlow }),
    }
}

fn liquid_shown(sensor: LiquidSensor, reading: LiquidReading) -> Result<f64, Error> {
    match (sensor, reading) {
        (LiquidSensor::Total { .. }, LiquidReading::Total(volume)) => {
            not_negative(Argument::LiquidTotal, volume.value)
        }
        (LiquidSensor::Tank { .. }, LiquidReading::Tank(volume)) => {
            not_negative(Argument::TankContent, volume.value)
        }
        (LiquidSensor::Total { .. }, _) => Err(Error::Needed { argument: Argument::LiquidTotal }),
        (LiquidSensor::Tank { .. }, _) => Err(Error::Needed { argument: Argument::TankContent }),
    }
}

#[cfg(test)]
mod tests;
