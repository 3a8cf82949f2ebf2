//! What the planner is asked.

use crate::quantity::{Mass, MassFlow, Time, Volume, VolumePerMass};

/// Orders in one plan.
pub const MAX_ORDERS: usize = 10_000;
/// Tanks in one plan.
pub const MAX_TANKS: usize = 20;
/// Shifts in one plan.
pub const MAX_SHIFTS: usize = 1_000;
/// Batches in one plan.
pub const MAX_MIXES: usize = 100_000;
/// Set sizes that one product is sold in.
pub const MAX_SIZES: usize = 8;

/// An order, in running order.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Order {
    /// Seed to treat.
    pub mass: Mass,
    /// Seed flow × utilisation. Needed only where there are shifts.
    pub speed: Option<MassFlow>,
    /// Shift time between the order before and this one; not looked at for the first.
    pub changeover: Time,
}

/// What a tank gives one order.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Need {
    /// Slurry per mass of seed, more than 0.
    pub per_mass: VolumePerMass,
    /// While this number stays, the mix goes on; another number is due a new mix.
    pub recipe: u32,
    /// Share of the slurry that is the (ruling) living product, as the recipe pours it: 0 to 1.
    pub living: f64,
}

/// May a tank be refilled while the treater runs?
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Default)]
pub enum Refill {
    /// The treater stops when the tank is empty.
    #[default]
    WhenEmpty,
    /// Refills are made ready beside running, no stop after the first mix of a recipe. A tank with a
    /// pot life or with whole sets is never topped up: there this is read as `WhenEmpty`.
    TopUp,
}

/// One size that a living product's sets come in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SetSize {
    /// Living product that one set adds to a tank.
    pub adds: Volume,
    /// Sets on the shelf, more are never opened; none is without limit.
    pub stock: Option<u32>,
    /// When plans are equal in all that is wanted, the one with the least sum of the first rank is
    /// taken, then of the second, then the one with fewest sets. A price, or the seed it covers.
    pub ranks: [f64; 2],
}

/// How a tank is filled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Filling<'a> {
    /// Any volume.
    Measured,
    /// Whole sets of its living product.
    Sets(&'a [SetSize]),
}

/// A tank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tank<'a> {
    /// The most slurry it takes, hold-up filling included.
    pub capacity: Volume,
    /// Slurry that stays in its lines.
    pub hold_up: Volume,
    /// From the first pour until the mix can be used.
    pub mixing: Time,
    /// Refilled when empty, or beside running.
    pub refill: Refill,
    /// How long a mix may be used, from the start of mixing, nights included.
    pub pot_life: Option<Time>,
    /// Whole sets or any volume.
    pub filling: Filling<'a>,
}

/// Hours of work, as time since an instant of the caller's choice that is a whole second.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shift {
    /// Start.
    pub from: Time,
    /// End.
    pub to: Time,
}

/// What is to be planned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Job<'a> {
    /// In running order.
    pub orders: &'a [Order],
    /// All tanks.
    pub tanks: &'a [Tank<'a>],
    /// Per order and tank, the tanks of the first order first; none where an order does not need the tank.
    pub needs: &'a [Option<Need>],
    /// Ordered and apart. Empty: batches without instants; pot life and times are not looked at.
    pub shifts: &'a [Shift],
}

impl<'a> Job<'a> {
    /// What orders need of a tank, in running order.
    pub(super) fn needs_of(&self, tank: usize) -> impl Iterator<Item = Need> + Clone + 'a {
        let rows = self.needs.chunks(self.tanks.len().max(1));
        rows.filter_map(move |row| row.get(tank).copied().flatten())
    }
}
