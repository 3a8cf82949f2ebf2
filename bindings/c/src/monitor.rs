//! Is the rate right while we run?

use core::mem::MaybeUninit;

use hilum::quantity::{MassFlow, Measure, VolumeFlow};
use hilum::treater::monitor::{
    LiquidReading, LiquidSensor, Monitor, Report, Run, SeedReading, SeedSensor, Setup, Step,
};

use crate::account::achieved::verdict;
use crate::call::{Answer, give, need};
use crate::dose::liquid::hilum_rate_per_mass;
use crate::opaque;
use crate::quantity::amount::{hilum_mass, hilum_share, hilum_time, hilum_volume};
use crate::quantity::flow::{hilum_flow, hilum_seed_flow};
use crate::status::Status;

/// The sensor shows all that has run so far.
pub const HILUM_TOTAL: i32 = 1;
/// The seed sensor shows the flow at the moment.
pub const HILUM_FLOW: i32 = 2;
/// The liquid sensor shows what is left in the tank.
pub const HILUM_TANK: i32 = 3;

/// How the controller knows how much seed has run.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_seed_sensor {
    /// HILUM_TOTAL (a counter or scale) or HILUM_FLOW (a flow meter or a calibrated wheel).
    pub shows: i32,
    /// The smallest step of a total; not looked at for a flow.
    pub total_resolution: hilum_mass,
    /// The smallest step of a flow; not looked at for a total.
    pub flow_resolution: hilum_seed_flow,
    /// More than this cannot run.
    pub most: hilum_seed_flow,
}

/// How the controller knows how much liquid has run. A tank that is weighed: mass / density.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_liquid_sensor {
    /// HILUM_TOTAL (a flow meter's) or HILUM_TANK.
    pub shows: i32,
    /// Its smallest step.
    pub resolution: hilum_volume,
    /// More than this cannot run.
    pub most: hilum_flow,
}

/// What is wanted, and what the sensors can do.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_monitor_setup {
    /// The rate of the slurry.
    pub target: hilum_rate_per_mass,
    /// How far off it may be.
    pub tolerance: hilum_share,
    /// How seed is measured.
    pub seed: hilum_seed_sensor,
    /// How liquid is measured.
    pub liquid: hilum_liquid_sensor,
}

/// What the seed sensor shows.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_seed_reading {
    /// HILUM_TOTAL or HILUM_FLOW, as the sensor.
    pub shows: i32,
    /// All seed so far; not looked at for a flow.
    pub total: hilum_mass,
    /// The flow at the moment, may be 0; not looked at for a total.
    pub flow: hilum_seed_flow,
}

/// What the liquid sensor shows.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_liquid_reading {
    /// HILUM_TOTAL or HILUM_TANK, as the sensor.
    pub shows: i32,
    /// All liquid so far, or what is left in the tank.
    pub volume: hilum_volume,
}

fn mass_flow(flow: hilum_seed_flow) -> MassFlow {
    MassFlow::from_base(flow.kg_per_s)
}

fn volume_flow(flow: hilum_flow) -> VolumeFlow {
    VolumeFlow::from_base(flow.m3_per_s)
}

impl hilum_seed_sensor {
    fn core(self) -> Answer<SeedSensor> {
        let most = mass_flow(self.most);
        match self.shows {
            HILUM_TOTAL => Ok(SeedSensor::Total { resolution: self.total_resolution.into(), most }),
            HILUM_FLOW => Ok(SeedSensor::Flow { resolution: mass_flow(self.flow_resolution), most }),
            _ => Err(Status::NO_SUCH_CHOICE),
        }
    }
}

impl hilum_liquid_sensor {
    fn core(self) -> Answer<LiquidSensor> {
        let (resolution, most) = (self.resolution.into(), volume_flow(self.most));
        match self.shows {
            HILUM_TOTAL => Ok(LiquidSensor::Total { resolution, most }),
            HILUM_TANK => Ok(LiquidSensor::Tank { resolution, most }),
            _ => Err(Status::NO_SUCH_CHOICE),
        }
    }
}

