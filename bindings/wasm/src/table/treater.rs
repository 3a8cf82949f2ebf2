//! How fast do I pump, and did the pump do it?

use hilum::quantity::{Mass, Measure, Time, Volume};
use hilum::rate::{Density, RatePerMass};
use hilum::seed::Share;
use hilum::treater::{
    BatchTreater, CurvePoint, Dumps, Flow, PumpCurve, PumpSetting, SeedFlow, Setting, caught_mass,
    caught_volume,
};

use crate::refusal::{Blame, Refusal, positive};

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
    }
}
