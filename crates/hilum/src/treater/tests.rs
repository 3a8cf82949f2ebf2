use super::*;
use crate::quantity::{
    MassPerVolume, Ratio, mass::kilogram, ratio::percent, time::minute, time::second, volume::milliliter,
};
use crate::rate::PerMass;

fn flow(ml_per_minute: f64) -> Flow {
    Flow::new(Volume::new::<milliliter>(ml_per_minute) / Time::new::<minute>(1.0)).unwrap()
}

fn seed_flow(kg_per_minute: f64) -> SeedFlow {
    SeedFlow::new(Mass::new::<kilogram>(kg_per_minute) / Time::new::<minute>(1.0)).unwrap()
}

fn slurry(ml_per_100_kg: f64) -> RatePerMass {
    PerMass::new(Volume::new::<milliliter>(ml_per_100_kg) / Mass::new::<kilogram>(100.0)).unwrap()
}

fn share(of_hundred: f64) -> Share {
    Share::new(Ratio::new::<percent>(of_hundred)).unwrap()
}

fn point(setting: f64, ml_per_minute: f64) -> CurvePoint {
    CurvePoint { setting: Setting::new(setting).unwrap(), flow: flow(ml_per_minute) }
}

#[track_caller]
fn inside(setting: PumpSetting) -> f64 {
    let PumpSetting::Inside(setting) = setting else { panic!("{setting:?}") };
    setting.number()
}

// Worked by hand: 325 mL/100 kg at 60 kg/min is 195 mL/min.
#[test]
fn flow_and_rate_are_inverse() {
    let liquid = seed_flow(60.0).liquid(slurry(325.0));
    assert!(liquid.deviation(flow(195.0)).abs() < 1e-12);
    assert!(liquid.rate(seed_flow(60.0)).difference(slurry(325.0)).abs() < 1e-12);
}

#[test]
fn utilisation_slows_the_clock() {
    let effective = seed_flow(60.0).effective(share(85.0)).unwrap();
    assert!((effective.time_for(Mass::new::<kilogram>(51.0)).unwrap().get::<minute>() - 1.0).abs() < 1e-12);
    assert!(seed_flow(60.0).effective(share(0.0)).is_err());
}

// Worked by hand: 65 g of 1.04 kg/L in 30 s is 62.5 mL in 30 s, 125 mL/min.
#[test]
fn a_catch_is_measured_or_weighed() {
    let half_a_minute = Time::new::<second>(30.0);
    let density = Density::new(MassPerVolume { value: 1_040.0, ..MassPerVolume::default() }).unwrap();
    let weighed = caught_mass(Mass::new::<kilogram>(0.065), density, half_a_minute).unwrap();
    let measured = caught_volume(Volume::new::<milliliter>(62.5), half_a_minute).unwrap();
    assert!(weighed.deviation(measured).abs() < 1e-12);
    assert!(measured.off_target(flow(118.0), share(5.0)));
    assert!(!measured.off_target(flow(120.0), share(5.0)));
    assert!(!flow(95.0).off_target(flow(100.0), share(5.0)));
}

// Worked by hand: 325 mL/100 kg on dumps of 4 kg is 13 mL each.
#[test]
fn a_dump_takes_its_share_of_liquid() {
    let dumps = Dumps::of(Mass::new::<kilogram>(4.0)).unwrap();
    assert!((dumps.liquid(slurry(325.0)).get::<milliliter>() - 13.0).abs() < 1e-12);
}

#[test]
fn one_catch_is_a_proportional_pump() {
    let curve = PumpCurve::through(&[point(40.0, 160.0)]).unwrap();
    assert!((inside(curve.setting(flow(200.0))) - 50.0).abs() < 1e-12);
    assert!((inside(curve.setting(flow(1.0))) - 0.25).abs() < 1e-12);
    let corrected = Setting::new(40.0).unwrap().corrected(flow(200.0), flow(160.0)).unwrap();
    assert!((corrected.number() - 50.0).abs() < 1e-12);
}

