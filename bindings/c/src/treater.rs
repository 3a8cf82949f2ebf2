//! How fast do I pump?

use core::mem::MaybeUninit;

use hilum::treater::{
    self, BatchTreater, CurvePoint, Dumps, PumpCurve, PumpRange, PumpSetting, Reach, Setting,
};

use crate::argument::{CatchTime, CaughtMass, CaughtVolume, SeedMass};
use crate::call::{self, Answer, Work, give, give_both, hilum_work, need};
use crate::dose::liquid::hilum_rate_per_mass;
use crate::number::{number, of_made_one, of_three, of_two, positive};
use crate::opaque;
use crate::quantity::amount::{hilum_mass, hilum_share, hilum_time, hilum_volume};
use crate::quantity::content::hilum_density;
use crate::quantity::flow::{hilum_flow, hilum_seed_flow};

/// The flow of liquid that puts a slurry on a flow of seed: slurry x seed flow.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_flow_liquid(
    seed: hilum_seed_flow,
    slurry: hilum_rate_per_mass,
    out: Option<&mut MaybeUninit<hilum_flow>>,
) -> i32 {
    of_two(out, seed, slurry, |seed, slurry| Ok(seed.liquid(slurry)))
}

/// The flow that a day can count on: flow x utilisation, the share of the time that seed really runs. For the
/// clock; the pump runs at the full flow.
/// Errors: a flow that is not finite or not more than 0; a share outside 0 to 1, or of 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_flow_effective(
    seed: hilum_seed_flow,
    utilisation: hilum_share,
    out: Option<&mut MaybeUninit<hilum_seed_flow>>,
) -> i32 {
    of_two(out, seed, utilisation, |seed, utilisation| seed.effective(utilisation))
}

/// The time that a mass of seed takes: mass / flow. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_seed_flow_time_for(
    flow: hilum_seed_flow,
    seed: hilum_mass,
    out: Option<&mut MaybeUninit<hilum_time>>,
) -> i32 {
    of_two(out, flow, positive::<SeedMass, _>(seed), |flow, seed| flow.time_for(seed))
}

/// The rate that a flow of liquid puts on a flow of seed: flow / seed flow.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_flow_rate(
    flow: hilum_flow,
    seed: hilum_seed_flow,
    out: Option<&mut MaybeUninit<hilum_rate_per_mass>>,
) -> i32 {
    of_two(out, flow, seed, |flow, seed| Ok(flow.rate(seed)))
}

/// By how much a measured flow differs from the target: measured / target - 1.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_flow_deviation(
    measured: hilum_flow,
    target: hilum_flow,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    of_two(out, measured, target, |measured, target| Ok(measured.deviation(target)))
}

/// Whether a measured flow is off the target by more than a tolerance (with a slack of 1e-9).
/// Errors: a flow that is not finite or not more than 0; a share outside 0 to 1.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_flow_off_target(
    measured: hilum_flow,
    target: hilum_flow,
    tolerance: hilum_share,
    out: Option<&mut MaybeUninit<bool>>,
) -> i32 {
    of_three(out, measured, target, tolerance, |measured, target, tolerance| {
        Ok(measured.off_target(target, tolerance))
    })
}

/// A treater that takes a charge of seed, puts the liquid on, and turns it out.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_batch_treater {
    /// Seed of one charge.
    pub charge: hilum_mass,
    /// Time from one charge to the next.
    pub cycle: hilum_time,
}

impl hilum_batch_treater {
    fn core(self) -> Answer<BatchTreater> {
        Ok(BatchTreater::new(self.charge.into(), self.cycle.into())?)
    }
}

/// The liquid for one charge: slurry x charge. Errors: NULL; a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_batch_treater_per_charge(
    treater: Option<&hilum_batch_treater>,
    slurry: hilum_rate_per_mass,
    out: Option<&mut MaybeUninit<hilum_volume>>,
) -> i32 {
    of_made_one(out, treater, slurry, |treater, slurry| Ok(treater.core()?.per_charge(slurry)))
}

/// The flow of seed: charge / cycle. Errors: NULL; a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_batch_treater_seed_flow(
    treater: Option<&hilum_batch_treater>,
    out: Option<&mut MaybeUninit<hilum_seed_flow>>,
) -> i32 {
    give(out, || Ok(need(treater)?.core()?.seed_flow().into()))
}

/// The flow of seed that is weighed in dumps: mass of a dump x dumps / time.
/// Errors: a number that is not finite or not more than 0; no dump at all.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_dumps_seed_flow(
    dump: hilum_mass,
    dumps: u32,
    time: hilum_time,
    out: Option<&mut MaybeUninit<hilum_seed_flow>>,
) -> i32 {
    give(out, || Ok(Dumps::of(dump.into())?.seed_flow(dumps, time.into())?.into()))
}

/// The liquid for one dump: slurry x mass of a dump. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_dumps_liquid(
    dump: hilum_mass,
    slurry: hilum_rate_per_mass,
    out: Option<&mut MaybeUninit<hilum_volume>>,
) -> i32 {
    of_two(out, dump, slurry, |dump, slurry| Ok(Dumps::of(dump)?.liquid(slurry)))
}

