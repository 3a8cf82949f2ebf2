//! How far along the orders is the treater?
//!
//! A *position* is the seed treated so far, in kg. Run time (running and changeovers, no waits) and every tank's
//! slurry are piecewise linear in it.

use super::{Job, Need};

/// Within this share of a tank's capacity a volume is nothing: the slack for counting whole things.
pub(super) const SLACK: f64 = 1e-9;

/// The orders laid end to end.
#[derive(Clone, Copy, Debug)]
pub(super) struct Line<'a> {
    job: Job<'a>,
    /// Seconds per kg of each order.
    pace: &'a [f64],
    /// Shift time before each order.
    changeover: &'a [f64],
    /// Position before each order, and after the last.
    mass: &'a [f64],
    /// Run time at each order's first seed, its changeover done; after the last.
    run: &'a [f64],
    /// Per tank: slurry used before each order, and after the last.
    used: &'a [f64],
    /// Per tank: slurry used up to the end of the recipe that the order belongs to.
    recipe_end: &'a [f64],
}

/// Numbers that a line takes of the working memory.
pub(super) fn numbers(orders: usize, tanks: usize) -> usize {
    (orders + 1) * (4 + 2 * tanks)
}

impl<'a> Line<'a> {
    pub(super) fn new(job: Job<'a>, memory: &'a mut [f64]) -> Option<Self> {
        let rows = job.orders.len() + 1;
        let (mass, rest) = memory.split_at_mut_checked(rows)?;
        let (run, rest) = rest.split_at_mut_checked(rows)?;
        let (pace, rest) = rest.split_at_mut_checked(rows)?;
        let (changeover, rest) = rest.split_at_mut_checked(rows)?;
        let (used, rest) = rest.split_at_mut_checked(rows * job.tanks.len())?;
        let (recipe_end, _) = rest.split_at_mut_checked(rows * job.tanks.len())?;
        tempo(&job, pace, changeover);
        lay_out(&job, pace, changeover, mass, run);
        for tank in 0..job.tanks.len() {
            let column = tank * rows..(tank + 1) * rows;
            let used = used.get_mut(column.clone())?;
            use_up(&job, tank, used);
            end_recipes(&job, tank, used, recipe_end.get_mut(column)?);
        }
        Some(Self { job, pace, changeover, mass, run, used, recipe_end })
    }

    /// Position after the last order.
    pub(super) fn end(&self) -> f64 {
        self.mass.last().copied().unwrap_or(0.0)
    }

    pub(super) fn orders(&self) -> usize {
        self.job.orders.len()
    }

    /// The order whose seed comes next; the number of orders at the end.
    pub(super) fn order_at(&self, position: f64) -> usize {
        self.mass.partition_point(|before| *before <= position).saturating_sub(1)
    }

    /// Position before an order.
    pub(super) fn start_of(&self, order: usize) -> f64 {
        self.mass.get(order).copied().unwrap_or_else(|| self.end())
    }

    fn pace(&self, order: usize) -> f64 {
        self.pace.get(order).copied().unwrap_or(1.0)
    }

    fn changeover(&self, order: usize) -> f64 {
        self.changeover.get(order).copied().unwrap_or(0.0)
    }

    /// Run time at a position, with the changeover to the order that begins there.
    pub(super) fn run_at(&self, position: f64) -> f64 {
        self.run_in(self.order_at(position), position)
    }

    fn run_in(&self, order: usize, position: f64) -> f64 {
        let start = self.run.get(order).copied().unwrap_or(0.0);
        start + (position - self.start_of(order)) * self.pace(order)
    }

    /// Run time at a position, before the changeover to the order that begins there.
    pub(super) fn arrival(&self, position: f64) -> f64 {
        let order = self.order_at(position);
        let run = self.run_in(order, position);
        if position > self.start_of(order) { run } else { run - self.changeover(order) }
    }

    /// Position at a run time; during a changeover, where the next order begins.
    pub(super) fn position_at(&self, run: f64) -> f64 {
        let order = self.run.partition_point(|start| *start <= run).saturating_sub(1);
        let start = self.run.get(order).copied().unwrap_or(0.0);
        let (first, next) = (self.start_of(order), self.start_of(order + 1));
        let position = first + (run - start).max(0.0) / self.pace(order);
        // Not a first grain of an order, nor a last one left.
        let grain = (next - first) * SLACK;
        if position - first <= grain {
            first
        } else if next - position <= grain {
            next
        } else {
            position
        }
    }

