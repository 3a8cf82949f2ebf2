//! How many are left after a time in store.

use crate::error::{Argument, Error, not_negative, positive, temperature};
use crate::math::{exp10, log10, max, min, pow};
use crate::quantity::{Ratio, Temperature, TemperatureDifference, Time, base};
use crate::rate::{CellCount, PerSeed};
use crate::seed::Share;

checked! {
    /// The time in which nine of ten cells die: the D value.
    DecimalReduction(Time), positive, DecimalReduction
}
checked! {
    /// δ of a Weibull survival curve: the time to the first tenfold drop.
    WeibullScale(Time), positive, WeibullScale
}
checked! {
    /// p of a Weibull survival curve: below 1 the curve tails off, above 1 it has a shoulder.
    WeibullShape(Ratio), positive, WeibullShape
}

/// Two kinds of cells that die at different rates.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TwoPhase {
    fraction: Share,
    fast: DecimalReduction,
    slow: DecimalReduction,
}

impl TwoPhase {
    /// `fraction` of the cells has the decimal reduction time `fast`, the others `slow`.
    ///
    /// # Errors
    /// [`Error::MoreThan`] when the fast ones take longer to die than the slow ones.
    pub fn new(fraction: Share, fast: DecimalReduction, slow: DecimalReduction) -> Result<Self, Error> {
        if fast.0 > slow.0 {
            return Err(Error::MoreThan { argument: Argument::FastReduction, value: fast.0, most: slow.0 });
        }
        Ok(Self { fraction, fast, slow })
    }
}

/// The shape of a survival curve over effective time τ.
///
/// # References
/// Bigelow, Bohart, Richardson & Ball 1920 (log-linear); Mafart, Couvert, Gaillard & Leguerinel 2002
/// (Weibull in log10 form); Cerf 1977 (two phases): forms quoted from memory.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Model {
    /// log10 S = −τ / D.
    LogLinear(DecimalReduction),
    /// log10 S = −(τ / δ)^p.
    Weibull {
        /// δ.
        scale: WeibullScale,
        /// p.
        shape: WeibullShape,
    },
    /// log10 S = log10(f · 10^(−τ / D fast) + (1 − f) · 10^(−τ / D slow)).
    TwoPhase(TwoPhase),
}

impl Model {
    /// log10 of the share alive after an effective time in seconds, at or below 0 and never infinite.
    fn log10(self, tau: f64) -> f64 {
        let drop = match self {
            Self::LogLinear(d) => tau / d.0,
            Self::Weibull { scale, shape } => pow(min(tau / scale.0, f64::MAX), shape.0),
            Self::TwoPhase(TwoPhase { fraction, fast, slow }) => {
                let quick = log10(fraction.0) - tau / fast.0;
                let lasting = log10(1.0 - fraction.0) - tau / slow.0;
                // The larger term in front, so that what is left is never the logarithm of an underflow.
                let larger = max(max(quick, lasting), -f64::MAX);
                -(larger + log10(exp10(quick - larger) + exp10(lasting - larger)))
            }
        };
        // Not "-drop": nothing lost is 0, without a sign.
        0.0 - min(max(drop, 0.0), f64::MAX)
    }
}

/// At which temperature a survival curve was measured, and what warming does.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reference {
    at: Temperature,
    z: TemperatureDifference,
}

impl Reference {
    /// `at`: the temperature of the curve's times; `z`: the warming that makes cells die ten times as fast.
    ///
    /// # Errors
    /// When a number is not finite, `at` lies below absolute zero, or `z` is not more than 0.
    pub fn new(at: Temperature, z: TemperatureDifference) -> Result<Self, Error> {
        Ok(Self {
            at: temperature(Argument::ReferenceTemperature, at)?,
            z: base!(TemperatureDifference, positive(Argument::ZValue, z.value)?),
        })
    }

    /// How many times as fast as at the reference cells die at a temperature: 10^((T − T ref) / z).
    fn pace(self, at: Temperature) -> f64 {
        exp10((at - self.at).value / self.z.value)
    }
}

/// A stretch of storage at one temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Period {
    lasts: f64,
    at: Option<Temperature>,
}

