//! Which setting delivers the flow?

use super::Flow;
use crate::error::{Argument, Error, OneNumber, Range, not_negative, positive};
use crate::math;
use crate::slack::{self, SLACK};

/// A setting on the pump's own scale: rpm, %, stroke, dial.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
#[repr(transparent)]
pub struct Setting(f64);

impl OneNumber for Setting {
    const ARGUMENT: Argument = Argument::Setting;
    const RANGE: Range = Range::NotNegative;
}

impl Setting {
    /// Looks at the value, once.
    ///
    /// # Errors
    /// When it is not finite or negative.
    #[inline]
    pub fn new(setting: f64) -> Result<Self, Error> {
        not_negative(Argument::Setting, setting).map(Self)
    }

    /// The plain number.
    #[must_use]
    pub const fn number(self) -> f64 {
        self.0
    }

    /// The setting after a catch test, for a pump whose flow is proportional to its setting:
    /// setting × target / caught.
    ///
    /// Other pumps need a [`PumpCurve`] of two catches or more.
    ///
    /// ```
    /// use hilum::quantity::{Time, Volume, time::minute, volume::milliliter};
    /// use hilum::treater::{Flow, Setting};
    /// # fn main() -> Result<(), hilum::Error> {
    /// // Worked by hand: 125 mL/min caught at 50, 100 mL/min wanted: 40.
    /// let flow = |ml| Flow::new(Volume::new::<milliliter>(ml) / Time::new::<minute>(1.0));
    /// let setting = Setting::new(50.0)?.corrected(flow(100.0)?, flow(125.0)?)?;
    /// assert!((setting.number() - 40.0).abs() < 1e-12);
    /// # Ok(()) }
    /// ```
    ///
    /// # Errors
    /// When the setting is 0: a pump that delivers there is not proportional.
    #[inline]
    pub fn corrected(self, target: Flow, caught: Flow) -> Result<Self, Error> {
        positive(Argument::Setting, self.0).map(|setting| Self(setting * (target.0 / caught.0)))
    }
}

/// One catch: what the pump delivered at a setting.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CurvePoint {
    /// Where the pump was set.
    pub setting: Setting,
    /// What it delivered.
    pub flow: Flow,
}

/// The straight line through catches: flow = offset + slope × setting.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PumpCurve {
    offset: f64,
    slope: f64,
    /// Least and greatest setting tested; 0 and no end for a line through the origin.
    tested: (f64, f64),
}

/// The setting for a wanted flow. A line is not trusted beyond the settings that were tested.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PumpSetting {
    /// Set the pump to this.
    Inside(Setting),
    /// Slower than any setting tested.
    BelowCurve,
    /// Faster than any setting tested.
    AboveCurve,
}

impl PumpCurve {
    /// The line of least squares through the catches; one catch gives the line through the origin, for a
    /// pump whose flow is proportional to its setting.
    ///
    /// slope = Σ (s − s̄)(f − f̄) / Σ (s − s̄)², offset = f̄ − slope × s̄.
    ///
    /// # Errors
    /// [`Error::Needed`] without a catch; [`Error::NotPositive`] when the only catch was made at 0;
    /// [`Error::OneSetting`] when several were made at one setting; [`Error::NotRising`] when the flow does
    /// not rise with the setting.
    pub fn through(points: &[CurvePoint]) -> Result<Self, Error> {
        match points {
            [] => Err(Error::Needed { argument: Argument::PumpCurve }),
            [point] => {
                let setting = positive(Argument::Setting, point.setting.0)?;
                Ok(Self { offset: 0.0, slope: point.flow.0 / setting, tested: (0.0, f64::INFINITY) })
            }
            _ => Self::fit(points),
        }
    }

    fn fit(points: &[CurvePoint]) -> Result<Self, Error> {
        let mean = |of: fn(&CurvePoint) -> f64| {
            let (sum, n) = points.iter().fold((0.0, 0.0), |(sum, n), point| (sum + of(point), n + 1.0));
            sum / n
        };
        let settings = points.iter().map(|point| point.setting.0);
        let tested =
            settings.fold((f64::INFINITY, 0.0_f64), |(min, max), s| (math::min(min, s), math::max(max, s)));
        let (setting, flow) = (mean(|point| point.setting.0), mean(|point| point.flow.0));
        if tested.1 - tested.0 <= setting * SLACK {
            return Err(Error::OneSetting { value: setting });
        }
        let (mut products, mut squares) = (0.0, 0.0);
        for point in points {
            let off = point.setting.0 - setting;
            products += off * (point.flow.0 - flow);
            squares += off * off;
        }
        let slope = products / squares;
        if slope * (tested.1 - tested.0) <= flow * SLACK {
            return Err(Error::NotRising { value: slope });
        }
        Ok(Self { offset: flow - slope * setting, slope, tested })
    }

    /// The setting for a wanted flow: (flow − offset) / slope.
    ///
    /// ```
    /// use hilum::quantity::{Time, Volume, time::minute, volume::milliliter};
    /// use hilum::treater::{CurvePoint, Flow, PumpCurve, PumpSetting, Setting};
    /// # fn main() -> Result<(), hilum::Error> {
    /// let flow = |ml| Flow::new(Volume::new::<milliliter>(ml) / Time::new::<minute>(1.0));
    /// let at = |setting, ml| -> Result<_, hilum::Error> {
    ///     Ok(CurvePoint { setting: Setting::new(setting)?, flow: flow(ml)? })
    /// };
    /// // Worked by hand: 40 mL/min at 10 and 100 at 30 is 3 per step, from 10; 85 mL/min is at 25.
    /// let curve = PumpCurve::through(&[at(10.0, 40.0)?, at(30.0, 100.0)?])?;
    /// let PumpSetting::Inside(setting) = curve.setting(flow(85.0)?) else { panic!("tested up to 100") };
    /// assert!((setting.number() - 25.0).abs() < 1e-9);
    /// assert_eq!(curve.setting(flow(120.0)?), PumpSetting::AboveCurve);
    /// # Ok(()) }
    /// ```
    #[must_use]
    pub fn setting(&self, wanted: Flow) -> PumpSetting {
        let setting = (wanted.0 - self.offset) / self.slope;
        let (least, most) = self.tested;
        if setting < least - most * SLACK {
            PumpSetting::BelowCurve
        } else if slack::above(setting, most) {
            PumpSetting::AboveCurve
        } else {
            PumpSetting::Inside(Setting(math::max(setting, 0.0)))
        }
    }
}
