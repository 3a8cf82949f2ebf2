//! What a laboratory's counts say about the rate at which cells die.

use core::mem::MaybeUninit;

use hilum::viability::{Fit, Sample, fit_log_linear};

use super::survival::hilum_decimal_reduction;
use crate::call::{self, Answer, Work, give, hilum_work, need};
use crate::quantity::amount::hilum_time;
use crate::quantity::finite;

/// One count at a known time.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_sample {
    /// When it was counted, since any one moment.
    pub at: hilum_time,
    /// In whatever the laboratory counts: CFU per seed, per gram, per plate. A plate without colonies has no
    /// logarithm: leave it out, or enter the limit of detection.
    pub count: f64,
}

impl hilum_sample {
    fn core(self) -> Answer<Sample> {
        Ok(Sample::new(self.at.into(), self.count)?)
    }
}

/// A log-linear survival curve laid through counts: log10 N = log10 N0 - t / D.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_fit {
    /// log10 of the count at time 0, in the unit of the counts.
    pub log10_initial: f64,
    /// D.
    pub reduction: hilum_decimal_reduction,
    /// Standard error of log10 N0; 0 unless known.
    pub log10_initial_error: f64,
    /// Standard error of D, to first order; 0 unless known.
    pub reduction_error: hilum_time,
    /// Residual standard deviation of the counts, in log10; 0 unless known. Far beyond the scatter of plate
    /// counts it says that one rate does not fit.
    pub residual: f64,
    /// 1 when the errors are known: from three counts on.
    pub known: i32,
}

impl From<Fit> for hilum_fit {
    fn from(fit: Fit) -> Self {
        let zero = hilum_time { s: 0.0 };
        let (log10_initial_error, reduction_error, residual) =
            fit.errors.map_or((0.0, zero, 0.0), |errors| {
                (errors.log10_initial, errors.decimal_reduction.into(), errors.residual)
            });
        Self {
            log10_initial: fit.log10_initial,
            reduction: fit.decimal_reduction.into(),
            log10_initial_error,
            reduction_error,
            residual,
            known: i32::from(fit.errors.is_some()),
        }
    }
}

/// log10 N = log10 N0 - t / D by least squares on log10 N of n counts, each weighing the same. work: n of them.
/// Errors: NULL; HILUM_TOO_FEW below two counts; HILUM_ALL_EQUAL when all were taken at one time; HILUM_NOT_FALLING;
/// a count that is not finite or not more than 0, a time that is not finite or negative.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_fit_log_linear(
    samples: *const hilum_sample,
    work: *mut hilum_work,
    n: usize,
    out: Option<&mut MaybeUninit<hilum_fit>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let (samples, mut work) = unsafe { (call::list(samples, n)?, Work::new(work, n)?) };
        Ok(fit_log_linear(work.made(samples, hilum_sample::core)?)?.into())
    })
}

/// The count at time 0, in the unit of the counts: 10^(log10 N0).
/// Errors: NULL; a number that is not finite; a D not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_fit_initial(fit: Option<&hilum_fit>, out: Option<&mut MaybeUninit<f64>>) -> i32 {
    give(out, || {
        let fit = need(fit)?;
        let log10_initial = finite(fit.log10_initial)?;
        Ok(Fit { log10_initial, decimal_reduction: fit.reduction.core()?, errors: None }.initial())
    })
}