impl Period {
    /// `at` is `None` where nobody knows: cells then die as at the reference temperature.
    ///
    /// # Errors
    /// When the length is not finite or negative; when the temperature is not finite or below absolute zero.
    pub fn new(lasts: Time, at: Option<Temperature>) -> Result<Self, Error> {
        Ok(Self {
            lasts: not_negative(Argument::StoragePeriod, lasts.value)?,
            at: at.map(|at| temperature(Argument::StorageTemperature, at)).transpose()?,
        })
    }
}

/// How the cells of a product die on the seed: a curve, and what temperature does to it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Survival {
    model: Model,
    reference: Option<Reference>,
}

impl Survival {
    /// Without a reference temperature has no effect.
    #[must_use]
    pub const fn new(model: Model, reference: Option<Reference>) -> Self {
        Self { model, reference }
    }

    /// Whether it depends on the temperature in storage.
    #[must_use]
    pub const fn needs_temperature(self) -> bool {
        self.reference.is_some()
    }

    /// Time at the reference temperature that ages the cells as much as a time in storage:
    /// τ = Σ Δt · 10^((T − T ref) / z), the last period going on. Without periods τ is the time itself.
    ///
    /// # Errors
    /// When the time is not finite or negative.
    pub fn effective_time(self, storage: &[Period], after: Time) -> Result<Time, Error> {
        let seconds = not_negative(Argument::TimeSinceTreating, after.value)?;
        Ok(base!(Time, self.effective(storage, seconds)))
    }

    /// log10 of the share alive after a time in storage: 0 at first, then falling, never infinite.
    ///
    /// ```
    /// use hilum::quantity::{Temperature, TemperatureDifference, Time};
    /// use hilum::quantity::{temperature_difference::kelvin, time::minute};
    /// use hilum::viability::{DecimalReduction, Model, Period, Reference, Survival};
    /// # fn main() -> Result<(), hilum::Error> {
    /// // R package bioinactivation 1.3.0, its tests: D 5 at 90, z 10; after 2 at 100 prints −4.
    /// let reference =
    ///     Reference::new(Temperature::from_celsius(90.0), TemperatureDifference::new::<kelvin>(10.0))?;
    /// let d = DecimalReduction::new(Time::new::<minute>(5.0))?;
    /// let survival = Survival::new(Model::LogLinear(d), Some(reference));
    /// let hot = [Period::new(Time::new::<minute>(2.0), Some(Temperature::from_celsius(100.0)))?];
    /// assert!((survival.log10(&hot, Time::new::<minute>(2.0))? + 4.0).abs() < 1e-12);
    /// # Ok(()) }
    /// ```
    ///
    /// # Errors
    /// When the time is not finite or negative.
    pub fn log10(self, storage: &[Period], after: Time) -> Result<f64, Error> {
        let seconds = not_negative(Argument::TimeSinceTreating, after.value)?;
        Ok(self.model.log10(self.effective(storage, seconds)))
    }

    /// Cells on each seed after a time in storage: cells at treating × 10^(log10 S). None left is 0.
    ///
    /// # Errors
    /// When the time is not finite or negative.
    pub fn count(
        self,
        at_treating: PerSeed<CellCount>,
        storage: &[Period],
        after: Time,
    ) -> Result<PerSeed<CellCount>, Error> {
        let seconds = not_negative(Argument::TimeSinceTreating, after.value)?;
        Ok(self.left(at_treating, storage, seconds))
    }

    pub(super) fn left(
        self,
        at_treating: PerSeed<CellCount>,
        storage: &[Period],
        seconds: f64,
    ) -> PerSeed<CellCount> {
        PerSeed::of(at_treating.0 * exp10(self.model.log10(self.effective(storage, seconds))))
    }

    fn effective(self, storage: &[Period], seconds: f64) -> f64 {
        let Some((last, earlier)) = storage.split_last() else { return seconds };
        let (mut left, mut tau) = (seconds, 0.0);
        for period in earlier {
            let here = min(left, period.lasts);
            tau += here * self.pace(period);
            left -= here;
        }
        min(tau + left * self.pace(last), f64::MAX)
    }

