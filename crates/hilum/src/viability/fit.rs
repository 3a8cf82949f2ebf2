//! What a laboratory's counts say about the rate at which cells die.

use super::survival::DecimalReduction;
use crate::error::{Argument, Error, not_negative, positive};
use crate::math::{exp10, log10, sqrt};
use crate::quantity::{CellsPerSeed, Time, base};

/// One count at a known time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    at: f64,
    log10: f64,
}

impl Sample {
    /// `count` in whatever the laboratory counts: CFU per seed, per gram, per plate. A plate without
    /// colonies has no logarithm: leave it out, or enter the limit of detection.
    ///
    /// # Errors
    /// When the time is not finite or negative; when the count is not finite or not more than 0.
    pub fn new(at: Time, count: f64) -> Result<Self, Error> {
        Ok(Self {
            at: not_negative(Argument::CountTime, at.value)?,
            log10: log10(positive(Argument::Count, count)?),
        })
    }

    /// A count of cells on the seed.
    ///
    /// # Errors
    /// As [`Sample::new`].
    pub fn per_seed(at: Time, count: CellsPerSeed) -> Result<Self, Error> {
        Self::new(at, count.value)
    }
}

/// A log-linear survival curve laid through counts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// log10 of the count at time 0, in the unit of the counts.
    pub log10_initial: f64,
    /// D.
    pub decimal_reduction: DecimalReduction,
    /// How sure that is; two points fit any line, so they leave this unknown.
    pub errors: Option<FitErrors>,
}

/// How far off a fit may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FitErrors {
    /// Standard error of log10 N0.
    pub log10_initial: f64,
    /// Standard error of D, to first order: that of the slope × D².
    pub decimal_reduction: Time,
    /// Residual standard deviation of the counts, in log10. Plate counts of one suspension scatter too:
    /// a residual far beyond that says that one rate does not fit.
    pub residual: f64,
}

impl Fit {
    /// The count at time 0, in the unit of the counts.
    #[must_use]
    pub fn initial(self) -> f64 {
        exp10(self.log10_initial)
    }
}

/// log10 N = log10 N0 − t / D by least squares on log10 N, each count weighing the same.
///
/// ```
/// use hilum::quantity::{Time, time::day};
/// use hilum::viability::{Sample, fit_log_linear};
/// # fn main() -> Result<(), hilum::Error> {
/// // Adams & Moss, Food Microbiology, eq. 4.5: D = (t2 − t1) / (log N1 − log N2) = 30 d / (6 − 4).
/// let counts = [(0.0, 1e6), (30.0, 1e4)].map(|(at, count)| Sample::new(Time::new::<day>(at), count));
/// let [first, second] = counts;
/// let fit = fit_log_linear(&[first?, second?])?;
/// assert!((fit.decimal_reduction.get().get::<day>() - 15.0).abs() < 1e-9);
/// assert!((fit.log10_initial - 6.0).abs() < 1e-12);
/// # Ok(()) }
/// ```
///
/// # Errors
/// [`Error::TooFew`] below two counts; [`Error::AllEqual`] when all were taken at one time;
/// [`Error::NotFalling`] when the counts do not fall with time.
pub fn fit_log_linear(samples: &[Sample]) -> Result<Fit, Error> {
    let line = Line::through(samples)?;
    if line.slope >= 0.0 {
        return Err(Error::NotFalling { argument: Argument::Count, value: line.slope });
    }
    let d = DecimalReduction(positive(Argument::DecimalReduction, -1.0 / line.slope)?);
    let errors = line.errors.map(|(intercept, slope, residual)| FitErrors {
        log10_initial: intercept,
        decimal_reduction: base!(Time, slope * d.0 * d.0),
        residual,
    });
    Ok(Fit { log10_initial: line.intercept, decimal_reduction: d, errors })
}

/// A straight line by least squares: y = intercept + slope · x.
struct Line {
    intercept: f64,
    slope: f64,
    /// Standard errors of intercept and slope, and the residual standard deviation.
    errors: Option<(f64, f64, f64)>,
}