/// The flow that a catch test measured: volume / time. Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_catch_volume(
    caught: hilum_volume,
    time: hilum_time,
    out: Option<&mut MaybeUninit<hilum_flow>>,
) -> i32 {
    of_two(out, positive::<CaughtVolume, _>(caught), positive::<CatchTime, _>(time), |caught, time| {
        treater::caught_volume(caught, time)
    })
}

/// The flow that a weighed catch measured: mass / (density x time).
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_catch_mass(
    caught: hilum_mass,
    density: hilum_density,
    time: hilum_time,
    out: Option<&mut MaybeUninit<hilum_flow>>,
) -> i32 {
    of_three(
        out,
        positive::<CaughtMass, _>(caught),
        density,
        positive::<CatchTime, _>(time),
        |caught, density, time| treater::caught_mass(caught, density, time),
    )
}

/// The pump can do it.
pub const HILUM_WITHIN: i32 = 1;
/// Less than the pump can do, or than any setting that was tested delivers.
pub const HILUM_TOO_SLOW: i32 = 2;
/// More than the pump can do, or than any setting that was tested delivers.
pub const HILUM_TOO_FAST: i32 = 3;

/// Whether a pump can deliver a flow: HILUM_WITHIN, HILUM_TOO_SLOW or HILUM_TOO_FAST (by more than 1e-9). least and
/// most may be NULL where nothing is known. Errors: a flow that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_pump_reach(
    wanted: hilum_flow,
    least: Option<&hilum_flow>,
    most: Option<&hilum_flow>,
    out: Option<&mut MaybeUninit<i32>>,
) -> i32 {
    give(out, || {
        let min = least.map(|flow| flow.core()).transpose()?;
        let max = most.map(|flow| flow.core()).transpose()?;
        Ok(match (PumpRange { min, max }).reach(wanted.core()?) {
            Reach::Within => HILUM_WITHIN,
            Reach::TooSlow => HILUM_TOO_SLOW,
            Reach::TooFast => HILUM_TOO_FAST,
        })
    })
}

/// A setting on the pump's own scale.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_setting {
    /// rpm, %, stroke, dial: whatever the pump's scale shows.
    pub number: f64,
}

number!(hilum_setting: number, Setting);

impl From<Setting> for hilum_setting {
    fn from(setting: Setting) -> Self {
        Self { number: setting.number() }
    }
}

/// The setting after a catch test, for a pump whose flow is proportional to its setting:
/// setting x target / caught. Other pumps need a hilum_pump_curve.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_setting_corrected(
    setting: hilum_setting,
    target: hilum_flow,
    caught: hilum_flow,
    out: Option<&mut MaybeUninit<hilum_setting>>,
) -> i32 {
    of_three(out, setting, target, caught, |setting, target, caught| setting.corrected(target, caught))
}

/// One catch: what the pump delivered at a setting.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_curve_point {
    /// Where the pump was set.
    pub setting: hilum_setting,
    /// What it delivered.
    pub flow: hilum_flow,
}

/// The straight line through catches: flow = offset + slope x setting. Made by hilum_pump_curve_through.
#[repr(C)]
#[derive(Clone, Copy)]
pub struct hilum_pump_curve {
    pub(crate) opaque: [MaybeUninit<u64>; 6],
}

/// The line of least squares through n catches; one catch gives the line through the origin, for a pump whose
/// flow is proportional to its setting. work: n of them.
///
/// Errors: NULL; HILUM_NEEDED when n is 0; HILUM_NOT_POSITIVE when the only catch was made at 0;
/// HILUM_ONE_SETTING; HILUM_NOT_RISING; a setting that is not finite or negative, a flow not more than 0.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_pump_curve_through(
    catches: *const hilum_curve_point,
    work: *mut hilum_work,
    n: usize,
    out: Option<&mut MaybeUninit<hilum_pump_curve>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let (catches, mut work) = unsafe { (call::list(catches, n)?, Work::new(work, n)?) };
        let points = work.made(catches, |point| {
            Ok(CurvePoint { setting: point.setting.core()?, flow: point.flow.core()? })
        })?;
        Ok(hilum_pump_curve { opaque: opaque::store(PumpCurve::through(points)?) })
    })
}

/// The setting for a wanted flow: (flow - offset) / slope, with HILUM_WITHIN in reach. A line is not trusted beyond
/// the settings that were tested: there reach is HILUM_TOO_SLOW or HILUM_TOO_FAST, and setting is 0.
/// Errors: NULL; HILUM_NOT_MADE; a flow that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_pump_curve_setting(
    curve: Option<&hilum_pump_curve>,
    wanted: hilum_flow,
    reach: Option<&mut MaybeUninit<i32>>,
    setting: Option<&mut MaybeUninit<hilum_setting>>,
) -> i32 {
    const NONE: hilum_setting = hilum_setting { number: 0.0 };
    give_both(reach, setting, || {
        let curve = need(curve)?;
        Ok(match opaque::open::<PumpCurve, 6>(&curve.opaque)?.setting(wanted.core()?) {
            PumpSetting::Inside(setting) => (HILUM_WITHIN, setting.into()),
            PumpSetting::BelowCurve => (HILUM_TOO_SLOW, NONE),
            PumpSetting::AboveCurve => (HILUM_TOO_FAST, NONE),
        })
    })
}
