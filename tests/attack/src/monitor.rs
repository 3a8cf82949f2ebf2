//! A run as sensors show it, with everything that sensors do wrong.

use arbitrary::{Result, Unstructured};
use hilum::quantity::{Mass, MassFlow, Measure, Time, Volume, VolumeFlow};
use hilum::rate::PerMass;
use hilum::seed::Share;
use hilum::treater::monitor::{
    LiquidReading, LiquidSensor, Monitor, Report, Run, SeedReading, SeedSensor, Setup, Step, Verdict,
};

use crate::numbers;

const WINDOW: usize = 4;

/// Feeds a monitor and compares it with a plain one that keeps everything.
pub fn attack(bytes: &[u8]) {
    let _ = fed(&mut Unstructured::new(bytes));
}

fn number(from: &mut Unstructured<'_>, wild: bool) -> Result<f64> {
    if wild { numbers::any(from) } else { numbers::plain(from) }
}

fn setup(from: &mut Unstructured<'_>, wild: bool) -> Result<Option<Setup>> {
    let kinds = from.arbitrary::<u8>()?;
    let target = PerMass::new(Measure::from_base(number(from, wild)? * 1e-6));
    let tolerance = Share::new(Measure::from_base(f64::from(from.int_in_range(0..=25_u8)?) / 100.0));
    let (resolution, most) = (number(from, wild)? * 1e-3, number(from, wild)?);
    let seed = if kinds & 1 == 0 {
        SeedSensor::Total { resolution: Mass::from_base(resolution), most: MassFlow::from_base(most) }
    } else {
        SeedSensor::Flow { resolution: MassFlow::from_base(resolution), most: MassFlow::from_base(most) }
    };
    let (resolution, most) =
        (Volume::from_base(number(from, wild)? * 1e-6), VolumeFlow::from_base(number(from, wild)?));
    let liquid = if kinds & 2 == 0 {
        LiquidSensor::Total { resolution, most }
    } else {
        LiquidSensor::Tank { resolution, most }
    };
    let (Ok(target), Ok(tolerance)) = (target, tolerance) else { return Ok(None) };
    Ok(Some(Setup { target, tolerance, seed, liquid }))
}

fn fed(from: &mut Unstructured<'_>) -> Result<()> {
    let wild = from.arbitrary::<bool>()?;
    let Some(setup) = setup(from, wild)? else { return Ok(()) };
    let Ok(mut monitor) = Monitor::<WINDOW>::new(setup) else { return Ok(()) };
    let mut plain = Plain::new(setup);
    let (mut at, mut seed, mut liquid) = (0.0, 0.0, 1.0);
    while !from.is_empty() {
        let way = from.arbitrary::<u8>()?;
        if way % 8 == 0 {
            (at, seed, liquid) = (numbers::any(from)?, numbers::any(from)?, numbers::any(from)?);
        } else {
            at += f64::from(from.arbitrary::<u8>()?) * 0.25;
            seed += number(from, wild)? * 0.01;
            liquid += number(from, wild)? * if way & 8 == 0 { -1e-5 } else { 1e-5 };
        }
        let shows_flow = matches!(setup.seed, SeedSensor::Flow { .. }) != (way & 0xf0 == 0xf0);
        let shown = if shows_flow {
            SeedReading::Flow(Measure::from_base(seed))
        } else {
            SeedReading::Total(Measure::from_base(seed))
        };
        let drawn = if matches!(setup.liquid, LiquidSensor::Tank { .. }) {
            LiquidReading::Tank(Measure::from_base(liquid))
        } else {
            LiquidReading::Total(Measure::from_base(liquid))
        };
        let before = format!("{monitor:?}");
        match monitor.feed(Time::from_base(at), shown, drawn) {
            Ok(report) => plain.check(&report, at, seed, liquid),
            Err(error) => {
                assert_eq!(before, format!("{monitor:?}"), "{error}: what is refused changes nothing");
                (at, seed, liquid) = (0.0, 0.0, 1.0);
            }
        }
    }
    Ok(())
}

/// Seed, liquid and steps left out, up to a reading.
type Sum = (f64, f64, f64);

/// Keeps every reading, and adds up by itself.
struct Plain {
    setup: Setup,
    last: Option<(f64, f64, f64)>,
    now: Sum,
    all: Vec<Sum>,
    /// All that was ever added, for what rounding can lose.
    moved: (f64, f64),
}

impl Plain {
    fn new(setup: Setup) -> Self {
        Self { setup, last: None, now: (0.0, 0.0, 0.0), all: Vec::new(), moved: (0.0, 0.0) }
    }

    fn check(&mut self, report: &Report, at: f64, seed: f64, liquid: f64) {
        if let Some((last_at, last_seed, last_liquid)) = self.last.replace((at, seed, liquid)) {
            match report.step {
                Step::Counted => {
                    let ran = match self.setup.seed {
                        SeedSensor::Total { .. } => seed - last_seed,
                        SeedSensor::Flow { .. } => last_seed.midpoint(seed) * (at - last_at),
                    };
                    let sign =
                        if matches!(self.setup.liquid, LiquidSensor::Tank { .. }) { -1.0 } else { 1.0 };
                    let drawn = sign * (liquid - last_liquid);
                    self.now = (self.now.0 + ran, self.now.1 + drawn, self.now.2);
                    self.moved = (self.moved.0 + ran.abs(), self.moved.1 + drawn.abs());
                }
                Step::First => panic!("only the first reading is the first"),
                Step::ClockWentBack => assert!(at < last_at),
                Step::SeedJumped | Step::LiquidJumped => assert!(at >= last_at),
            }
            if report.step != Step::Counted {
                self.now.2 += 1.0;
            }
        } else {
            assert_eq!(report.step, Step::First);
        }
        self.all.push(self.now);
        self.agrees(&report.since_start, (0.0, 0.0, 0.0));
        let oldest = self.all[self.all.len().saturating_sub(WINDOW)];
        self.agrees(&report.window, oldest);
    }

    fn agrees(&self, run: &Run, from: Sum) {
        let (seed, liquid) = (self.now.0 - from.0, (self.now.1 - from.1).max(0.0));
        let lost = (1e-12 * self.moved.0, 1e-12 * self.moved.1);
        if let Some(rate) = run.rate {
            let rate = rate.get().value;
            assert!(rate.is_finite() && rate >= 0.0, "{run:?}");
            assert!(
                (rate * seed - liquid).abs() <= lost.1 + (rate + 1e-300) * lost.0 + 1e-9 * liquid,
                "{run:?}: {liquid} on {seed}"
            );
        } else {
            assert!(seed <= lost.0, "{run:?}: {seed} has run");
        }
        assert!(run.explained.is_none_or(|off| off.value >= 0.0 && off.value.is_finite()), "{run:?}");
        let (target, tolerance) = (self.setup.target.get().value, self.setup.tolerance.get().value);
        let rate = run.rate.map_or(0.0, |rate| rate.get().value);
        match run.verdict {
            Verdict::High => {
                assert!(liquid > 0.0 && (run.rate.is_none() || rate > target * (1.0 + tolerance)), "{run:?}")
            }
            Verdict::Low => assert!(seed > 0.0 && rate < target * (1.0 - tolerance), "{run:?}"),
            Verdict::OnTarget => {
                let near = (rate - target).abs() <= target * (tolerance + 1e-6);
                assert!(seed > 0.0 && near, "{run:?}");
            }
            Verdict::CannotTell => {}
        }
    }
}