impl hilum_monitor_setup {
    fn core(self) -> Answer<Setup> {
        Ok(Setup {
            target: self.target.core()?,
            tolerance: self.tolerance.core()?,
            seed: self.seed.core()?,
            liquid: self.liquid.core()?,
        })
    }
}

impl hilum_seed_reading {
    fn core(self) -> Answer<SeedReading> {
        match self.shows {
            HILUM_TOTAL => Ok(SeedReading::Total(self.total.into())),
            HILUM_FLOW => Ok(SeedReading::Flow(mass_flow(self.flow))),
            _ => Err(Status::NO_SUCH_CHOICE),
        }
    }
}

impl hilum_liquid_reading {
    fn core(self) -> Answer<LiquidReading> {
        match self.shows {
            HILUM_TOTAL => Ok(LiquidReading::Total(self.volume.into())),
            HILUM_TANK => Ok(LiquidReading::Tank(self.volume.into())),
            _ => Err(Status::NO_SUCH_CHOICE),
        }
    }
}

/// The first reading: there was none before.
pub const HILUM_FIRST: i32 = 1;
/// The step since the reading before counts.
pub const HILUM_COUNTED: i32 = 2;
/// The step is left out: the clock went back.
pub const HILUM_CLOCK_WENT_BACK: i32 = 3;
/// The step is left out: the seed sensor started again or jumped.
pub const HILUM_SEED_JUMPED: i32 = 4;
/// The step is left out: the liquid sensor started again or jumped, or the tank was refilled.
pub const HILUM_LIQUID_JUMPED: i32 = 5;

/// The rate over a stretch of running.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_run {
    /// Liquid / seed; 0 while no seed has run.
    pub rate: hilum_rate_per_mass,
    /// How far off the rate can be by the resolution of the readings alone; 0 while no seed has run.
    pub explained: hilum_rate_per_mass,
    /// HILUM_LOW, HILUM_ON_TARGET, HILUM_HIGH or HILUM_CANNOT_TELL. Low or high only when the readings' resolution
    /// cannot explain it.
    pub verdict: i32,
    /// 1 once seed has run, so that the rate is known; else 0.
    pub known: i32,
}

impl From<Run> for hilum_run {
    fn from(run: Run) -> Self {
        Self {
            rate: run.rate.map_or(hilum_rate_per_mass { m3_per_kg: 0.0 }, Into::into),
            explained: hilum_rate_per_mass { m3_per_kg: run.explained.map_or(0.0, Measure::to_base) },
            verdict: verdict(run.verdict),
            known: i32::from(run.rate.is_some()),
        }
    }
}

/// What the readings so far say.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_report {
    /// Over the last readings that the monitor keeps.
    pub window: hilum_run,
    /// Since the first reading.
    pub since_start: hilum_run,
    /// What became of this step: HILUM_FIRST, HILUM_COUNTED, HILUM_CLOCK_WENT_BACK, HILUM_SEED_JUMPED or
    /// HILUM_LIQUID_JUMPED.
    pub step: i32,
}

impl From<Report> for hilum_report {
    fn from(report: Report) -> Self {
        Self {
            window: report.window.into(),
            since_start: report.since_start.into(),
            step: match report.step {
                Step::First => HILUM_FIRST,
                Step::Counted => HILUM_COUNTED,
                Step::ClockWentBack => HILUM_CLOCK_WENT_BACK,
                Step::SeedJumped => HILUM_SEED_JUMPED,
                Step::LiquidJumped => HILUM_LIQUID_JUMPED,
            },
        }
    }
}

/// Watches the rate over the last 16 readings and since the start. Started by hilum_monitor_16_start.
#[repr(C)]
pub struct hilum_monitor_16 {
    pub(crate) opaque: [MaybeUninit<u64>; 96],
}

/// Watches the rate over the last 64 readings and since the start. Started by hilum_monitor_64_start.
#[repr(C)]
pub struct hilum_monitor_64 {
    pub(crate) opaque: [MaybeUninit<u64>; 288],
}

/// One code for windows of every length.
#[inline(never)]
fn watched(setup: Option<&hilum_monitor_setup>) -> Answer<Setup> {
    need(setup)?.core()
}

