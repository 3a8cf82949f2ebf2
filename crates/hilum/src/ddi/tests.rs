use super::*;
use crate::quantity::{TemperatureDifference, mass::gram, seeds::seed, volume::liter};

// ISO 11783-11, by unit and resolution; worked by hand.
#[test]
fn steps_are_the_resolution_of_the_standard() {
    let thousand = Seeds::new::<seed>(1_000.0);
    assert_eq!(THOUSAND_SEED_MASS.encode(Mass::new::<gram>(159.0) / thousand), Ok(159_000));
    assert_eq!(THOUSAND_SEED_VOLUME.encode(Volume::new::<liter>(0.25) / thousand), Ok(250));
    assert_eq!(SEEDS_PER_AREA.setpoint.encode(base!(SeedsPerArea, 34.5948)), Ok(34_595));
    assert_eq!(VOLUME_PER_AREA.setpoint.encode(base!(VolumePerArea, 1e-6)), Ok(100_000));
    assert_eq!(VOLUME_FLOW.actual.encode(base!(VolumeFlow, 100e-6 / 60.0)), Ok(1_667));
    assert_eq!(MASS_FLOW.setpoint.encode(base!(MassFlow, 1.0)), Ok(1_000_000));
    assert_eq!(DENSITY.encode(base!(MassPerVolume, 1_040.0)), Ok(1_040_000));
    assert_eq!(TOTAL_VOLUME.encode(Volume::new::<liter>(125.4)), Ok(125));
    assert_eq!(MASS_HELD.actual.encode(base!(Mass, 1.25)), Ok(1_250));
    assert_eq!(SETPOINT_SHARE.encode(base!(Ratio, 0.64)), Ok(640_000));
}

#[test]
fn a_temperature_counts_from_absolute_zero() {
    let encode = |celsius| AMBIENT_TEMPERATURE.encode(Temperature::from_celsius(celsius));
    assert_eq!((encode(0.0), encode(20.0), encode(-273.15)), (Ok(273_150), Ok(293_150), Ok(0)));
    assert!(matches!(encode(-274.0), Err(Error::Negative { .. })));
    // The dictionary ends at 1000 K.
    assert_eq!(encode(726.85), Ok(1_000_000));
    assert!(matches!(encode(727.0), Err(Error::NotForTheBus { ddi: 192, most: 1_000_000, .. })));
    assert!(AMBIENT_TEMPERATURE.decode(1_000_001).is_err());
    let read = TEMPERATURE.actual.decode(283_150).unwrap();
    let off: TemperatureDifference = read - Temperature::from_celsius(10.0);
    assert!(off.value.abs() < 1e-12);
}

#[test]
fn every_step_survives_the_way_out_and_back() {
    for row in (0..=u16::MAX).filter_map(find) {
        for steps in [0, 1, 2, 999, 65_537, 999_983, 123_456_789, i32::MAX] {
            if steps <= row.most {
                assert_eq!(row.encode(row.decode(steps).unwrap()), Ok(steps), "{row:?}");
            }
        }
    }
}

#[test]
fn numbers_are_found_and_unique() {
    for number in 0..=u16::MAX {
        let rows = || dictionary::TABLE.iter().filter_map(|span| span.row(number));
        assert!(rows().count() <= 1);
        assert!(rows().all(|row| row.number == number && row.powers.name().is_some()));
    }
    assert_eq!(find(VOLUME_PER_MASS.actual.number()).map(|row| row.number), Some(32));
    assert_eq!((TEMPERATURE.minimum.number(), TEMPERATURE.default.number()), (580, 582));
    // Each entry by its own number: what is found is what it carries.
    for controlled in [VOLUME_PER_MASS.setpoint, VOLUME_PER_MASS.default, VOLUME_PER_MASS.maximum] {
        assert_eq!(find(controlled.number()), Some(controlled.row));
    }
    for of in [TEMPERATURE.setpoint, TEMPERATURE.actual, TEMPERATURE.minimum, TEMPERATURE.default] {
        assert_eq!(find(of.number()), Some(of.row));
    }
    assert_eq!(find(MASS_HELD.maximum.number()), Some(MASS_HELD.maximum.row));
    assert_eq!(find(20), None);
}

#[test]
fn what_does_not_fit_is_refused() {
    let encode =
        |litres_per_kg: f64| VOLUME_PER_MASS.setpoint.encode(base!(VolumePerMass, litres_per_kg * 1e-3));
    assert!(matches!(encode(3_000.0), Err(Error::NotForTheBus { ddi: 31, most: i32::MAX, .. })));
    assert_eq!(encode(2_147.483_647), Ok(i32::MAX));
    assert!(encode(2_147.483_648).is_err());
    assert_eq!((encode(0.0), encode(0.5e-6)), (Ok(0), Ok(1)));
    // Less than half a step would be sent as no dose at all.
    assert!(matches!(encode(0.4e-6), Err(Error::NotForTheBus { .. })));
    assert!(matches!(encode(-1.0), Err(Error::Negative { .. })));
    assert!(matches!(encode(f64::NAN), Err(Error::NotFinite { .. })));
    assert!(matches!(encode(f64::INFINITY), Err(Error::NotFinite { .. })));
    assert!(matches!(VOLUME_PER_MASS.actual.decode(-1), Err(Error::Negative { .. })));
}
