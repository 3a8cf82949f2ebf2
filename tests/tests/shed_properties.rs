//! What holds for mixes, pumps, limits and the bus whatever the numbers.
#![expect(clippy::unwrap_used, reason = "a test may panic")]

use hilum::ddi;
use hilum::limit::SeasonLimit;
use hilum::mix::{HoldUp, Slurry, Water, pour};
use hilum::quantity::{
    Area, Mass, MassPerArea, Seeds, Time, Volume, area::hectare, mass::gram, mass::kilogram, mass::milligram,
    seeds, time::minute, time::second, volume::liter, volume::milliliter,
};
use hilum::rate::{ActivePerSeed, Density, RatePerMass};
use hilum::seed::Sown;
use hilum::treater::{BatchTreater, CurvePoint, Dumps, Flow, PumpCurve, PumpSetting, SeedFlow, Setting};
use hilum::treater::{caught_mass, caught_volume};
use proptest::prelude::*;

/// Any size that a checked number may have.
fn any_size() -> impl Strategy<Value = f64> {
    (-29.9_f64..29.9).prop_map(hilum::math::exp10)
}

fn ml_per_100_kg(volume: f64) -> RatePerMass {
    RatePerMass::new(Volume::new::<milliliter>(volume) / Mass::new::<kilogram>(100.0)).unwrap()
}

fn flow(ml_per_minute: f64) -> Flow {
    Flow::new(Volume::new::<milliliter>(ml_per_minute) / Time::new::<minute>(1.0)).unwrap()
}

fn g_per_ha(grams: f64) -> MassPerArea {
    Mass::new::<gram>(grams) / Area::new::<hectare>(1.0)
}

