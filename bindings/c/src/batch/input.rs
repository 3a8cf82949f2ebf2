//! What the planner is asked.

use hilum::batch::{Filling, Need, Order, Refill, SetSize, Shift, Tank};
use hilum::quantity::{MassFlow, Measure, VolumePerMass};

use crate::call::Answer;
use crate::dose::liquid::hilum_rate_per_mass;
use crate::pack::HILUM_NO_LIMIT;
use crate::quantity::Quantity;
use crate::quantity::amount::{hilum_mass, hilum_time, hilum_volume};
use crate::quantity::flow::hilum_seed_flow;
use crate::status::Status;

/// Orders in one plan, at most.
pub const HILUM_MOST_ORDERS: usize = 10_000;
/// Tanks in one plan, at most.
pub const HILUM_MOST_TANKS: usize = 20;
/// Shifts in one plan, at most.
pub const HILUM_MOST_SHIFTS: usize = 1_000;
/// Batches in one plan, at most.
pub const HILUM_MOST_MIXES: usize = 100_000;

/// An order. Orders are given as they run.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_batch_order {
    /// Seed to treat.
    pub mass: hilum_mass,
    /// Seed flow x utilisation; not looked at, and 0 will do, where there are no shifts.
    pub speed: hilum_seed_flow,
    /// Shift time between the order before and this one; not looked at for the first.
    pub changeover: hilum_time,
}

/// What a tank gives one order.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_batch_need {
    /// Slurry per mass of seed; 0 where the order does not need the tank.
    pub per_mass: hilum_rate_per_mass,
    /// Share of the slurry that is the living product, as the recipe pours it: 0 to 1.
    pub living: f64,
    /// While this number stays, the mix goes on; another number is due a new mix.
    pub recipe: u32,
}

/// One size that a living product's sets come in.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_batch_set {
    /// Living product that one set adds to a tank.
    pub adds: hilum_volume,
    /// When plans are equal in all that is wanted, the one with the least sum of the first rank is taken, then of
    /// the second, then the one with fewest sets: a price, or the kilograms of seed that a set covers.
    pub ranks: [f64; 2],
    /// Sets on the shelf; HILUM_NO_LIMIT when there is no limit.
    pub stock: u32,
}

/// The treater stops when the tank is empty.
pub const HILUM_WHEN_EMPTY: i32 = 0;
/// Refills are made ready beside running. A tank with a pot life or whole sets is never topped up.
pub const HILUM_TOP_UP: i32 = 1;

/// A tank.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_batch_tank {
    /// The most slurry it takes, hold-up filling included.
    pub capacity: hilum_volume,
    /// Slurry that stays in its lines.
    pub hold_up: hilum_volume,
    /// From the first pour until the mix can be used.
    pub mixing: hilum_time,
    /// How long a mix may be used, from the start of mixing, nights included; 0 when there is no limit.
    pub pot_life: hilum_time,
    /// The sizes of its living product's sets, at most 8; it is filled with whole sets. NULL when it takes any volume.
    pub sets: *const hilum_batch_set,
    /// How many sizes; 0 when it takes any volume.
    pub n_sets: usize,
    /// HILUM_WHEN_EMPTY or HILUM_TOP_UP.
    pub refill: i32,
}

/// Hours of work, since an instant of your choice that is a whole second.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_batch_shift {
    /// Start.
    pub from: hilum_time,
    /// End.
    pub to: hilum_time,
}

/// What is to be planned.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_batch_job {
    /// The orders, as they run.
    pub orders: *const hilum_batch_order,
    /// How many.
    pub n_orders: usize,
    /// All tanks.
    pub tanks: *const hilum_batch_tank,
    /// How many.
    pub n_tanks: usize,
    /// Per order and tank, the tanks of the first order first: needs[order * n_tanks + tank].
    pub needs: *const hilum_batch_need,
    /// How many: n_orders * n_tanks.
    pub n_needs: usize,
    /// Ordered and apart. NULL: batches without instants; pot life and times are not looked at.
    pub shifts: *const hilum_batch_shift,
    /// How many.
    pub n_shifts: usize,
}

impl hilum_batch_order {
    pub(super) fn core(self) -> Order {
        let flows = self.speed.kg_per_s != 0.0;
        Order {
            mass: self.mass.into(),
            speed: flows.then(|| MassFlow::from_base(self.speed.kg_per_s)),
            changeover: self.changeover.into(),
        }
    }
}

impl hilum_batch_need {
    pub(super) fn core(self) -> Option<Need> {
        let needed = self.per_mass.m3_per_kg != 0.0;
        needed.then(|| Need {
            per_mass: VolumePerMass::from_base(self.per_mass.m3_per_kg),
            recipe: self.recipe,
            living: self.living,
        })
    }
}

impl hilum_batch_set {
    pub(super) fn core(self) -> SetSize {
        let stock = (self.stock != HILUM_NO_LIMIT).then_some(self.stock);
        SetSize { adds: self.adds.into(), stock, ranks: self.ranks }
    }
}

impl hilum_batch_tank {
    pub(super) fn core(self, sets: &[SetSize]) -> Answer<Tank<'_>> {
        let limited = self.pot_life.s != 0.0;
        Ok(Tank {
            capacity: self.capacity.into(),
            hold_up: self.hold_up.into(),
            mixing: self.mixing.into(),
            refill: match self.refill {
                HILUM_WHEN_EMPTY => Ok(Refill::WhenEmpty),
                HILUM_TOP_UP => Ok(Refill::TopUp),
                _ => Err(Status::NO_SUCH_CHOICE),
            }?,
            pot_life: limited.then(|| self.pot_life.into()),
            filling: if sets.is_empty() { Filling::Measured } else { Filling::Sets(sets) },
        })
    }
}

impl hilum_batch_shift {
    pub(super) fn core(self) -> Shift {
        Shift { from: self.from.into(), to: self.to.into() }
    }

    /// For what does not look at it by itself.
    pub(super) fn checked(self) -> Answer<Shift> {
        let (from, to) = (hilum_time::checked(self.from.s)?, hilum_time::checked(self.to.s)?);
        Ok(Shift { from: from.into(), to: to.into() })
    }
}
