use super::*;
use crate::quantity::{
    Area, Mass, MassPerSeed, Ratio, Seeds, area::acre, mass::milligram, mass::pound, seeds::seed,
};
use crate::rate::ActivePerMass;

fn lb_per_acre(pounds: f64) -> MassPerArea {
    Mass::new::<pound>(pounds) / Area::new::<acre>(1.0)
}

fn mg_per_seed(mg: f64) -> ActivePerSeed {
    let dose: MassPerSeed = Mass::new::<milligram>(mg) / Seeds::new::<seed>(1.0);
    ActivePerSeed::new(dose).unwrap()
}

fn sown(seeds_per_acre: f64) -> Sown {
    Sown::new(Seeds::new::<seed>(seeds_per_acre) / Area::new::<acre>(1.0)).unwrap()
}

// Worked by hand: 0.25 lb is 113,398.0925 mg; with 0.05 lb used, 90,718.474 mg are left, 0.5 mg a seed.
#[test]
fn the_limit_is_met_at_the_greatest_sowing_rate() {
    let season = SeasonLimit::new(lb_per_acre(0.25), lb_per_acre(0.05)).unwrap();
    let most = season.max_sowing(mg_per_seed(0.5)) * Area::new::<acre>(1.0);
    assert!((most.get::<seed>() - 181_436.948).abs() < 1e-6);
    let at_most = Sown::new(season.max_sowing(mg_per_seed(0.5))).unwrap();
    assert!((season.share(mg_per_seed(0.5), at_most) - 1.0).abs() < 1e-12);
    assert!(!season.exceeded(mg_per_seed(0.5), at_most));
    assert!(season.exceeded(mg_per_seed(0.5), sown(181_437.0)));
    assert!(!season.exceeded(mg_per_seed(0.5), sown(181_436.0)));
}

#[test]
fn the_season_counts_what_was_used() {
    let season = SeasonLimit::new(lb_per_acre(0.25), lb_per_acre(0.05)).unwrap();
    let fresh = SeasonLimit::new(lb_per_acre(0.25), lb_per_acre(0.0)).unwrap();
    let (dose, rate) = (mg_per_seed(0.2), sown(140_000.0));
    assert!((season.share(dose, rate) - fresh.share(dose, rate) - 0.2).abs() < 1e-12);
    let used = season.total(dose, rate).get() - fresh.total(dose, rate).get();
    assert!(((used / lb_per_acre(0.05)).value - 1.0).abs() < 1e-12);
}

#[test]
fn nothing_may_be_sown_when_the_limit_is_used_up() {
    for used in [0.25, 0.3] {
        let season = SeasonLimit::new(lb_per_acre(0.25), lb_per_acre(used)).unwrap();
        assert!(season.max_sowing(mg_per_seed(0.5)).value.abs() < 1e-300);
        assert!(season.exceeded(mg_per_seed(1e-6), sown(1_000.0)));
    }
}

#[test]
fn a_limit_is_kept_to_a_billionth() {
    let rate = |mg_per_kg: f64| ActivePerMass::new(base!(Ratio, mg_per_kg * 1e-6)).unwrap();
    assert!(!rate(600.0).exceeds(rate(600.0)) && !rate(600.0).falls_below(rate(600.0)));
    assert!(!rate(600.0 * (1.0 + 5e-10)).exceeds(rate(600.0)));
    assert!(rate(600.0 * (1.0 + 2e-9)).exceeds(rate(600.0)));
    assert!(!rate(600.0 * (1.0 - 5e-10)).falls_below(rate(600.0)));
    assert!(rate(600.0 * (1.0 - 2e-9)).falls_below(rate(600.0)));
    assert!(mg_per_seed(0.6).exceeds(mg_per_seed(0.5)) && !mg_per_seed(0.4).exceeds(mg_per_seed(0.5)));
}

#[test]
fn doses_of_one_active_add_up() {
    let total = total_on_seed([mg_per_seed(0.03), mg_per_seed(0.12), mg_per_seed(0.05)]).unwrap();
    assert!(((total.get() / mg_per_seed(0.2).get()).value - 1.0).abs() < 1e-12);
    assert!(matches!(total_on_seed([]), Err(Error::Needed { argument: Argument::RatePerSeed })));
}

#[test]
fn what_cannot_be_is_refused() {
    for bad in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert!(SeasonLimit::new(lb_per_acre(bad), lb_per_acre(0.0)).is_err());
    }
    for bad in [-1.0, f64::NAN, f64::INFINITY] {
        assert!(SeasonLimit::new(lb_per_acre(1.0), lb_per_acre(bad)).is_err());
    }
}

// What is above or below by no more than 1e-9 of the limit is within it.
#[test]
fn the_slack_itself_is_allowed() {
    let dose = |kg_per_kg: f64| ActivePerMass::new(base!(Ratio, kg_per_kg)).unwrap();
    assert!(!dose(1.0 + 1e-9).exceeds(dose(1.0)) && dose(1.0 + 2e-9).exceeds(dose(1.0)));
    assert!(!dose(1.0 - 1e-9).falls_below(dose(1.0)) && dose(1.0 - 2e-9).falls_below(dose(1.0)));
}
