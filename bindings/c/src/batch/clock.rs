//! What the shifts leave time for.

use core::mem::MaybeUninit;

use hilum::Argument;
use hilum::batch::{most_treatable, work_between};
use hilum::error::not_negative;
use hilum::quantity::{MassFlow, Measure, Time};

use super::input::hilum_batch_shift;
use crate::call::{self, Work, give, hilum_work};
use crate::quantity::Quantity;
use crate::quantity::amount::{hilum_mass, hilum_time};
use crate::quantity::flow::hilum_seed_flow;

/// How much work time lies between two instants: the time of n shifts from one until the other; 0 if to is not
/// later. work: n of them. Errors: NULL; a time that is not finite.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_batch_work_between(
    from: hilum_time,
    to: hilum_time,
    shifts: *const hilum_batch_shift,
    work: *mut hilum_work,
    n: usize,
    out: Option<&mut MaybeUninit<hilum_time>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let (shifts, mut work) = unsafe { (call::list(shifts, n)?, Work::new(work, n)?) };
        let shifts = work.made(shifts, hilum_batch_shift::checked)?;
        let (from, to) = (hilum_time::checked(from.s)?, hilum_time::checked(to.s)?);
        Ok(work_between(from.into(), to.into(), shifts).into())
    })
}

/// How much seed can be run in one pot life, at the best moment of n shifts to mix:
/// speed x the most of (work time in the pot life, less mixing). work: n of them.
/// Errors: NULL; a time that is not finite, a pot life or mixing that is negative; a speed that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_batch_most_treatable(
    pot_life: hilum_time,
    mixing: hilum_time,
    shifts: *const hilum_batch_shift,
    work: *mut hilum_work,
    n: usize,
    speed: hilum_seed_flow,
    out: Option<&mut MaybeUninit<hilum_mass>>,
) -> i32 {
    give(out, || {
        // SAFETY: the conventions.
        let (shifts, mut work) = unsafe { (call::list(shifts, n)?, Work::new(work, n)?) };
        let shifts = work.made(shifts, hilum_batch_shift::checked)?;
        let [pot_life, mixing] = [pot_life.s, mixing.s].map(|s| not_negative(Argument::Duration, s));
        let [pot_life, mixing] = [pot_life?, mixing?].map(Time::from_base);
        let speed = MassFlow::from_base(hilum_seed_flow::checked(speed.kg_per_s)?.kg_per_s);
        Ok(most_treatable(pot_life, mixing, shifts, speed).into())
    })
}
