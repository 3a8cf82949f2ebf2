//! Can this job be planned at all?

use super::fill::{Fills, sizes};
use super::line::SLACK;
use super::{Counted, Error, Field, Job, MAX_ORDERS, MAX_SHIFTS, MAX_SIZES, MAX_TANKS, Tank};
use crate::error::{LARGEST, SMALLEST};

/// Refuses numbers that cannot be, and more than the planner takes.
pub(super) fn job(job: &Job<'_>) -> Result<(), Error> {
    few(job.orders.len(), Counted::Orders, MAX_ORDERS)?;
    few(job.tanks.len(), Counted::Tanks, MAX_TANKS)?;
    few(job.shifts.len(), Counted::Shifts, MAX_SHIFTS)?;
    let expected = job.orders.len() * job.tanks.len();
    if job.needs.len() != expected {
        return Err(Error::Needs { needs: job.needs.len(), expected });
    }
    orders(job)?;
    needs(job)?;
    job.tanks.iter().enumerate().try_for_each(|(index, it)| tank(index, it))?;
    shifts(job)?;
    fits(job)
}

fn few(count: usize, counted: Counted, limit: usize) -> Result<(), Error> {
    if count > limit { Err(Error::TooMany { counted, limit }) } else { Ok(()) }
}

fn more_than_0(field: Field, index: usize, value: f64) -> Result<(), Error> {
    if (SMALLEST..=LARGEST).contains(&value) { Ok(()) } else { Err(Error::Value { field, index, value }) }
}

fn not_negative(field: Field, index: usize, value: f64) -> Result<(), Error> {
    if value == 0.0 { Ok(()) } else { more_than_0(field, index, value) }
}

fn orders(job: &Job<'_>) -> Result<(), Error> {
    for (index, order) in job.orders.iter().enumerate() {
        more_than_0(Field::Mass, index, order.mass.value)?;
        if !job.shifts.is_empty() {
            more_than_0(Field::Speed, index, order.speed.map_or(0.0, |speed| speed.value))?;
            not_negative(Field::Changeover, index, order.changeover.value)?;
        }
    }
    Ok(())
}

fn needs(job: &Job<'_>) -> Result<(), Error> {
    for (index, need) in job.needs.iter().enumerate() {
        if let Some(need) = need {
            more_than_0(Field::PerMass, index, need.per_mass.value)?;
            if !(0.0..=1.0).contains(&need.living) {
                return Err(Error::Value { field: Field::Living, index, value: need.living });
            }
        }
    }
    Ok(())
}

fn tank(index: usize, tank: &Tank<'_>) -> Result<(), Error> {
    more_than_0(Field::Capacity, index, tank.capacity.value)?;
    not_negative(Field::HoldUp, index, tank.hold_up.value)?;
    not_negative(Field::Mixing, index, tank.mixing.value)?;
    if let Some(life) = tank.pot_life {
        not_negative(Field::PotLife, index, life.value)?;
    }
    few(sizes(tank).len(), Counted::SetSizes, MAX_SIZES)?;
    for size in sizes(tank) {
        more_than_0(Field::Adds, index, size.adds.value)?;
        for rank in size.ranks {
            not_negative(Field::Rank, index, rank)?;
        }
    }
    Ok(())
}

fn shifts(job: &Job<'_>) -> Result<(), Error> {
    let mut end = -LARGEST;
    for (index, shift) in job.shifts.iter().enumerate() {
        let (from, to) = (shift.from.value, shift.to.value);
        if !(from >= end && to > from && to <= LARGEST) {
            return Err(Error::Value { field: Field::Shift, index, value: to - from });
        }
        end = to;
    }
    Ok(())
}

/// Whole sets fill the lines and leave some slurry in every tank, of every recipe.
pub(super) fn sets(job: &Job<'_>, fills: &[Fills<'_>]) -> Result<(), Error> {
    for ((index, tank), fills) in job.tanks.iter().enumerate().zip(fills) {
        let mut living = job.needs_of(index).filter(|need| need.living > 0.0 && !sizes(tank).is_empty());
        let (lines, capacity) = (tank.hold_up.value, tank.capacity.value);
        if living.any(|need| fills.between(lines * need.living, capacity * need.living).is_none()) {
            // Where not every fill could be looked at, there may be one.
            let limit = fills.all.len();
            let too_many = Error::TooMany { counted: Counted::Sets, limit };
            return Err(if fills.complete { Error::TankTooSmall { tank: index } } else { too_many });
        }
    }
    Ok(())
}

/// Every tank that is needed holds more than its lines, of every recipe.
fn fits(job: &Job<'_>) -> Result<(), Error> {
    for (index, tank) in job.tanks.iter().enumerate() {
        let smallest = sizes(tank).iter().map(|size| size.adds.value).fold(f64::INFINITY, f64::min);
        for need in job.needs_of(index) {
            let capacity = tank.capacity.value * (1.0 + SLACK);
            let sets = !sizes(tank).is_empty() && need.living > 0.0;
            if tank.hold_up.value >= tank.capacity.value || (sets && smallest > capacity * need.living) {
                return Err(Error::TankTooSmall { tank: index });
            }
        }
    }
    Ok(())
}
