//! What must hold for every survival curve, every storage and every count.
#![expect(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use hilum::math::{exp10, log10};
use hilum::quantity::cells::cell;
use hilum::quantity::ratio::one;
use hilum::quantity::seeds::seed;
use hilum::quantity::temperature_difference::kelvin;
use hilum::quantity::time::{day, second};
use hilum::quantity::volume::cubic_meter;
use hilum::quantity::{Cells, Ratio, Seeds, Temperature, TemperatureDifference, Time, Volume};
use hilum::rate::{CellCount, Liquid, PerSeed};
use hilum::seed::Share;
use hilum::viability::{
    Because, Crossing, DecimalReduction, Life, Model, Period, PlantBy, Reference, Sample, Survival,
    TitrePerVolume, TwoPhase, WeibullScale, WeibullShape, fit_log_linear, plant_by,
};
use proptest::prelude::*;

fn days(number: f64) -> Time {
    Time::new::<day>(number)
}
fn cells(number: f64) -> PerSeed<CellCount> {
    PerSeed::new(Cells::new::<cell>(number) / Seeds::new::<seed>(1.0)).unwrap()
}
fn share(number: f64) -> Share {
    Share::new(Ratio::new::<one>(number)).unwrap()
}
fn log_linear(d: f64) -> Model {
    Model::LogLinear(DecimalReduction::new(days(d)).unwrap())
}
fn reference(at: f64, z: f64) -> Reference {
    Reference::new(Temperature::from_celsius(at), TemperatureDifference::new::<kelvin>(z)).unwrap()
}
fn period(lasts: f64, celsius: f64) -> Period {
    Period::new(days(lasts), Some(Temperature::from_celsius(celsius))).unwrap()
}

/// 10^x, x uniform.
fn magnitude(exponents: core::ops::RangeInclusive<f64>) -> impl Strategy<Value = f64> {
    exponents.prop_map(|x| exp10(x).clamp(1e-30, 1e30))
}

fn model(times: core::ops::RangeInclusive<f64>) -> impl Strategy<Value = Model> {
    let time = || magnitude(times.clone());
    prop_oneof![
        time().prop_map(log_linear),
        (time(), 0.2..4.0).prop_map(|(scale, shape)| Model::Weibull {
            scale: WeibullScale::new(days(scale)).unwrap(),
            shape: WeibullShape::new(Ratio::new::<one>(shape)).unwrap(),
        }),
        (0.0..=1.0, time(), time()).prop_map(|(fraction, this, that)| {
            let [fast, slow] =
                [this.min(that), this.max(that)].map(|d| DecimalReduction::new(days(d)).unwrap());
            Model::TwoPhase(TwoPhase::new(share(fraction), fast, slow).unwrap())
        }),
    ]
}

/// Curves over days to years at 10 °C, storage from a freezer to a hot shed.
fn survival() -> impl Strategy<Value = Survival> {
    (model(-1.0..=3.0), prop::option::of(5.0..40.0))
        .prop_map(|(model, z)| Survival::new(model, z.map(|z| reference(10.0, z))))
}
fn storage() -> impl Strategy<Value = Vec<Period>> {
    prop::collection::vec((0.0..60.0, -20.0..45.0).prop_map(|(lasts, at)| period(lasts, at)), 0..5)
}