    /// What an order needs of a tank.
    pub(super) fn need(&self, order: usize, tank: usize) -> Option<Need> {
        let tanks = self.job.tanks.len();
        if order < self.orders() { self.job.needs.get(order * tanks + tank).copied().flatten() } else { None }
    }

    fn column<'b>(&self, table: &'b [f64], tank: usize) -> &'b [f64] {
        let rows = self.orders() + 1;
        table.get(tank * rows..(tank + 1) * rows).unwrap_or(&[])
    }

    /// Slurry of a tank used up to a position.
    pub(super) fn slurry(&self, tank: usize, position: f64) -> f64 {
        self.slurry_in(self.order_at(position), tank, position)
    }

    /// The same, at a position in this order.
    pub(super) fn slurry_in(&self, order: usize, tank: usize, position: f64) -> f64 {
        let before = self.column(self.used, tank).get(order).copied().unwrap_or(0.0);
        match self.need(order, tank) {
            Some(need) => before + (position - self.start_of(order)) * need.per_mass.value,
            None => before,
        }
    }

    /// Where more than this slurry of a tank would be needed: the end, if nowhere.
    pub(super) fn beyond(&self, tank: usize, slurry: f64, slack: f64) -> f64 {
        let used = self.column(self.used, tank);
        let after = used.partition_point(|before| *before <= slurry + slack);
        let Some(order) = after.checked_sub(1).filter(|order| *order < self.orders()) else {
            return self.end();
        };
        let (start, before) = (self.start_of(order), used.get(order).copied().unwrap_or(0.0));
        match self.need(order, tank) {
            Some(need) if slurry > before + slack => start + (slurry - before) / need.per_mass.value,
            _ => start,
        }
    }

    /// Slurry used up to the end of the recipe in use at a position.
    pub(super) fn recipe_end(&self, tank: usize, order: usize) -> f64 {
        self.column(self.recipe_end, tank).get(order).copied().unwrap_or(0.0)
    }

    /// Slurry used before the recipe in use began.
    pub(super) fn recipe_start(&self, tank: usize, order: usize) -> f64 {
        let end = self.recipe_end(tank, order);
        let first = self.column(self.recipe_end, tank).partition_point(|other| *other < end);
        self.column(self.used, tank).get(first).copied().unwrap_or(0.0)
    }

    /// The first position, from here on, that needs a tank.
    pub(super) fn next_need(&self, tank: usize, position: f64) -> f64 {
        let order = self.order_at(position);
        if self.need(order, tank).is_some() {
            return position;
        }
        let used = self.column(self.used, tank);
        let before = used.get(order).copied().unwrap_or(0.0);
        self.start_of(used.partition_point(|used| *used <= before).saturating_sub(1))
    }

    /// Where the tank was last needed before a position.
    pub(super) fn last_need(&self, tank: usize, position: f64) -> f64 {
        let order = self.order_at(position);
        if position > self.start_of(order) && self.need(order, tank).is_some() {
            return position;
        }
        let used = self.column(self.used, tank);
        let before = used.get(order).copied().unwrap_or(0.0);
        self.start_of(used.partition_point(|used| *used < before))
    }
}

/// Without shifts "time" is seed: 1 s/kg, and no changeovers.
fn tempo(job: &Job<'_>, pace: &mut [f64], changeover: &mut [f64]) {
    let timed = !job.shifts.is_empty();
    for (row, order) in job.orders.iter().enumerate() {
        let speed = order.speed.map_or(1.0, |speed| speed.value);
        set(pace, row, if timed { 1.0 / speed } else { 1.0 });
        set(changeover, row, if timed && row > 0 { order.changeover.value } else { 0.0 });
    }
    set(pace, job.orders.len(), 1.0);
    set(changeover, job.orders.len(), 0.0);
}

fn lay_out(job: &Job<'_>, pace: &[f64], changeover: &[f64], mass: &mut [f64], run: &mut [f64]) {
    let (mut seed, mut time) = (0.0, 0.0);
    for (row, ((order, pace), changeover)) in job.orders.iter().zip(pace).zip(changeover).enumerate() {
        time += changeover;
        set(mass, row, seed);
        set(run, row, time);
        seed += order.mass.value;
        time += order.mass.value * pace;
    }
    set(mass, job.orders.len(), seed);
    set(run, job.orders.len(), time);
}