impl Line {
    fn through(samples: &[Sample]) -> Result<Self, Error> {
        let [first, _, ..] = samples else {
            return Err(Error::TooFew { argument: Argument::Count, given: samples.len(), least: 2 });
        };
        if samples.iter().all(|sample| sample.at.to_bits() == first.at.to_bits()) {
            return Err(Error::AllEqual { argument: Argument::CountTime, value: first.at });
        }
        let sum = |term: &dyn Fn(&Sample) -> f64| samples.iter().map(term).sum::<f64>();
        let n = sum(&|_| 1.0);
        // Deviations from the means: the raw sums of squares would cancel.
        let (mean_x, mean_y) = (sum(&|s| s.at) / n, sum(&|s| s.log10) / n);
        let sxx = sum(&|s| (s.at - mean_x) * (s.at - mean_x));
        let slope = sum(&|s| (s.at - mean_x) * (s.log10 - mean_y)) / sxx;
        let intercept = mean_y - slope * mean_x;
        let squares = sum(&|s| {
            let off = s.log10 - mean_y - slope * (s.at - mean_x);
            off * off
        });
        let errors = (n > 2.0).then(|| {
            let residual = sqrt(squares / (n - 2.0));
            (residual * sqrt(1.0 / n + mean_x * mean_x / sxx), residual / sqrt(sxx), residual)
        });
        Ok(Self { intercept, slope, errors })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::time::{day, hour};

    fn close(got: f64, expected: f64, relative: f64) {
        assert!((got / expected - 1.0).abs() < relative, "{got} is not {expected}");
    }
    fn in_days<const N: usize>(counts: [(f64, f64); N]) -> [Sample; N] {
        counts.map(|(at, count)| Sample::new(Time::new::<day>(at), count).unwrap())
    }

    /// NIST Statistical Reference Datasets, linear regression, "Norris" (lower difficulty): y, x.
    const NORRIS: [(f64, f64); 36] = [
        (0.1, 0.2),
        (338.8, 337.4),
        (118.1, 118.2),
        (888.0, 884.6),
        (9.2, 10.1),
        (228.1, 226.5),
        (668.5, 666.3),
        (998.5, 996.3),
        (449.1, 448.6),
        (778.9, 777.0),
        (559.2, 558.2),
        (0.3, 0.4),
        (0.1, 0.6),
        (778.1, 775.5),
        (668.8, 666.9),
        (339.3, 338.0),
        (448.9, 447.5),
        (10.8, 11.6),
        (557.7, 556.0),
        (228.3, 228.1),
        (998.0, 995.8),
        (888.8, 887.6),
        (119.6, 120.2),
        (0.3, 0.3),
        (0.6, 0.3),
        (557.6, 556.8),
        (339.3, 339.1),
        (888.0, 887.2),
        (998.5, 999.0),
        (778.9, 779.0),
        (10.2, 11.1),
        (117.6, 118.3),
        (228.9, 229.2),
        (668.4, 669.1),
        (449.2, 448.9),
        (0.2, 0.5),
    ];

    // Certified: B0 -0.262323073774029 (0.232818234301152), B1 1.00211681802045 (0.429796848199937E-03),
    // residual standard deviation 0.884796396144373.
    #[test]
    fn the_line_agrees_with_the_certified_values_of_nist() {
        let line = Line::through(&NORRIS.map(|(y, x)| Sample { at: x, log10: y })).unwrap();
        close(line.intercept, -0.262_323_073_774_029, 1e-12);
        close(line.slope, 1.002_116_818_020_45, 1e-14);
        let (intercept, slope, residual) = line.errors.unwrap();
        close(intercept, 0.232_818_234_301_152, 1e-13);
        close(slope, 0.429_796_848_199_937e-3, 1e-13);
        close(residual, 0.884_796_396_144_373, 1e-13);
    }

    // Counts of our own; scipy 1.17.1 `stats.linregress` of log10 on days prints slope
    // -0.015659742126575078 (standard error 0.0005052884531211694), intercept 6.108571547521946
    // (0.021851413220670465); statsmodels 0.15.0 `OLS` agrees to 13 digits, residual 0.03667259531131209.
    #[test]
    fn plate_counts_agree_with_scipy() {
        let counts =
            in_days([(0.0, 1.3e6), (7.0, 9.1e5), (14.0, 8.2e5), (28.0, 4.6e5), (56.0, 1.9e5), (84.0, 5.8e4)]);
        let fit = fit_log_linear(&counts).unwrap();
        close(fit.decimal_reduction.get().get::<day>(), 1.0 / 0.015_659_742_126_575_078, 1e-12);
        close(fit.log10_initial, 6.108_571_547_521_946, 1e-13);
        let errors = fit.errors.unwrap();
        close(errors.log10_initial, 0.021_851_413_220_670_465, 1e-11);
        // The delta method by hand: 0.00050528845 / 0.015659742².
        close(errors.decimal_reduction.get::<day>(), 2.060_488_341_478, 1e-11);
        close(errors.residual, 0.036_672_595_311_312_09, 1e-11);
    }

    // Fungicide on soybean seed: 62 % dead after 2 h, 95 % after 24 h. statsmodels 0.15.0 `OLS` prints a
    // residual of 0.22941018239418623: half as large as the drop of the first two hours.
    #[test]
    fn the_residual_says_that_one_rate_does_not_fit() {
        let counts = [(0.0, 1.0), (2.0, 0.38), (24.0, 0.05)]
            .map(|(at, alive)| Sample::new(Time::new::<hour>(at), alive).unwrap());
        let errors = fit_log_linear(&counts).unwrap().errors.unwrap();
        close(errors.residual, 0.229_410_182_394_186_23, 1e-12);
        assert!(errors.residual > 0.5 * -log10(0.38));
    }

    #[test]
    fn two_counts_give_a_line_but_no_errors() {
        let fit = fit_log_linear(&in_days([(0.0, 1e9), (189.0, 1e8)])).unwrap();
        close(fit.decimal_reduction.get().get::<day>(), 189.0, 1e-12);
        close(fit.initial(), 1e9, 1e-12);
        assert_eq!(fit.errors, None);
    }

    // The slope knows no zero of time: raw sums of squares would lose all but four digits here.
    #[test]
    fn counting_from_another_day_gives_the_same_line() {
        let counts = [(0.0, 6.1), (7.0, 6.0), (14.0, 5.875), (28.0, 5.625), (56.0, 5.25), (84.0, 4.75)];
        let from =
            |zero: f64| Line::through(&counts.map(|(at, log10)| Sample { at: at + zero, log10 })).unwrap();
        let (now, later) = (from(0.0), from(1e14));
        close(later.slope, now.slope, 1e-12);
        close(later.errors.unwrap().2, now.errors.unwrap().2, 1e-12);
    }

    #[test]
    fn what_has_no_line_is_refused() {
        let too_few = Err(Error::TooFew { argument: Argument::Count, given: 1, least: 2 });
        assert_eq!(fit_log_linear(&in_days([(0.0, 1e6)])), too_few);
        let same = fit_log_linear(&in_days([(0.1, 1e6), (0.1, 1e5), (0.1, 1e4)]));
        assert!(matches!(same, Err(Error::AllEqual { argument: Argument::CountTime, .. })));
        let growing = fit_log_linear(&in_days([(0.0, 1e6), (7.0, 2e6)]));
        assert!(matches!(growing, Err(Error::NotFalling { .. })));
        let steady = fit_log_linear(&in_days([(0.0, 1e6), (7.0, 1e6)]));
        assert!(matches!(steady, Err(Error::NotFalling { .. })));
        assert!(Sample::new(Time::new::<day>(1.0), 0.0).is_err());
        assert!(Sample::new(Time::new::<day>(-1.0), 1e6).is_err());
    }
}