fn start<const N: usize, const WORDS: usize>(
    setup: Option<&hilum_monitor_setup>,
    words: Option<&mut [MaybeUninit<u64>; WORDS]>,
) -> i32 {
    let Some(words) = words else { return Status::NULL.number() };
    match watched(setup).and_then(|setup| Ok(Monitor::<N>::new(setup)?)) {
        Ok(monitor) => {
            opaque::fill(words, monitor);
            Status::OK.number()
        }
        Err(status) => status.number(),
    }
}

fn feed<const N: usize, const WORDS: usize>(
    words: Option<&mut [MaybeUninit<u64>; WORDS]>,
    at: hilum_time,
    readings: (Option<&hilum_seed_reading>, Option<&hilum_liquid_reading>),
    out: Option<&mut MaybeUninit<hilum_report>>,
) -> i32 {
    let monitor = words.ok_or(Status::NULL).and_then(opaque::open_mut::<Monitor<N>, WORDS>);
    match monitor {
        Ok(monitor) => report(&mut |seed, liquid| monitor.feed(at.into(), seed, liquid), readings, out),
        Err(status) => give(out, || Err(status)),
    }
}

/// One code for windows of every length.
fn report(
    feed: &mut dyn FnMut(SeedReading, LiquidReading) -> Result<Report, hilum::Error>,
    readings: (Option<&hilum_seed_reading>, Option<&hilum_liquid_reading>),
    out: Option<&mut MaybeUninit<hilum_report>>,
) -> i32 {
    give(out, || {
        let (seed, liquid) = (need(readings.0)?.core()?, need(readings.1)?.core()?);
        Ok(feed(seed, liquid)?.into())
    })
}

/// Starts a monitor of 16 readings. 325 mL/100 kg within 5 %, a counter that shows kilograms of seed (7 kg/s at most) and
/// a tank that shows tenths of a litre (40 mL/s at most) are the setup
/// {{3.25e-6}, {0.05}, {HILUM_TOTAL, {1}, {0}, {7}}, {HILUM_TANK, {1e-4}, {4e-5}}}.
/// Errors: NULL; HILUM_NO_SUCH_CHOICE; a resolution that is not finite or negative, or a number that is not more
/// than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_monitor_16_start(
    setup: Option<&hilum_monitor_setup>,
    monitor: Option<&mut hilum_monitor_16>,
) -> i32 {
    start::<16, 96>(setup, monitor.map(|monitor| &mut monitor.opaque))
}

/// Takes one reading of both sensors and says how things stand. at is the time on any clock. Feed it as often as
/// you like: memory is constant. A step that cannot be seed or liquid running (a total that falls, a tank that
/// fills, a flow above the most possible) is left out, for seed and liquid alike.
///
/// Errors: NULL; HILUM_NOT_MADE; HILUM_NO_SUCH_CHOICE; HILUM_NEEDED for a reading of another kind than its sensor; a number
/// that is not finite or negative. The monitor is then as it was before.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_monitor_16_feed(
    monitor: Option<&mut hilum_monitor_16>,
    at: hilum_time,
    seed: Option<&hilum_seed_reading>,
    liquid: Option<&hilum_liquid_reading>,
    out: Option<&mut MaybeUninit<hilum_report>>,
) -> i32 {
    feed::<16, 96>(monitor.map(|monitor| &mut monitor.opaque), at, (seed, liquid), out)
}

/// As hilum_monitor_16_start, for 64 readings.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_monitor_64_start(
    setup: Option<&hilum_monitor_setup>,
    monitor: Option<&mut hilum_monitor_64>,
) -> i32 {
    start::<64, 288>(setup, monitor.map(|monitor| &mut monitor.opaque))
}

/// As hilum_monitor_16_feed, for 64 readings.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_monitor_64_feed(
    monitor: Option<&mut hilum_monitor_64>,
    at: hilum_time,
    seed: Option<&hilum_seed_reading>,
    liquid: Option<&hilum_liquid_reading>,
    out: Option<&mut MaybeUninit<hilum_report>>,
) -> i32 {
    feed::<64, 288>(monitor.map(|monitor| &mut monitor.opaque), at, (seed, liquid), out)
}