proptest! {
    #[test]
    fn there_are_enough_at_the_crossing_and_too_few_a_second_later(
        survival in survival(), storage in storage(), at_treating in magnitude(4.0..=9.0), minimum in magnitude(2.0..=6.0),
    ) {
        let left = |after: Time| survival.count(cells(at_treating), &storage, after).unwrap();
        match survival.crossing(cells(at_treating), cells(minimum), &storage) {
            Crossing::AlreadyBelow => prop_assert!(at_treating < minimum),
            Crossing::Never => prop_assert!(left(days(365.0 * 30_000.0)) >= cells(minimum)),
            Crossing::At(time) => {
                prop_assert!(left(time) >= cells(minimum));
                prop_assert!(left(time + Time::new::<second>(1.0)) < cells(minimum));
                prop_assert_eq!(time.get::<second>().fract().to_bits(), 0);
            }
        }
    }

    #[test]
    fn the_crossing_of_one_rate_is_its_closed_form(
        d in magnitude(-2.0..=3.0), at_treating in magnitude(4.0..=9.0), minimum in magnitude(1.0..=4.0),
    ) {
        let exact = days(d).get::<second>() * log10(at_treating / minimum);
        let Crossing::At(time) = Survival::new(log_linear(d), None).crossing(cells(at_treating), cells(minimum), &[])
        else { return Err(TestCaseError::fail("no crossing")) };
        // Rounded down, but for the noise of the logarithm.
        let early = exact - time.get::<second>();
        prop_assert!((-1e-9 * exact..=1.0 + 1e-9 * exact).contains(&early), "{early}");
    }

    #[test]
    fn the_dead_do_not_rise(survival in survival(), storage in storage(), after in 0.0..400.0, later in 0.0..400.0) {
        let log = |after| survival.log10(&storage, days(after)).unwrap();
        let (before, then) = (log(after), log(after + later));
        prop_assert!(before <= 0.0 && then <= before + 1e-12 * before.abs().max(1.0));
    }

    #[test]
    fn warmth_never_keeps_more_alive(
        model in model(-1.0..=3.0), z in 5.0..40.0, at in -20.0..40.0, warmer in 0.0..20.0, after in 0.0..400.0,
    ) {
        let survival = Survival::new(model, Some(reference(10.0, z)));
        let log = |at| survival.log10(&[period(1.0, at)], days(after)).unwrap();
        let cool = log(at);
        prop_assert!(log(at + warmer) <= cool + 1e-12 * cool.abs().max(1.0));
    }

    #[test]
    fn a_period_cut_in_two_is_the_same_period(
        survival in survival(), at in -20.0..45.0, first in 0.0..60.0, rest in 0.0..60.0, then in -20.0..45.0, after in 0.0..200.0,
    ) {
        let tau = |storage: &[Period]| survival.effective_time(storage, days(after)).unwrap().get::<day>();
        let whole = tau(&[period(first + rest, at), period(1.0, then)]);
        let cut = tau(&[period(first, at), period(rest, at), period(1.0, then)]);
        prop_assert!((whole - cut).abs() <= 1e-12 * whole);
    }

    #[test]
    fn a_history_ages_like_its_periods_together(
        survival in survival(), periods in prop::collection::vec((0.0..60.0, -20.0..45.0), 1..5), over in 0.0..60.0,
    ) {
        let tau = |storage: &[Period], after| survival.effective_time(storage, days(after)).unwrap().get::<day>();
        let storage: Vec<Period> = periods.iter().map(|&(lasts, at)| period(lasts, at)).collect();
        let whole = tau(&storage, periods.iter().map(|(lasts, _)| lasts).sum::<f64>() + over);
        let apart: f64 = storage.iter().zip(&periods).map(|(&alone, &(lasts, _))| tau(&[alone], lasts)).sum();
        let last = tau(&storage[storage.len() - 1..], over);
        prop_assert!((whole - apart - last).abs() <= 1e-9 * whole);
    }

    #[test]
    fn storage_at_the_reference_is_no_storage_at_all(model in model(-1.0..=3.0), z in 5.0..40.0, after in 0.0..400.0) {
        let survival = Survival::new(model, Some(reference(10.0, z)));
        prop_assert_eq!(survival.log10(&[period(9.0, 10.0)], days(after)), survival.log10(&[], days(after)));
    }

    #[test]
    fn no_accepted_input_gives_nan_or_infinity(
        model in model(-34.0..=25.0), at in magnitude(-30.0..=30.0), z in magnitude(-30.0..=30.0),
        storage_at in magnitude(-30.0..=30.0), lasts in magnitude(-30.0..=25.0), after in magnitude(-30.0..=25.0),
        at_treating in magnitude(-30.0..=30.0), minimum in magnitude(-30.0..=30.0),
    ) {
        let survival = Survival::new(model, Some(reference(at, z)));
        let storage = [period(lasts, storage_at), period(lasts, -storage_at.min(273.0))];
        prop_assert!(survival.effective_time(&storage, days(after)).unwrap().get::<day>().is_finite());
        let log = survival.log10(&storage, days(after)).unwrap();
        prop_assert!(log.is_finite() && log <= 0.0);
        let left = survival.count(cells(at_treating), &storage, days(after)).unwrap();
        prop_assert!(left <= cells(at_treating) && left.get().value >= 0.0);
        if let Crossing::At(time) = survival.crossing(cells(at_treating), cells(minimum), &storage) {
            prop_assert!(time.get::<second>().is_finite());
        }
    }

    #[test]
    fn the_earliest_limit_rules(
        on_seed in prop::option::of(0.0..200.0), partners in prop::collection::vec(0.0..200.0, 0..4), crossing in prop::option::of(0.0..200.0),
    ) {
        let life = |number: f64| Life::new(days(number)).unwrap();
        let lives: Vec<Life> = partners.iter().copied().map(life).collect();
        let by = plant_by(on_seed.map(life), &lives, crossing.map(|at| Crossing::At(days(at))));
        let all: Vec<f64> = on_seed.into_iter().chain(partners).chain(crossing).collect();
        match by {
            PlantBy::Within(time, because) => {
                prop_assert_eq!(time, days(all.iter().copied().fold(f64::INFINITY, f64::min)));
                if because == Because::Minimum {
                    prop_assert_eq!(Some(time), crossing.map(days));
                }
            }
            PlantBy::Unlimited => prop_assert!(all.is_empty()),
            PlantBy::NotAtAll => prop_assert!(false),
        }
    }

    #[test]
    fn a_fit_finds_the_rate_that_made_the_counts(
        d in magnitude(0.0..=3.0), initial in magnitude(4.0..=9.0), times in prop::collection::btree_set(0u16..400, 3..12),
    ) {
        let times: Vec<f64> = times.into_iter().map(f64::from).collect();
        // Rounding of the counts alone, over a span that shows the drop.
        let span = times.last().unwrap() - times[0];
        prop_assume!(span / d > 0.01 && times.last().unwrap() / d < 30.0);
        let samples: Vec<Sample> =
            times.iter().map(|&at| Sample::new(days(at), initial * exp10(-at / d)).unwrap()).collect();
        let fit = fit_log_linear(&samples).unwrap();
        prop_assert!((fit.decimal_reduction.get().get::<day>() / d - 1.0).abs() < 1e-9);
        prop_assert!((fit.log10_initial - log10(initial)).abs() < 1e-9);
        let errors = fit.errors.unwrap();
        prop_assert!(errors.residual < 1e-12 && errors.decimal_reduction.get::<day>() / d < 1e-9);
    }

    #[test]
    fn the_dose_for_a_count_lands_that_count(
        titre in magnitude(0.0..=20.0), wanted in magnitude(2.0..=8.0), recovery in 0.01..=1.0,
    ) {
        let titre = TitrePerVolume::new(Cells::new::<cell>(titre) / Volume::new::<cubic_meter>(1.0)).unwrap();
        let dose: PerSeed<Liquid> = titre.dose_for(cells(wanted), share(recovery)).unwrap();
        let lands = titre.cells(dose, share(recovery));
        prop_assert!((lands.get().value / wanted - 1.0).abs() < 1e-14);
        let needed = TitrePerVolume::needed(lands, dose, share(recovery)).unwrap();
        prop_assert!((needed.get().value / titre.get().value - 1.0).abs() < 1e-14);
    }
}