fn near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-12 * one.abs().max(other.abs())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn what_is_poured_is_what_is_mixed(
        rates in prop::collection::vec(1.0_f64..500.0, 1..6),
        water in 0.1_f64..1_000.0,
        litres in 0.1_f64..5_000.0,
    ) {
        let rates: Vec<_> = rates.into_iter().map(ml_per_100_kg).collect();
        let slurry = Slurry::of(rates.iter().copied(), Water::Plus(ml_per_100_kg(water))).unwrap();
        let mix = Volume::new::<liter>(litres);
        let products: f64 =
            rates.iter().map(|rate| pour(slurry.share(*rate).unwrap(), mix).unwrap().value).sum();
        let water = pour(slurry.water_share(), mix).unwrap().value;
        prop_assert!(near(products + water, mix.value));
    }

    #[test]
    fn a_fill_treats_its_seed(rate in 10.0_f64..2_000.0, kg in 1.0_f64..1e6, held in 0.0_f64..50.0) {
        let slurry = Slurry::of([ml_per_100_kg(rate)], Water::None).unwrap();
        let seed = Mass::new::<kilogram>(kg);
        prop_assert!(near(slurry.treats(slurry.fill(seed).unwrap()).unwrap().value, kg));
        prop_assert!(near(slurry.fill(seed * 2.0).unwrap().value, 2.0 * slurry.fill(seed).unwrap().value));
        let hold_up = HoldUp::new(Volume::new::<liter>(held)).unwrap();
        let mixed = hold_up.mixed(slurry, seed).unwrap();
        prop_assert!(mixed >= slurry.fill(seed).unwrap());
        // The hold-up comes off again, with the rounding of a number as large as both.
        let error = (hold_up.treats(slurry, mixed).unwrap().value - kg).abs();
        prop_assert!(error <= 1e-12 * slurry.treats(mixed).unwrap().value);
    }

    #[test]
    fn the_pump_follows_the_seed(rate in 10.0_f64..2_000.0, kg in 1.0_f64..2_000.0, s in 1.0_f64..600.0) {
        let (slurry, charge, cycle) = (ml_per_100_kg(rate), Mass::new::<kilogram>(kg), Time::new::<second>(s));
        let batch = BatchTreater::new(charge, cycle).unwrap();
        let liquid = batch.seed_flow().liquid(slurry);
        prop_assert!(near((liquid.get() * cycle).value, batch.per_charge(slurry).value));
        prop_assert!(liquid.rate(batch.seed_flow()).difference(slurry).abs() < 1e-12);
        let dumps = Dumps::of(charge).unwrap();
        prop_assert!(near(dumps.seed_flow(1, cycle).unwrap().get().value, batch.seed_flow().get().value));
        prop_assert!(near(batch.seed_flow().time_for(charge).unwrap().value, cycle.value));
    }

    #[test]
    fn a_weighed_catch_is_a_measured_one(ml in 1.0_f64..1e4, kg_per_l in 0.7_f64..2.0, s in 1.0_f64..300.0) {
        let (volume, time) = (Volume::new::<milliliter>(ml), Time::new::<second>(s));
        let density = Density::new(Mass::new::<kilogram>(kg_per_l) / Volume::new::<liter>(1.0)).unwrap();
        let weighed = caught_mass(volume * density.get(), density, time).unwrap();
        prop_assert!(weighed.deviation(caught_volume(volume, time).unwrap()).abs() < 1e-12);
    }

    #[test]
    fn a_straight_pump_is_set_where_it_was_caught(
        offset in 0.0_f64..100.0,
        slope in 0.1_f64..50.0,
        mut settings in prop::collection::vec(1.0_f64..100.0, 2..8),
    ) {
        settings.extend([1.0, 100.0]);
        let points: Vec<_> = settings
            .iter()
            .map(|s| CurvePoint { setting: Setting::new(*s).unwrap(), flow: flow(offset + slope * s) })
            .collect();
        let curve = PumpCurve::through(&points).unwrap();
        for point in points {
            let PumpSetting::Inside(setting) = curve.setting(point.flow) else {
                return Err(TestCaseError::fail(format!("{point:?} is not on {curve:?}")));
            };
            let wrong = (setting.number() - point.setting.number()).abs();
            prop_assert!(wrong < 1e-12 * (100.0 + offset / slope), "{wrong}");
        }
    }

    #[test]
    fn at_the_greatest_sowing_rate_the_limit_is_met(
        limit in 1.0_f64..5_000.0, used_share in 0.0_f64..0.99, mg in 1e-4_f64..5.0,
    ) {
        let season = SeasonLimit::new(g_per_ha(limit), g_per_ha(limit * used_share)).unwrap();
        let on_seed = ActivePerSeed::new(Mass::new::<milligram>(mg) / Seeds::new::<seeds::seed>(1.0)).unwrap();
        let most = season.max_sowing(on_seed);
        prop_assert!((season.share(on_seed, Sown::new(most).unwrap()) - 1.0).abs() < 1e-12);
        prop_assert!(!season.exceeded(on_seed, Sown::new(most).unwrap()));
        prop_assert!(season.exceeded(on_seed, Sown::new(most * 1.01).unwrap()));
    }

    #[test]
    fn the_bus_is_right_to_half_a_step(mm3_per_kg in 0.5_f64..2e9) {
        let entry = ddi::VOLUME_PER_MASS.setpoint;
        let rate = Volume::new::<milliliter>(mm3_per_kg * 1e-3) / Mass::new::<kilogram>(1.0);
        let back = entry.decode(entry.encode(rate).unwrap()).unwrap();
        prop_assert!(((back - rate).value * 1e9).abs() <= 0.5 + 1e-6);
    }

    #[test]
    fn nothing_overflows(a in any_size(), b in any_size(), c in any_size(), d in any_size()) {
        let (one_kg, one_s) = (Mass::new::<kilogram>(1.0), Time::new::<second>(1.0));
        let volume = |base| Volume { value: base, ..Volume::default() };
        let rate = |base| RatePerMass::new(volume(base) / one_kg).unwrap();
        let slurry = Slurry::of([rate(a)], Water::Plus(rate(b))).unwrap();
        let seed = SeedFlow::new(one_kg * c / one_s).unwrap();
        let (liquid, other) = (seed.liquid(slurry.rate()), Flow::new(volume(d) / one_s).unwrap());
        let density = Density::new(one_kg * c / volume(1.0)).unwrap();
        let caught = caught_mass(one_kg * a, density, one_s * b).unwrap();
        let catch = CurvePoint { setting: Setting::new(b).unwrap(), flow: other };
        let PumpSetting::Inside(setting) = PumpCurve::through(&[catch]).unwrap().setting(liquid) else {
            return Err(TestCaseError::fail("one catch is a proportional pump"));
        };
        let all = [
            slurry.share(rate(a)).unwrap().number(),
            slurry.treats(volume(d)).unwrap().value,
            liquid.deviation(other),
            liquid.rate(seed).get().value,
            setting.number(),
            caught.deviation(liquid),
        ];
        prop_assert!(all.iter().all(|value| value.is_finite()), "{all:?}");
    }
}
