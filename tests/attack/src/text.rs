//! Any text where a quantity is read.

use hilum::quantity::{Mass, Measure, VolumePerMass};
use hilum::seed::{Bushel, SeedUnit, UnitOfSeeds};
use hilum::text::{Bases, Compound, Measured, TextError, Written, closest, read, read_temperature};

/// Reads it in every way there is.
pub fn attack(bytes: &[u8]) {
    let Ok(text) = core::str::from_utf8(bytes) else { return };
    let written = Written::read(text);
    refused(written.as_ref().err());
    assert_eq!(
        written,
        Written::read_with(text, |digits| digits.parse().ok()),
        "one reader of decimals is as good as another"
    );
    assert_eq!(written, Written::read(&format!("  {text}\n")), "spaces around it mean nothing");
    refused(read::<Mass>(text).as_ref().err());
    refused(read::<VolumePerMass>(text).as_ref().err());
    if let Ok(at) = read_temperature(text) {
        assert!(at.celsius().is_finite(), "{text:?}");
    }
    if let Ok(written) = written {
        measured(text, &written);
    }
    refused(Compound::read(text).as_ref().err());
    let _ = closest(text, ["oz av", "fl oz", "seeds"].into_iter());
}

fn measured(text: &str, written: &Written) {
    assert!(written.number.is_finite(), "{text:?}");
    let bases = Bases {
        unit: Some(SeedUnit::Count(UnitOfSeeds::new(Measure::from_base(140_000.0)).unwrap())),
        bushel: Some(Bushel::new(Mass::from_base(27.0)).unwrap()),
    };
    match written.measured(&bases) {
        Ok(Measured::Quantity { value, .. }) => {
            assert!(!value.is_nan(), "{text:?}");
            let Ok(back) = written.unit.count_in(value, &bases) else { panic!("{text:?} has no way back") };
            let near = (back - written.number).abs() <= 1e-12 * written.number.abs();
            // Beyond what can be calculated with, digits may be lost; a domain type refuses such a value.
            assert!(
                near || !(1e-290..1e290).contains(&value.abs()) || !(1e-290..1e290).contains(&back.abs()),
                "{text:?} comes back as {back}"
            );
        }
        Ok(Measured::Temperature(at)) => assert!(!at.celsius().is_nan(), "{text:?}"),
        Err(error) => refused(Some(&error)),
    }
}

/// A message says something, at a length that can be read.
fn refused(error: Option<&TextError>) {
    let Some(error) = error else { return };
    let message = error.to_string();
    assert!((10..200).contains(&message.len()) && !message.chars().any(char::is_control), "{message:?}");
}