fn use_up(job: &Job<'_>, tank: usize, used: &mut [f64]) {
    let mut sum = 0.0;
    for (row, order) in job.orders.iter().enumerate() {
        set(used, row, sum);
        let need = job.needs.get(row * job.tanks.len() + tank).copied().flatten();
        sum += need.map_or(0.0, |need| need.per_mass.value * order.mass.value);
    }
    set(used, job.orders.len(), sum);
}

/// From the last order back: where its recipe ends.
fn end_recipes(job: &Job<'_>, tank: usize, used: &[f64], ends: &mut [f64]) {
    let mut end = used.last().copied().unwrap_or(0.0);
    let mut later = None;
    set(ends, job.orders.len(), end);
    for row in (0..job.orders.len()).rev() {
        if let Some(need) = job.needs.get(row * job.tanks.len() + tank).copied().flatten() {
            if later.is_some_and(|recipe| recipe != need.recipe) {
                end = used.get(row + 1).copied().unwrap_or(end);
            }
            later = Some(need.recipe);
        }
        set(ends, row, end);
    }
}

fn set(cells: &mut [f64], row: usize, value: f64) {
    if let Some(cell) = cells.get_mut(row) {
        *cell = value;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::batch::{Filling, Order, Refill, Shift, Tank};
    use crate::quantity::{Mass, MassFlow, Time, Volume, VolumePerMass};
    use crate::quantity::{
        mass::kilogram, mass_flow::kilogram_per_second, time::second, volume::cubic_meter,
    };

    /// 100, 50 and 200 kg at 2, 1 and 4 kg/s with 10 s between; the tank gives 3, nothing, 3 per kg, all one recipe.
    #[test]
    fn seed_time_and_slurry_along_the_line() {
        let order = |kg: f64, speed: f64| Order {
            mass: Mass::new::<kilogram>(kg),
            speed: Some(MassFlow::new::<kilogram_per_second>(speed)),
            changeover: Time::new::<second>(10.0),
        };
        let volume = Volume::new::<cubic_meter>;
        let need = |recipe| {
            let per_mass: VolumePerMass = volume(3.0) / Mass::new::<kilogram>(1.0);
            Some(Need { per_mass, recipe, living: 0.0 })
        };
        let tank = Tank {
            capacity: volume(100.0),
            hold_up: volume(0.0),
            mixing: Time::new::<second>(0.0),
            refill: Refill::WhenEmpty,
            pot_life: None,
            filling: Filling::Measured,
        };
        let orders = [order(100.0, 2.0), order(50.0, 1.0), order(200.0, 4.0)];
        let tanks = [tank];
        let shifts = [Shift { from: Time::new::<second>(0.0), to: Time::new::<second>(1e6) }];
        let needs = [need(1), None, need(1)];
        let mut memory = [f64::NAN; 24];
        let line =
            Line::new(Job { orders: &orders, tanks: &tanks, needs: &needs, shifts: &shifts }, &mut memory)
                .unwrap();
        let near = |a: f64, b: f64| assert!((a - b).abs() < 1e-9, "{a}, not {b}");
        near(line.end(), 350.0);
        // The first order takes 50 s, then the changeover.
        near(line.arrival(100.0), 50.0);
        near(line.run_at(100.0), 60.0);
        near(line.run_at(150.0), 120.0);
        near(line.run_at(350.0), 170.0);
        near(line.position_at(55.0), 100.0);
        near(line.position_at(61.0), 101.0);
        // The second order runs from 60 to 110 s; of its 50 kg a grain of 5e-8 is neither begun nor left.
        let is = |run: f64, kg: f64| assert!((line.position_at(run) - kg).abs() < 1e-12, "{run}");
        is(60.0 + 4e-8, 100.0);
        is(110.0 - 4e-8, 150.0);
        is(60.0 + 6e-8, 100.0 + 6e-8);
        is(110.0 - 6e-8, 150.0 - 6e-8);
        // The second order takes no slurry: after 300 the tank is next needed at 150 kg.
        near(line.slurry(0, 120.0), 300.0);
        near(line.beyond(0, 300.0, 1e-9), 150.0);
        near(line.beyond(0, 330.0, 1e-9), 160.0);
        near(line.next_need(0, 120.0), 150.0);
        near(line.last_need(0, 120.0), 100.0);
        near(line.recipe_end(0, 0), 900.0);
        near(line.recipe_start(0, 2), 0.0);
    }
}
