//! What was applied, and what goes over the bus?

use hilum::Error;
use hilum::account::{Achieved, Measured, Reading};
use hilum::ddi::{Row, find};
use hilum::quantity::temperature_difference;
use hilum::rate::{PerMass, Substance};

use crate::give::FromTheBus;
use crate::refusal::{Blame, Refusal, Refused};
use crate::slots::Slots;
use crate::take::{Carried, Check, Product, Shown, Wanted, Weighed};
use crate::value::Value;

super::calculators! {
    slots =>
    account {
        /// What was used, by one gauge: start − end + added − lost.
        used[S](start: Shown<S>, end: Shown<S>, added: Shown<S>, lost: Shown<S>, resolution: Shown<S>)
            -> used: <S as Substance>::Amount = used::<S>(start, end, added, lost, resolution).of(slots, 1)?.get();
        /// The uncertainty (k = 2) of what was used, from the resolution of the readings.
        used_uncertainty[S](start: Shown<S>, end: Shown<S>, added: Shown<S>, lost: Shown<S>, resolution: Shown<S>)
            -> uncertainty: <S as Substance>::Amount =
                used::<S>(start, end, added, lost, resolution).of(slots, 1)?.uncertainty();
        /// The rate that was applied: used / seed.
        achieved[S](used: Shown<S>, resolution: Shown<S>, seed: Weighed, seed_resolution: Weighed)
            -> rate: PerMass<S> = achieved::<S>(used, resolution, seed, seed_resolution).of(slots, 2)?.rate();
        /// The uncertainty (k = 2) of the rate that was applied, from the resolution of the readings.
        achieved_uncertainty[S](used: Shown<S>, resolution: Shown<S>, seed: Weighed, seed_resolution: Weighed)
            -> uncertainty: <S as Substance>::PerMass =
                achieved::<S>(used, resolution, seed, seed_resolution).of(slots, 2)?.uncertainty();
    }
    ddi {
        /// What the bus carries of a quantity (ISO 11783-11): value / resolution, to the nearest whole number.
        encode(ddi: u32, value: Carried) -> number: f64 = {
            let _: Carried = value;
            let row = entry(slots, ddi)?;
            f64::from(row.encode(slots.checked(1, carried(row))?).of(slots, 1)?)
        };
        /// The quantity that a number on the bus stands for (ISO 11783-11): number × resolution.
        decode(ddi: u32, number: i32) -> value: FromTheBus = {
            let row = entry(slots, ddi)?;
            FromTheBus(Value { number: row.decode(number).of(slots, 1)?, of: carried(row).of })
        };
    }
}

fn used<S: Product>(
    start: Shown<S>,
    end: Shown<S>,
    added: Shown<S>,
    lost: Shown<S>,
    resolution: Shown<S>,
) -> Result<Measured<S::Amount>, Error> {
    let reading = |shown: Shown<S>| Reading::new(shown.0, resolution.0);
    Measured::used(reading(start)?, reading(end)?, &[reading(added)?], &[reading(lost)?])
}

fn achieved<S: Product>(
    used: Shown<S>,
    resolution: Shown<S>,
    seed: Weighed,
    seed_resolution: Weighed,
) -> Result<Achieved<S>, Error> {
    let used = Measured::from(Reading::new(used.0, resolution.0)?);
    Achieved::on(used, Measured::from(Reading::new(seed.0, seed_resolution.0)?))
}

fn entry(slots: &Slots, number: u32) -> Result<Row, Refused> {
    let row = u16::try_from(number).ok().and_then(find);
    row.ok_or_else(|| slots.refuse(0, Refusal::no_entry(number)))
}

/// What an entry carries; the entry itself looks at the number.
fn carried(row: Row) -> Wanted {
    // The dictionary has points of temperature, but no differences.
    if row.powers == temperature_difference::POWERS {
        Wanted::TEMPERATURE
    } else {
        Wanted::of(row.powers, Check::Any)
    }
}
