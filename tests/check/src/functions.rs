//! What is calculated: each function of the check values is a call of the core's public API.

mod account;
mod active;
mod ddi;
mod limit;
mod living;
mod mix;
mod pack;
mod rate;
mod seed;
mod survival;
mod treater;
mod unit;

use hilum::quantity::Measure;
use hilum::rate::Substance;

use crate::code::Refusal;
use crate::inputs::Inputs;
use crate::value::Value;

/// A function of the check values.
#[derive(Clone, Copy, Debug)]
pub struct Function {
    /// As the cases call it.
    pub name: &'static str,
    /// The inputs it takes; each list is one way to call it.
    pub inputs: &'static [&'static [&'static str]],
    /// The results it gives.
    pub outputs: &'static [&'static str],
    pub(crate) run: fn(&Inputs) -> Answer,
}

type Answer = Result<Vec<Value>, Refusal>;

/// A product whose quantities can be read from text.
trait Product: Substance<Amount: Measure, PerMass: Measure, PerSeed: Measure, PerArea: Measure> {}
impl<S: Substance<Amount: Measure, PerMass: Measure, PerSeed: Measure, PerArea: Measure>> Product for S {}

/// One result.
#[expect(clippy::unnecessary_wraps, reason = "the last line of most functions")]
fn one(value: Value) -> Answer {
    Ok(vec![value])
}

/// Calls a function for the substance that a quantity is measured by.
macro_rules! by_substance {
    ($inputs:ident, $name:literal, $function:ident) => {
        if $inputs.is_liquid($name)? {
            $function::<hilum::rate::Liquid>($inputs)
        } else {
            $function::<hilum::rate::Dry>($inputs)
        }
    };
}
use by_substance;

macro_rules! table {
    ($($name:literal $([$($input:literal)+])+ => $($output:literal)+, $run:path;)+) => {
        /// Every function.
        pub const TABLE: &[Function] = &[$(Function {
            name: $name, inputs: &[$(&[$($input),+]),+], outputs: &[$($output),+], run: $run,
        }),+];
    };
}

