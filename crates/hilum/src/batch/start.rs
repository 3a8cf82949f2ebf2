//! When does an order's first seed run?

use super::Plan;
use crate::quantity::{Time, time::second};

impl Plan<'_> {
    /// When the first seed of an order is treated, on the caller's clock: its mixes are ready and the
    /// changeover is over. `None` without shifts, and for an order that the plan does not come to.
    #[must_use]
    pub fn first_seed(&self, order: usize) -> Option<Time> {
        let (plant, clock) = (&self.plant, &self.plant.clock);
        let position = plant.line.start_of(order);
        if order >= plant.line.orders() || position >= self.reach.node.position {
            return None;
        }
        let next = self.pours.partition_point(|pour| pour.position <= position);
        let (from, ready) = plant.left(self.pours.get(..next).unwrap_or(&[]));
        let work = plant.leg_to(from, ready, position).work;
        clock.resumes(work).map(|at| Time::new::<second>(clock.caller(at)))
    }
}
