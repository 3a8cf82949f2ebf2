//! How many are left after a time in store.

use core::mem::MaybeUninit;

use hilum::quantity::{Measure, Ratio};
use hilum::viability::{
    DecimalReduction, Model, Period, Reference, Survival, TwoPhase, WeibullScale, WeibullShape,
};

use crate::call::{self, Answer, Work, give, hilum_work, need, yes_or_no};
use crate::dose::cells::hilum_cells_per_seed;
use crate::number::number;
use crate::quantity::amount::{hilum_share, hilum_temperature_difference, hilum_time};
use crate::quantity::temperature::hilum_temperature;
use crate::status::Status;

/// The time in which nine of ten cells die: the D value.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_decimal_reduction {
    /// Seconds; 1 d is 86400.
    pub s: f64,
}

number!(hilum_decimal_reduction: s, DecimalReduction);

impl From<DecimalReduction> for hilum_decimal_reduction {
    fn from(reduction: DecimalReduction) -> Self {
        Self { s: reduction.get().to_base() }
    }
}

/// log10 S = -t / D.
pub const HILUM_LOG_LINEAR: i32 = 1;
/// log10 S = -(t / scale)^shape.
pub const HILUM_WEIBULL: i32 = 2;
/// log10 S = log10(f x 10^(-t / D fast) + (1 - f) x 10^(-t / D slow)).
pub const HILUM_TWO_PHASE: i32 = 3;

/// How the cells of a product die on the seed: a curve over time at a reference temperature, and what
/// warming does to it. There are no default parameters: they are the maker's or the laboratory's.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_survival {
    /// HILUM_LOG_LINEAR, HILUM_WEIBULL or HILUM_TWO_PHASE.
    pub curve: i32,
    /// 1 when temperature matters: reference and z say how. 0 when it has no effect.
    pub has_reference: i32,
    /// D of a log-linear curve, D slow of two phases.
    pub reduction: hilum_decimal_reduction,
    /// D fast of two phases.
    pub fast: hilum_decimal_reduction,
    /// The share of the cells that dies fast, of two phases.
    pub fraction: hilum_share,
    /// The time to the first tenfold drop, of a Weibull curve.
    pub scale: hilum_time,
    /// Of a Weibull curve: below 1 it tails off, above 1 it has a shoulder.
    pub shape: f64,
    /// The temperature at which the curve was measured.
    pub reference: hilum_temperature,
    /// The warming that makes cells die ten times as fast.
    pub z: hilum_temperature_difference,
}

impl hilum_survival {
    pub(crate) fn core(self) -> Answer<Survival> {
        let reference = if yes_or_no(self.has_reference)? {
            Some(Reference::new(self.reference.core()?, self.z.into())?)
        } else {
            None
        };
        let model = match self.curve {
            HILUM_LOG_LINEAR => Model::LogLinear(self.reduction.core()?),
            HILUM_WEIBULL => Model::Weibull {
                scale: WeibullScale::new(self.scale.into())?,
                shape: WeibullShape::new(Ratio::from_base(self.shape))?,
            },
            HILUM_TWO_PHASE => Model::TwoPhase(TwoPhase::new(
                self.fraction.core()?,
                self.fast.core()?,
                self.reduction.core()?,
            )?),
            _ => return Err(Status::NO_SUCH_CHOICE),
        };
        Ok(Survival::new(model, reference))
    }
}

/// A stretch of storage at one temperature. Never a mean: cells die on the warm days.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_period {
    /// How long it lasts. The last period goes on, whatever it says.
    pub lasts: hilum_time,
    /// The temperature; not looked at when it is not known.
    pub at: hilum_temperature,
    /// 1 when the temperature is known; 0 when nobody knows it: cells then die as at the reference.
    pub known: i32,
}

impl hilum_period {
    fn core(self) -> Answer<Period> {
        let at = if yes_or_no(self.known)? {
            Some(hilum::quantity::Temperature::from_celsius(self.at.celsius))
        } else {
            None
        };
        Ok(Period::new(self.lasts.into(), at)?)
    }
}

/// A survival curve and a storage history, as the core takes them.
///
/// # Safety
/// As for [`call::list`] and [`call::room`].
pub(super) unsafe fn stored<'a>(
    survival: Option<&hilum_survival>,
    storage: *const hilum_period,
    work: *mut hilum_work,
    n: usize,
) -> Answer<(Survival, &'a [Period])> {
    // SAFETY: by the caller.
    let (storage, mut work) = unsafe { (call::list(storage, n)?, Work::new(work, n)?) };
    Ok((need(survival)?.core()?, work.made(storage, hilum_period::core)?))
}

/// Time at the reference temperature that ages the cells as much as a time in storage: the sum of
/// dt x 10^((T - T reference) / z), the last of n periods going on. Without periods it is the time itself.
/// work: n of them.
///
/// Errors: NULL; HILUM_NO_SUCH_CHOICE; a number of the curve or a period that cannot be; a time that is not finite or
/// negative.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_survival_effective_time(
    survival: Option<&hilum_survival>,
    storage: *const hilum_period,
    work: *mut hilum_work,
    n: usize,
    after: hilum_time,
    out: Option<&mut MaybeUninit<hilum_time>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let (survival, storage) = unsafe { stored(survival, storage, work, n) }?;
        Ok(survival.effective_time(storage, after.into())?.into())
    })
}

/// log10 of the share alive after a time in storage: 0 at first, then falling, never infinite.
/// Errors: as for hilum_survival_effective_time.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_survival_log10(
    survival: Option<&hilum_survival>,
    storage: *const hilum_period,
    work: *mut hilum_work,
    n: usize,
    after: hilum_time,
    out: Option<&mut MaybeUninit<f64>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let (survival, storage) = unsafe { stored(survival, storage, work, n) }?;
        Ok(survival.log10(storage, after.into())?)
    })
}

/// Cells on each seed after a time in storage: cells at treating x 10^(log10 S). None left is 0.
/// Errors: as for hilum_survival_effective_time; cells that are not finite or not more than 0.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_survival_count(
    survival: Option<&hilum_survival>,
    at_treating: hilum_cells_per_seed,
    storage: *const hilum_period,
    work: *mut hilum_work,
    n: usize,
    after: hilum_time,
    out: Option<&mut MaybeUninit<hilum_cells_per_seed>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let (survival, storage) = unsafe { stored(survival, storage, work, n) }?;
        Ok(survival.count(at_treating.core()?, storage, after.into())?.into())
    })
}