    fn pace(self, period: &Period) -> f64 {
        match (self.reference, period.at) {
            (Some(reference), Some(at)) => reference.pace(at),
            _ => 1.0,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::ratio::{one, percent};
    use crate::quantity::temperature_difference::kelvin;
    use crate::quantity::time::{day, hour, minute, second};
    use crate::quantity::{CellsPerSeed, base};

    fn log_linear(d: Time) -> Model {
        Model::LogLinear(DecimalReduction::new(d).unwrap())
    }
    fn weibull(scale: Time, shape: f64) -> Model {
        Model::Weibull {
            scale: WeibullScale::new(scale).unwrap(),
            shape: WeibullShape::new(Ratio::new::<one>(shape)).unwrap(),
        }
    }
    fn two_phase(percent_fast: f64, fast: Time, slow: Time) -> Model {
        let fraction = Share::new(Ratio::new::<percent>(percent_fast)).unwrap();
        let [fast, slow] = [fast, slow].map(|time| DecimalReduction::new(time).unwrap());
        Model::TwoPhase(TwoPhase::new(fraction, fast, slow).unwrap())
    }
    fn reference(celsius: f64, z: f64) -> Reference {
        let z = TemperatureDifference::new::<kelvin>(z);
        Reference::new(Temperature::from_celsius(celsius), z).unwrap()
    }
    fn period(lasts: Time, celsius: f64) -> Period {
        Period::new(lasts, Some(Temperature::from_celsius(celsius))).unwrap()
    }
    fn minutes(number: f64) -> Time {
        Time::new::<minute>(number)
    }
    fn hours(number: f64) -> Time {
        Time::new::<hour>(number)
    }
    fn days(number: f64) -> Time {
        Time::new::<day>(number)
    }
    fn close(got: f64, expected: f64, within: f64) {
        assert!((got - expected).abs() < within, "{got} is not {expected}");
    }
    fn dead(model: Model, after: Time) -> f64 {
        1.0 - exp10(Survival::new(model, None).log10(&[], after).unwrap())
    }

    // R package bioinactivation 1.3.0 (CRAN), its own tests, print −4 for both: Bigelow with D 5 at 90 °C,
    // z 10 K, and Weibull-Mafart with δ 10 at 90 °C, z 10 K, p 2; each after 2 min at 100 °C.
    #[test]
    fn bigelow_and_weibull_mafart() {
        let hot = [period(minutes(2.0), 100.0)];
        for model in [log_linear(minutes(5.0)), weibull(minutes(10.0), 2.0)] {
            let survival = Survival::new(model, Some(reference(90.0, 10.0)));
            close(survival.log10(&hot, minutes(2.0)).unwrap(), -4.0, 1e-12);
        }
    }

    // dairyscience.info: F = 16 s at D = 2 s is 8 log reductions.
    #[test]
    fn sixteen_seconds_at_a_d_of_two() {
        let survival = Survival::new(log_linear(Time::new::<second>(2.0)), None);
        close(survival.log10(&[], Time::new::<second>(16.0)).unwrap(), -8.0, 1e-12);
    }

    // Acta Agriculturae Slovenica 1998 (abstract): broth at 20-25 °C fell from 1e9 to 1e8 per mL in
    // 27 weeks, so D = 189 d; forwards it must take one log in that time and a half in half of it.
    #[test]
    fn broth_loses_one_log_in_27_weeks() {
        let survival = Survival::new(log_linear(days(189.0)), None);
        close(survival.log10(&[], days(27.0 * 7.0)).unwrap(), -1.0, 1e-12);
        close(survival.log10(&[], days(94.5)).unwrap(), -0.5, 1e-12);
    }

    // Soybean seed under a fungicide (five Brazilian seasons, abstract): 62 % dead after 2 h, 95 % after
    // 24 h. The rate that fits either figure misses the other by far; dying is monotone in D, so no other
    // D does better.
    #[test]
    fn fungicide_deaths_do_not_follow_one_rate() {
        let of_two_hours = log_linear(Time::new::<hour>(2.0 / -log10(0.38)));
        close(dead(of_two_hours, hours(2.0)), 0.62, 1e-9);
        assert!(dead(of_two_hours, hours(24.0)) > 0.9999);
        let of_a_day = log_linear(Time::new::<hour>(24.0 / -log10(0.05)));
        close(dead(of_a_day, hours(24.0)), 0.95, 1e-9);
        assert!(dead(of_a_day, hours(2.0)) < 0.25);
    }

    // The same figures in two phases, solved by hand with a fast D of half an hour, of which 1e-4 is left
    // after 2 h: slow D = 22 h / log10(0.38 / 0.05) = 24.98 h, slow fraction = 0.05 × 10^(24 / 24.98) = 45.7 %.
    #[test]
    fn fungicide_deaths_follow_two_rates() {
        let model = two_phase(54.3, hours(0.5), hours(24.98));
        close(dead(model, hours(2.0)), 0.62, 0.005);
        close(dead(model, hours(24.0)), 0.95, 0.005);
    }

    // Worked by hand: 3 d at 30 °C with z = 20 K count tenfold, 5 d at 10 °C once, 20 d at −10 °C a tenth;
    // the last period goes on.
    #[test]
    fn a_history_is_added_up_not_averaged() {
        let storage = [period(days(3.0), 30.0), period(days(5.0), 10.0), period(days(1.0), -10.0)];
        let survival = Survival::new(log_linear(days(60.0)), Some(reference(10.0, 20.0)));
        let tau = survival.effective_time(&storage, days(28.0)).unwrap();
        close(tau.get::<day>(), 37.0, 1e-9);
        close(survival.effective_time(&storage, days(1.5)).unwrap().get::<day>(), 15.0, 1e-9);
    }

    #[test]
    fn without_a_reference_or_a_temperature_time_is_time() {
        let storage = [period(days(3.0), 30.0), Period::new(days(1.0), None).unwrap()];
        let plain = Survival::new(log_linear(days(60.0)), None);
        assert_eq!(plain.effective_time(&storage, days(9.0)), Ok(days(9.0)));
        let unknown = Survival::new(log_linear(days(60.0)), Some(reference(10.0, 20.0)));
        assert_eq!(unknown.effective_time(&storage[1..], days(9.0)), Ok(days(9.0)));
    }

    #[test]
    fn extremes_saturate_and_never_become_infinite() {
        let fierce = [period(days(1.0), 1e30)];
        let models = [
            log_linear(Time::new::<second>(1e-30)),
            weibull(Time::new::<second>(1e-30), 1e30),
            two_phase(90.0, Time::new::<second>(1e-30), Time::new::<second>(1e-30)),
        ];
        for model in models {
            let survival = Survival::new(model, Some(reference(-273.15, 1e-30)));
            let log = survival.log10(&fierce, Time::new::<second>(1e30)).unwrap();
            assert!(log.is_finite() && log < -1e300, "{log}");
            let cells = PerSeed::new(base!(CellsPerSeed, 1e30)).unwrap();
            assert_eq!(survival.count(cells, &fierce, Time::new::<second>(1e30)).unwrap().0.to_bits(), 0);
            assert_eq!(survival.log10(&fierce, Time::new::<second>(0.0)), Ok(0.0));
        }
    }

    // Two phases far beyond the range of a double: 10^(−5000) cannot be held, its logarithm can.
    #[test]
    fn two_phases_stay_in_logarithms() {
        let survival = Survival::new(two_phase(90.0, days(0.01), days(1.0)), None);
        close(survival.log10(&[], days(5000.0)).unwrap(), -5001.0, 1e-9);
    }

    #[test]
    fn all_fast_or_all_slow_is_one_rate() {
        let one_rate = Survival::new(log_linear(days(2.0)), None).log10(&[], days(7.0)).unwrap();
        for model in [two_phase(100.0, days(2.0), days(9.0)), two_phase(0.0, days(1.0), days(2.0))] {
            close(Survival::new(model, None).log10(&[], days(7.0)).unwrap(), one_rate, 1e-12);
        }
    }

    #[test]
    fn what_cannot_be_is_refused() {
        let d = DecimalReduction::new(days(2.0)).unwrap();
        let slower = DecimalReduction::new(days(3.0)).unwrap();
        assert!(matches!(TwoPhase::new(Share::WHOLE, slower, d), Err(Error::MoreThan { .. })));
        assert!(DecimalReduction::new(days(0.0)).is_err());
        assert!(Period::new(days(-1.0), None).is_err());
        assert!(Period::new(days(1.0), Some(Temperature::from_celsius(-300.0))).is_err());
        let z = TemperatureDifference::new::<kelvin>(0.0);
        assert!(Reference::new(Temperature::FREEZING, z).is_err());
        assert!(Survival::new(log_linear(days(2.0)), None).log10(&[], days(f64::NAN)).is_err());
    }
}
