//! How much has run, how far off that can be, and what follows.

use super::{LiquidSensor, SeedSensor, Setup, Verdict, not_negative, positive};
use crate::error::{Argument, Error};
use crate::math::max;
use crate::quantity::{VolumePerMass, base};
use crate::rate::RatePerMass;
use crate::slack::SLACK;

/// What the sensors can show, in base units.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bounds {
    /// Of a total of seed; 0 when seed is known by its flow.
    seed: f64,
    /// Of the flow of seed; 0 when it is known by a total.
    flow: f64,
    liquid: f64,
    most_seed: f64,
    most_liquid: f64,
}

impl Bounds {
    pub(super) fn new(setup: &Setup) -> Result<Self, Error> {
        let resolution = |value| not_negative(Argument::Resolution, value);
        let (seed, flow, most_seed) = match setup.seed {
            SeedSensor::Total { resolution: step, most } => (resolution(step.value)?, 0.0, most),
            SeedSensor::Flow { resolution: step, most } => (0.0, resolution(step.value)?, most),
        };
        let (liquid, most_liquid) = match setup.liquid {
            LiquidSensor::Total { resolution: step, most }
            | LiquidSensor::Tank { resolution: step, most } => (resolution(step.value)?, most),
        };
        Ok(Self {
            seed,
            flow,
            liquid,
            most_seed: positive(Argument::SeedFlow, most_seed.value)?,
            most_liquid: positive(Argument::LiquidFlow, most_liquid.value)?,
        })
    }

    pub(super) fn seed_can_run(&self, step: f64, seconds: f64) -> bool {
        can_run(step, seconds, self.seed, self.most_seed)
    }

    pub(super) fn liquid_can_run(&self, step: f64, seconds: f64) -> bool {
        can_run(step, seconds, self.liquid, self.most_liquid)
    }
}

/// A step of a sensor may be off by one division either way.
fn can_run(step: f64, seconds: f64, resolution: f64, most: f64) -> bool {
    (-resolution..=(most * seconds * (1.0 + SLACK) + resolution)).contains(&step)
}

/// How much has run up to a reading.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Point {
    seed: f64,
    liquid: f64,
    /// Steps that were left out: behind each, both sensors begin anew.
    interruptions: f64,
    /// Seconds for which seed was known by its flow only.
    flowed: f64,
}

impl Point {
    pub(super) fn add(&mut self, seed: f64, liquid: f64, flowed: f64) {
        self.seed += seed;
        self.liquid += liquid;
        self.flowed += flowed;
    }

    pub(super) fn interrupt(&mut self) {
        self.interruptions += 1.0;
    }

    pub(super) fn since(self, earlier: Self) -> Self {
        Self {
            seed: self.seed - earlier.seed,
            liquid: self.liquid - earlier.liquid,
            interruptions: self.interruptions - earlier.interruptions,
            flowed: self.flowed - earlier.flowed,
        }
    }

    /// Each uninterrupted stretch is the difference of two readings, each off by up to half a division:
    /// together a whole one. A flow may be off the same way all the time.
    pub(super) fn judge(self, bounds: &Bounds, setup: &Setup) -> Run {
        let stretches = 1.0 + self.interruptions;
        let seed_off = stretches * bounds.seed + 0.5 * bounds.flow * self.flowed;
        let liquid_off = stretches * bounds.liquid;
        let (seed, liquid) = (max(self.seed, 0.0), max(self.liquid, 0.0));
        let border = |off: f64| setup.target.0 * (1.0 + off * (setup.tolerance.0 + SLACK));
        let (least, most) = (max(border(-1.0), 0.0), border(1.0));
        let fewest = max(seed - seed_off, 0.0);
        let verdict = if liquid - liquid_off > most * (seed + seed_off) {
            Verdict::High
        } else if liquid + liquid_off < least * fewest {
            Verdict::Low
        } else if seed > 0.0
            && liquid + liquid_off <= most * fewest
            && liquid - liquid_off >= least * (seed + seed_off)
        {
            Verdict::OnTarget
        } else {
            Verdict::CannotTell
        };
        let known = (seed > 0.0).then(|| (liquid / seed, (liquid_off + liquid / seed * seed_off) / seed));
        Run {
            rate: known.map(|(rate, _)| RatePerMass::of(rate)),
            explained: known.map(|(_, off)| base!(VolumePerMass, off)),
            verdict,
        }
    }
}

/// The rate over a stretch of running.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Run {
    /// Liquid / seed; `None` while no seed has run.
    pub rate: Option<RatePerMass>,
    /// How far off the rate can be by the resolution of the readings alone: half a division of each
    /// reading, all in the same direction, seed to first order.
    pub explained: Option<VolumePerMass>,
    /// Low or high only when the readings cannot explain it, whichever way they are off.
    pub verdict: Verdict,
}
