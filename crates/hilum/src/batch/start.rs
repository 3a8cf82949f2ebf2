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
        if !clock.has_shifts() || order >= plant.line.orders() || position >= self.reach.node.position {
            return None;
        }
        let next = self.pours.partition_point(|pour| pour.position <= position);
        let work = match next.checked_sub(1).and_then(|index| self.pours.get(index)) {
            None => plant.leg_to(0.0, 0.0, position).work,
            Some(last) => {
                // Tanks that are mixed at one place: the treater waits for the slowest.
                let group = self.pours.get(..next).unwrap_or(&[]).iter().rev();
                let ready = group
                    .take_while(|pour| pour.position >= last.position)
                    .filter_map(|pour| Some((pour, usize::try_from(pour.tank).ok()?)))
                    .map(|(pour, tank)| clock.work_at(pour.at + plant.mixing(tank)))
                    .fold(0.0, f64::max);
                plant.leg_to(last.position, ready, position).work
            }
        };
        clock.resumes(work).map(|at| Time::new::<second>(clock.caller(at)))
    }
}