// NIST Statistical Reference Datasets, linear regression, "Norris" (36 observations): certified intercept
// −0.262323073774029 and slope 1.00211681802045.
#[test]
fn least_squares_as_nist_certifies() {
    let x = [
        0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9,
        338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0,
        11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
    ];
    let y = [
        0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8,
        339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9,
        10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
    ];
    let mut points = [point(0.0, 1.0); 36];
    for ((into, x), y) in points.iter_mut().zip(x).zip(y) {
        *into = point(x, y);
    }
    let curve = PumpCurve::through(&points).unwrap();
    for wanted in [1.0, 120.0, 500.0, 998.0] {
        let certified = (wanted + 0.262_323_073_774_029) / 1.002_116_818_020_45;
        assert!((inside(curve.setting(flow(wanted))) / certified - 1.0).abs() < 1e-12);
    }
}

#[test]
fn a_curve_is_not_trusted_beyond_its_catches() {
    let curve = PumpCurve::through(&[point(10.0, 40.0), point(20.0, 70.0), point(30.0, 100.0)]).unwrap();
    assert!((inside(curve.setting(flow(40.0))) - 10.0).abs() < 1e-9);
    assert!((inside(curve.setting(flow(100.0))) - 30.0).abs() < 1e-9);
    assert_eq!(curve.setting(flow(39.9)), PumpSetting::BelowCurve);
    assert_eq!(curve.setting(flow(100.1)), PumpSetting::AboveCurve);
}

#[test]
fn curves_that_are_none_are_refused() {
    let through = PumpCurve::through;
    assert_eq!(through(&[]), Err(Error::Needed { argument: Argument::PumpCurve }));
    assert!(matches!(through(&[point(0.0, 40.0)]), Err(Error::NotPositive { .. })));
    assert!(matches!(through(&[point(10.0, 40.0), point(10.0, 41.0)]), Err(Error::OneSetting { .. })));
    assert!(matches!(through(&[point(10.0, 40.0), point(20.0, 40.0)]), Err(Error::NotRising { .. })));
    assert!(matches!(through(&[point(10.0, 40.0), point(20.0, 30.0)]), Err(Error::NotRising { .. })));
    // What rises by less than 1e-9 of the flow over all settings tested does not rise.
    let rises_by = |share: f64| through(&[point(10.0, 40.0), point(20.0, 40.0 * (1.0 + share))]);
    assert!(matches!(rises_by(5e-10), Err(Error::NotRising { .. })));
    assert!(rises_by(2e-9).is_ok());
    // Two catches at one setting and one at another are a line.
    assert!(through(&[point(10.0, 40.0), point(10.0, 42.0), point(20.0, 80.0)]).is_ok());
}

#[test]
fn a_pump_has_a_range() {
    let range = PumpRange { min: Some(flow(50.0)), max: Some(flow(500.0)) };
    let reaches = [49.9, 50.0, 200.0, 500.0, 500.1].map(|wanted| range.reach(flow(wanted)));
    assert_eq!(reaches, [Reach::TooSlow, Reach::Within, Reach::Within, Reach::Within, Reach::TooFast]);
    assert_eq!(PumpRange::default().reach(flow(1e9)), Reach::Within);
}

#[test]
fn what_cannot_be_is_refused() {
    let one = Time::new::<second>(1.0);
    let density = Density::new(MassPerVolume { value: 1_000.0, ..MassPerVolume::default() }).unwrap();
    for bad in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        let (mass, volume, time) = (base!(Mass, bad), base!(Volume, bad), base!(Time, bad));
        assert!(SeedFlow::new(mass / one).is_err());
        assert!(Flow::new(volume / one).is_err());
        assert!(BatchTreater::new(mass, one).is_err() && BatchTreater::new(base!(Mass, 1.0), time).is_err());
        assert!(Dumps::of(mass).is_err());
        assert!(Dumps::of(base!(Mass, 1.0)).unwrap().seed_flow(1, time).is_err());
        assert!(caught_volume(volume, one).is_err() && caught_volume(base!(Volume, 1.0), time).is_err());
        assert!(caught_mass(mass, density, one).is_err());
        assert!(caught_mass(base!(Mass, 1.0), density, time).is_err());
        assert!(seed_flow(1.0).time_for(mass).is_err());
    }
    assert!(Dumps::of(base!(Mass, 1.0)).unwrap().seed_flow(0, one).is_err());
    assert!(Setting::new(-1.0).is_err() && Setting::new(f64::NAN).is_err());
    assert!(Setting::new(0.0).unwrap().corrected(flow(1.0), flow(1.0)).is_err());
}
