//! What the planner answers.

use hilum::batch::{Mix, Portion, Proof, Summary, Times};
use hilum::quantity::Time;

use crate::call::{Answer, hilum_work};
use crate::pack::{HILUM_BOUND_REACHED, HILUM_PROVEN};
use crate::quantity::amount::{hilum_mass, hilum_time, hilum_volume};
use crate::status::Status;

/// A batch of one tank. mixed = applied + hold_up + discarded.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_batch_mix {
    /// All that is poured.
    pub mixed: hilum_volume,
    /// What goes on seed.
    pub applied: hilum_volume,
    /// What fills empty lines.
    pub hold_up: hilum_volume,
    /// What is left and thrown away.
    pub discarded: hilum_volume,
    /// When mixing starts, on a whole second, since the same instant as the shifts; 0 without shifts.
    pub mix_at: hilum_time,
    /// When it can be used; 0 without shifts.
    pub ready_at: hilum_time,
    /// Until when it may be used: mix_at + pot life, rounded down to a whole second; 0 unless has_use_by.
    pub use_by: hilum_time,
    /// When its last seed is treated; 0 without shifts.
    pub done_at: hilum_time,
    /// Whole sets of each size; 0 where the tank takes any volume.
    pub sets: [u32; 8],
    /// Index of the tank.
    pub tank: u32,
    /// Counts from 1 within the tank.
    pub number: u32,
    /// 1 when the plan has shifts, so that the times are set; else 0.
    pub has_times: i32,
    /// 1 when the mix has a time to be used by; else 0.
    pub has_use_by: i32,
}

/// Seed of one order that is treated from one mix.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_batch_portion {
    /// Seed.
    pub mass: hilum_mass,
    /// Index of the mix.
    pub mix: u32,
    /// Index of the order.
    pub order: u32,
}

/// When an order's first seed runs.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_batch_first {
    /// Since the same instant as the shifts: its mixes are ready and the changeover is over; 0 unless known.
    pub at: hilum_time,
    /// 1 when the plan has shifts and comes to the order; else 0.
    pub known: i32,
}

/// How far a plan comes.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_batch_summary {
    /// Seed treated, from the first order on.
    pub treated: hilum_mass,
    /// When the last seed is treated; 0 unless has_finish.
    pub finish: hilum_time,
    /// 1 when that is all of it; else 0.
    pub all_treated: i32,
    /// 1 when the plan has shifts, so that the finish is set; else 0.
    pub has_finish: i32,
    /// HILUM_PROVEN when no plan within the rules is better; HILUM_BOUND_REACHED when it is valid, but not known to be
    /// the best.
    pub proof: i32,
    /// Tanks whose shelf does not suffice, so that less seed is treated than could be: bit 0 is tank 0.
    pub short_of_stock: u32,
}

/// The room that you give a plan, and what it came to.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_batch_room {
    /// Working memory.
    pub work: *mut hilum_work,
    /// How many of it. After HILUM_ROOM_TOO_SMALL: how many are needed.
    pub n_work: usize,
    /// Where the batches are written.
    pub mixes: *mut hilum_batch_mix,
    /// Room for so many. Afterwards: how many there are, or (HILUM_ROOM_TOO_SMALL) how many are needed.
    pub n_mixes: usize,
    /// Where the portions of seed are written, sorted by mix, then by order.
    pub portions: *mut hilum_batch_portion,
    /// Room for so many. Afterwards as for n_mixes.
    pub n_portions: usize,
    /// Where it is written when each order's first seed runs, as many as the job has orders; NULL when not wanted.
    pub firsts: *mut hilum_batch_first,
    /// Batches to reckon with; 0 for a usual number. Give more, up to HILUM_MOST_MIXES, on HILUM_BATCH_TOO_MANY of
    /// HILUM_OF_BATCH_MIXES.
    pub pours: u32,
    /// Plans to compare at most; 0 for a usual number. Give more where a better plan is worth more work.
    pub labels: u32,
}

const NONE: hilum_time = hilum_time { s: 0.0 };

fn index(of: usize) -> Answer<u32> {
    u32::try_from(of).map_err(|_| Status::TOO_LONG)
}

fn since(time: Option<Time>) -> hilum_time {
    time.map_or(NONE, Into::into)
}

impl hilum_batch_mix {
    pub(super) fn new(mix: &Mix) -> Answer<Self> {
        let time = |of: fn(Times) -> Time| since(mix.times.map(of));
        let use_by = mix.times.and_then(|times| times.use_by);
        Ok(Self {
            mixed: mix.mixed.into(),
            applied: mix.applied.into(),
            hold_up: mix.hold_up.into(),
            discarded: mix.discarded.into(),
            mix_at: time(|times| times.mix_at),
            ready_at: time(|times| times.ready_at),
            use_by: since(use_by),
            done_at: time(|times| times.done_at),
            sets: mix.sets,
            tank: index(mix.tank)?,
            number: mix.number,
            has_times: i32::from(mix.times.is_some()),
            has_use_by: i32::from(use_by.is_some()),
        })
    }
}

impl hilum_batch_portion {
    pub(super) fn new(portion: &Portion) -> Answer<Self> {
        Ok(Self { mass: portion.mass.into(), mix: index(portion.mix)?, order: index(portion.order)? })
    }
}

impl hilum_batch_first {
    pub(super) fn new(at: Option<Time>) -> Self {
        Self { at: since(at), known: i32::from(at.is_some()) }
    }
}

impl From<Summary> for hilum_batch_summary {
    fn from(summary: Summary) -> Self {
        Self {
            treated: summary.treated.into(),
            finish: since(summary.finish),
            all_treated: i32::from(summary.all_treated),
            has_finish: i32::from(summary.finish.is_some()),
            proof: match summary.proof {
                Proof::Proven => HILUM_PROVEN,
                Proof::Bounded => HILUM_BOUND_REACHED,
            },
            short_of_stock: summary.short_of_stock,
        }
    }
}
