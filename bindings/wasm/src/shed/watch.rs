//! The running monitor: its state goes out to the script and comes back, so nothing has to be freed.

use alloc::vec::Vec;
use core::mem::size_of;

use hilum::Error;
use hilum::quantity::Measure;
use hilum::rate::PerMass;
use hilum::seed::Share;
use hilum::treater::monitor::{
    LiquidReading, LiquidSensor, Monitor, Report, Run, SeedReading, SeedSensor, Setup, Step, Verdict,
};

use super::{Answer, Given};

/// Over so many readings goes the window.
type Watch = Monitor<16>;

/// How many numbers hold its bytes.
const NUMBERS: usize = size_of::<Watch>().div_ceil(size_of::<f64>());

/// Target, tolerance; for seed whether it is a flow, resolution, most; for liquid whether it is a tank,
/// resolution, most → the state.
pub(super) fn begin(given: &mut Given<'_>) -> Answer {
    let target = PerMass::new(given.quantity())?;
    let tolerance = Share::new(given.quantity())?;
    let seed = if given.is() {
        SeedSensor::Flow { resolution: given.quantity(), most: given.quantity() }
    } else {
        SeedSensor::Total { resolution: given.quantity(), most: given.quantity() }
    };
    let liquid = if given.is() {
        LiquidSensor::Tank { resolution: given.quantity(), most: given.quantity() }
    } else {
        LiquidSensor::Total { resolution: given.quantity(), most: given.quantity() }
    };
    let mut told = alloc::vec![0.0];
    keep(&Watch::new(Setup { target, tolerance, seed, liquid })?, &mut told);
    Ok(told)
}

/// Time; whether seed is a flow, its reading; whether liquid is a tank, its reading; then the state → the report,
/// then the state.
pub(super) fn feed(given: &mut Given<'_>) -> Answer {
    let at = given.quantity();
    let seed =
        if given.is() { SeedReading::Flow(given.quantity()) } else { SeedReading::Total(given.quantity()) };
    let liquid = if given.is() {
        LiquidReading::Tank(given.quantity())
    } else {
        LiquidReading::Total(given.quantity())
    };
    let mut watch = kept(given.0.as_slice()).ok_or(Error::Needed { argument: hilum::Argument::Reading })?;
    let Report { window, since_start, step } = watch.feed(at, seed, liquid)?;
    let step = match step {
        Step::First => 0.0,
        Step::Counted => 1.0,
        Step::ClockWentBack => 2.0,
        Step::SeedJumped => 3.0,
        Step::LiquidJumped => 4.0,
    };
    let mut told = alloc::vec![0.0, step];
    told.extend(run(window));
    told.extend(run(since_start));
    keep(&watch, &mut told);
    Ok(told)
}

/// Verdict, rate and what the readings explain; NaN while no seed has run.
fn run(run: Run) -> [f64; 3] {
    let verdict = match run.verdict {
        Verdict::Low => 0.0,
        Verdict::OnTarget => 1.0,
        Verdict::High => 2.0,
        Verdict::CannotTell => 3.0,
    };
    let rate = run.rate.map_or(f64::NAN, |rate| rate.get().to_base());
    [verdict, rate, run.explained.map_or(f64::NAN, Measure::to_base)]
}

/// The bytes of a monitor behind what is told.
fn keep(watch: &Watch, told: &mut Vec<f64>) {
    let at = told.len();
    told.resize(at.saturating_add(NUMBERS), 0.0);
    if let Some(room) = told.get_mut(at..) {
        // SAFETY: a monitor is plain numbers without pointers, and there is room for its bytes.
        unsafe {
            core::ptr::copy_nonoverlapping(
                core::ptr::from_ref(watch).cast::<u8>(),
                room.as_mut_ptr().cast::<u8>(),
                size_of::<Watch>(),
            );
        }
    }
}

/// A monitor out of its bytes.
fn kept(bytes: &[f64]) -> Option<Watch> {
    // SAFETY: the script gives back, unchanged and from a field that nothing else reaches, what `keep` wrote; and
    // there is as much of it.
    (bytes.len() == NUMBERS).then(|| unsafe { core::ptr::read(bytes.as_ptr().cast::<Watch>()) })
}

const _: () = assert!(core::mem::align_of::<Watch>() <= core::mem::align_of::<f64>());
