use super::*;
use crate::quantity::{
    Mass, MassPerVolume, Ratio, mass::hundredweight, mass::kilogram, ratio::percent, volume::fluid_ounce,
    volume::liter,
};
use crate::rate::PerMass;

fn rate(fl_oz_per_cwt: f64) -> RatePerMass {
    PerMass::new(Volume::new::<fluid_ounce>(fl_oz_per_cwt) / Mass::new::<hundredweight>(1.0)).unwrap()
}

fn share(of_hundred: f64) -> Share {
    Share::new(Ratio::new::<percent>(of_hundred)).unwrap()
}

fn kg(mass: f64) -> Mass {
    Mass::new::<kilogram>(mass)
}

fn litres(volume: f64) -> Volume {
    Volume::new::<liter>(volume)
}

#[test]
fn water_makes_up_or_comes_on_top() {
    let products = [rate(2.5), rate(0.75)];
    let plain = Slurry::of(products, Water::None).unwrap();
    assert!((plain.rate().difference(rate(3.25))).abs() < 1e-12);
    assert!(plain.water().value.abs() < 1e-30);
    assert!(plain.water_share().number() < 1e-15);
    let made_up = Slurry::of(products, Water::UpTo(rate(5.0))).unwrap();
    assert!((made_up.rate().difference(rate(5.0))).abs() < 1e-12);
    assert!((made_up.water().value / rate(1.75).get().value - 1.0).abs() < 1e-12);
    let plus = Slurry::of(products, Water::Plus(rate(1.25))).unwrap();
    assert!((plus.rate().difference(rate(4.5))).abs() < 1e-12);
}

// Worked by hand: 1.25 and 1.05 kg/L, twice as much of the first, is 3.55 / 3 kg/L, whatever else is in the tank.
#[test]
fn density_is_that_of_the_parts_named() {
    let heavy = |kg_per_litre| Density::new(kg(kg_per_litre) / litres(1.0)).unwrap();
    let of_both = density([(share(40.0), heavy(1.25)), (share(20.0), heavy(1.05))]).unwrap();
    assert!(((of_both.get() * litres(3.0) / kg(3.55)).value - 1.0).abs() < 1e-12);
}

#[test]
fn shares_add_up_to_the_whole() {
    let products = [rate(2.5), rate(0.75), rate(0.1)];
    for water in [Water::None, Water::UpTo(rate(5.0)), Water::Plus(rate(0.3))] {
        let slurry = Slurry::of(products, water).unwrap();
        let parts: f64 = products.iter().map(|product| slurry.share(*product).unwrap().number()).sum();
        assert!((parts + slurry.water_share().number() - 1.0).abs() < 1e-12);
    }
}

#[test]
fn making_up_to_less_than_the_products_is_refused() {
    let error = Slurry::of([rate(3.0)], Water::UpTo(rate(2.9))).unwrap_err();
    assert!(
        matches!(error, Error::TooLittle { argument: Argument::MakeUpTo, value, least } if value < least)
    );
    // Just the products, whatever the order of adding: no water, and none below 0.
    let full = Slurry::of([rate(0.1), rate(0.2)], Water::UpTo(rate(0.3))).unwrap();
    assert!((0.0..1e-15).contains(&full.water_share().number()));
}

#[test]
fn a_fill_treats_the_seed_it_is_for() {
    let slurry = Slurry::of([rate(3.2)], Water::UpTo(rate(5.0))).unwrap();
    let fill = slurry.fill(kg(12_000.0)).unwrap();
    assert!((slurry.treats(fill).unwrap().value - 12_000.0).abs() < 1e-8);
    let hold_up = HoldUp::new(litres(2.0)).unwrap();
    let mixed = hold_up.mixed(slurry, kg(12_000.0)).unwrap();
    assert!(((mixed - fill).get::<liter>() - 2.0).abs() < 1e-9);
    assert!((hold_up.treats(slurry, mixed).unwrap().value - 12_000.0).abs() < 1e-8);
    // The lines take it all.
    assert!(hold_up.treats(slurry, litres(1.5)).unwrap().value.abs() < 1e-30);
}

#[test]
fn a_recipe_is_kept_within_its_tolerance() {
    assert!(keeps_recipe([(share(51.0), share(50.0))], share(2.0)));
    assert!(keeps_recipe([(share(49.0), share(50.0))], share(2.0)));
    assert!(!keeps_recipe([(share(51.1), share(50.0))], share(2.0)));
    // One product off is enough, and a small one is judged by its own share.
    assert!(!keeps_recipe([(share(50.0), share(50.0)), (share(1.1), share(1.0))], share(5.0)));
    assert!(!keeps_recipe([(share(0.0), share(1.0))], share(99.0)));
    assert!(!keeps_recipe([(share(1.0), share(0.0))], share(100.0)));
    assert!(keeps_recipe([(share(30.0), share(30.0))], share(0.0)));
}

#[test]
fn a_fill_is_not_below_the_least() {
    let least = MinFill::new(litres(20.0)).unwrap();
    assert_eq!(least.missed_by(litres(19.9)), Ok(true));
    assert_eq!(least.missed_by(litres(20.0)), Ok(false));
    assert_eq!(least.missed_by(litres(20.0 - 1e-10)), Ok(false));
}

#[test]
fn a_pour_is_weighed_by_its_density() {
    let density = Density::new(MassPerVolume { value: 1_040.0, ..MassPerVolume::default() }).unwrap();
    let poured = pour(share(25.0), litres(80.0)).unwrap();
    assert!((weigh(poured, density).unwrap().value - 20.8).abs() < 1e-12);
    assert!(weigh(litres(0.0), density).unwrap().value.abs() < 1e-30);
}

#[test]
fn what_cannot_be_is_refused() {
    assert!(matches!(Slurry::of([], Water::None), Err(Error::Needed { argument: Argument::MixRate })));
    assert!(total_liquid([]).is_err());
    let slurry = Slurry::of([rate(3.0)], Water::None).unwrap();
    assert!(matches!(density([]), Err(Error::Needed { argument: Argument::MixShare })));
    assert!(matches!(slurry.share(rate(3.5)), Err(Error::NotAShare { argument: Argument::MixShare, .. })));
    for bad in [0.0, -1.0, f64::NAN, f64::INFINITY, 1e31] {
        assert!(slurry.fill(kg(bad)).is_err());
        assert!(slurry.treats(base!(Volume, bad)).is_err());
        assert!(pour(share(5.0), base!(Volume, bad)).is_err());
        assert!(MinFill::new(base!(Volume, bad)).is_err());
        assert!(HoldUp::new(litres(1.0)).unwrap().treats(slurry, base!(Volume, bad)).is_err());
    }
    assert!(HoldUp::new(litres(0.0)).is_ok() && HoldUp::new(litres(-0.1)).is_err());
}