table! {
    "unit.convert" ["value" "to"] => "value", unit::convert;

    "seed.count" ["mass" "size"] => "seeds", seed::count;
    "seed.mass" ["seeds" "size"] => "mass", seed::mass;
    "seed.size_from_thousand" ["thousand"] => "size", seed::size_from_thousand;
    "seed.thousand" ["size"] => "thousand", seed::thousand;
    "seed.units" ["mass" "size" "unit"] => "units", seed::units;
    "seed.bushels" ["mass" "bushel"] => "bushels", seed::bushels;
    "seed.pure_live" ["purity" "germination"] => "share", seed::pure_live;
    "seed.size_from_seed" ["seed"] => "size", seed::size_from_seed;
    "seed.seed_mass" ["size"] => "seed", seed::seed_mass;
    "seed.unit_mass" ["unit" "size"] => "mass", seed::unit_mass;
    "seed.within" ["size" "tolerance"] => "least" "most", seed::within;
    "sowing.for_stand" ["stand" "germination" "emergence"] => "sown", seed::for_stand;
    "sowing.seeds_per_area" ["rate" "size"] => "sown", seed::seeds_per_area;
    "sowing.mass_per_area" ["sown" "size"] => "rate", seed::mass_per_area;
    "sowing.area" ["seeds" "sown"] => "area", seed::area;
    "sowing.seeds_for" ["area" "sown"] => "seeds", seed::seeds_for;

    "rate.per_seed" ["rate" "size"] => "per_seed", rate::per_seed;
    "rate.per_mass" ["per_seed" "size"] ["per_unit" "unit" "size"] => "rate", rate::per_mass;
    "rate.per_unit" ["rate" "size" "unit"] => "per_unit", rate::per_unit;
    "rate.from_unit" ["amount" "unit"] => "per_seed", rate::from_unit;
    "rate.per_bushel" ["rate" "bushel"] => "amount", rate::per_bushel;
    "rate.from_bushel" ["amount" "bushel"] => "rate", rate::from_bushel;
    "rate.per_area" ["per_seed" "sown"] => "per_area", rate::per_area;
    "rate.needed" ["rate" "mass"] => "amount", rate::needed;
    "rate.implied_size" ["rate" "per_seed"] => "size", rate::implied_size;
    "rate.difference" ["rate" "per_seed" "size"] => "difference", rate::difference;
    "rate.treats" ["rate" "amount"] => "mass", rate::treats;
    "rate.from_area" ["per_area" "sown"] => "per_seed", rate::from_area;
    "rate.weighed" ["rate" "density"] => "rate", rate::weighed;
    "rate.measured" ["rate" "density"] => "rate", rate::measured;

    "active.per_mass" ["rate" "content"] ["rate" "content" "density"] => "active", active::per_mass;
    "active.per_seed" ["rate" "size" "content"] ["per_seed" "content"] => "active", active::per_seed;
    "active.per_area" ["active" "sown"] ["active" "size" "sown"] => "per_area", active::per_area;
    "active.product" ["active" "content"] ["active" "content" "density"] => "rate", active::product;

    "limit.per_area" ["active" "sown"] ["active" "sown" "used"] => "per_area", limit::per_area;
    "limit.max_sowing" ["limit" "active"] ["limit" "used" "active"] => "sown", limit::max_sowing;
    "limit.share" ["limit" "active" "sown"] ["limit" "used" "active" "sown"] => "share", limit::share;
    "limit.on_seed" ["first" "second"] => "active", limit::on_seed_in_all;

    "mix.share" ["rate" "make_up_to"] => "share", mix::share;
    "mix.treats" ["volume" "slurry"] ["volume" "slurry" "hold_up"] => "mass", mix::treats;
    "mix.fill" ["slurry" "mass"] ["slurry" "mass" "hold_up"] => "volume", mix::fill;
    "mix.water" ["rate" "make_up_to"] ["rate" "plus"] => "water" "share", mix::water;
    "mix.total_liquid" ["first" "second"] => "rate", mix::total_liquid;
    "mix.pour" ["share" "volume"] => "volume", mix::pour_of;
    "mix.weigh" ["volume" "density"] => "mass", mix::weigh_of;

    "pack.sets" ["need" "covers"] => "sets", pack::sets;
    "pack.coverage" ["usable" "rate"] => "covers", pack::coverage;
    "pack.choose" ["need" "large" "small"] => "large" "small" "leftover", pack::choose_of;

    "treater.flow" ["slurry" "seed_flow"] => "flow", treater::flow;
    "treater.dump_flow" ["dump" "dumps" "time"] => "seed_flow", treater::dump_flow;
    "treater.per_charge" ["slurry" "charge"] => "volume", treater::per_charge;
    "treater.caught_by_volume" ["volume" "time"] => "flow", treater::caught_by_volume;
    "treater.caught_by_mass" ["mass" "density" "time"] => "flow", treater::caught_by_mass;
    "treater.deviation" ["measured" "target"] => "difference", treater::deviation;
    "treater.correct_setting" ["setting" "target" "caught"] => "setting", treater::correct_setting;
    "treater.curve_setting" ["setting_1" "flow_1" "setting_2" "flow_2" "wanted"] => "setting",
        treater::curve_setting;
    "treater.time_for" ["mass" "seed_flow"] ["mass" "seed_flow" "utilisation"] => "time", treater::time_for;
    "treater.rate" ["flow" "seed_flow"] => "rate", treater::rate;
    "treater.batch_flow" ["charge" "cycle"] => "seed_flow", treater::batch_flow;

    "living.cells_per_seed" ["titre" "per_seed" "recovery"] ["titre" "rate" "size" "recovery"] => "cells",
        living::cells_per_seed;
    "living.dose_for" ["cells" "titre" "recovery"] => "per_seed", living::dose_for;
    "living.titre_for" ["cells" "per_seed" "recovery"] => "titre", living::titre_for;
    "living.titre_in_set" ["titre" "part" "set"] => "titre", living::titre_in_set;

    "survival.log_linear" ["d" "time"] ["d" "time" "at" "z" "temperature"] => "log10", survival::log_linear;
    "survival.weibull" ["scale" "shape" "time"] ["scale" "shape" "time" "at" "z" "temperature"] => "log10",
        survival::weibull;
    "survival.two_phase" ["fraction" "fast" "slow" "time"]
        ["fraction" "fast" "slow" "time" "at" "z" "temperature"] => "log10", survival::two_phase;
    "survival.effective_time" ["at" "z" "first" "first_temperature" "temperature" "time"] => "time",
        survival::effective_time;
    "survival.count" ["cells" "d" "time"] => "cells", survival::count;
    "survival.last_moment" ["cells" "minimum" "d"] => "time", survival::last_moment;
    "survival.fit" ["time_1" "count_1" "time_2" "count_2"] => "d" "log10", survival::fit;

    "account.used" ["start" "end" "added" "lost" "resolution"] => "used" "uncertainty", account::used;
    "account.achieved" ["used" "resolution" "seed" "seed_resolution"] => "rate" "uncertainty",
        account::achieved;

    "ddi.encode" ["ddi" "value"] => "number", ddi::encode;
    "ddi.decode" ["ddi" "number"] => "value", ddi::decode;
}

/// The function of a name.
#[must_use]
pub fn function(name: &str) -> Option<&'static Function> {
    TABLE.iter().find(|function| function.name == name)
}
