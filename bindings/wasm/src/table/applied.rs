//! How fast do I pump, and did the pump do it?

use hilum::Error;
use hilum::account::{Achieved, Measured, Reading};
use hilum::ddi::{Row, find};
use hilum::quantity::{Mass, Measure, Temperature, Time, Volume, temperature_difference};
use hilum::rate::{Density, PerMass, RatePerMass, Substance};
use hilum::seed::Share;
use hilum::treater::{
    BatchTreater, CurvePoint, Dumps, Flow, PumpCurve, PumpSetting, SeedFlow, Setting, caught_mass,
    caught_volume,
};

use crate::give::FromTheBus;
use crate::refusal::{Blame, Refusal, Refused, positive};
use crate::slot::{Slot, Slots};
use crate::take::{Carried, Check, Product, Shown, Wanted, Weighed};

super::calculators! {
    slots =>
    treater {
        /// The flow of liquid for a flow of seed: slurry rate × flow of seed.
        flow(slurry: RatePerMass, seed_flow: SeedFlow) -> flow: Flow = seed_flow.liquid(slurry);
        /// The rate that a flow of liquid puts on a flow of seed: flow / flow of seed.
        rate(flow: Flow, seed_flow: SeedFlow) -> slurry: RatePerMass = flow.rate(seed_flow);
        /// How long a mass of seed takes: mass / flow of seed.
        time_for(mass: Mass, seed_flow: SeedFlow) -> time: Time = seed_flow.time_for(mass).looked_at()?;
        /// How long a mass of seed takes with the stops: mass / (flow of seed × utilisation).
        time_for(mass: Mass, seed_flow: SeedFlow, utilisation: Share) -> time: Time =
            seed_flow.effective(utilisation).of(slots, 2)?.time_for(mass).looked_at()?;
        /// The setting for a flow, on the line through two catches.
        curve_setting(setting_1: Setting, flow_1: Flow, setting_2: Setting, flow_2: Flow, wanted: Flow)
            -> setting: Setting = {
                let point = |setting, flow| CurvePoint { setting, flow };
                let points = [point(setting_1, flow_1), point(setting_2, flow_2)];
                match PumpCurve::through(&points).of(slots, 2)?.setting(wanted) {
                    PumpSetting::Inside(setting) => setting,
                    _ => return Err(slots.refuse(4, Refusal::outside_curve())),
                }
            };
        /// The flow of seed with its stops: flow × utilisation.
        effective_flow(seed_flow: SeedFlow, utilisation: Share) -> seed_flow: SeedFlow =
            seed_flow.effective(utilisation).of(slots, 1)?;
        /// The flow of seed, counted in dumps of one mass: dump × dumps / time.
        dump_flow(dump: Mass, dumps: u32, time: Time) -> seed_flow: SeedFlow = {
            positive(slots, 1, f64::from(dumps))?;
            Dumps::of(dump).looked_at()?.seed_flow(dumps, time).of(slots, 2)?
        };
        /// The liquid for one charge of a batch treater: slurry rate × charge.
        per_charge(slurry: RatePerMass, charge: Mass) -> volume: Volume =
            // The cycle does not change what goes on a charge.
            BatchTreater::new(charge, Time::from_base(60.0)).looked_at()?.per_charge(slurry);
        /// The flow of a batch treater's seed: charge / cycle.
        batch_flow(charge: Mass, cycle: Time) -> seed_flow: SeedFlow = BatchTreater::new(charge, cycle).of(slots, 1)?.seed_flow();
        /// The flow of a catch test: volume caught / time.
        caught_by_volume(volume: Volume, time: Time) -> flow: Flow = caught_volume(volume, time).of(slots, 1)?;
        /// The flow of a catch test that is weighed: mass caught / density / time.
        caught_by_mass(mass: Mass, density: Density, time: Time) -> flow: Flow = caught_mass(mass, density, time).of(slots, 2)?;
        /// By how much a flow is off its target: measured / target − 1.
        deviation(measured: Flow, target: Flow) -> difference: f64 = measured.deviation(target);
        /// The setting after a catch test, for a pump through the origin: setting × target / caught.
        correct_setting(setting: Setting, target: Flow, caught: Flow) -> setting: Setting =
            setting.corrected(target, caught).of(slots, 0)?;
    }    account {
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
            let value = row.decode(number).of(slots, 1)?;
            FromTheBus(if is_temperature(row) {
                Slot::Temperature(Temperature::from_celsius(value))
            } else {
                Slot::Quantity(value, row.powers)
            })
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

/// The dictionary has points of temperature, but no differences.
fn is_temperature(row: Row) -> bool {
    row.powers == temperature_difference::POWERS
}

/// What an entry carries; the entry itself looks at the number.
fn carried(row: Row) -> Wanted {
    let check = if is_temperature(row) { Check::Temperature } else { Check::Any };
    Wanted::of(row.powers, check)
}
