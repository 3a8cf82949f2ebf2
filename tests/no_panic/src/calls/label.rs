//! What is on the seed tag and on the label.

use hilum::rate::{self, CellCount, Content, Density, Dry, Liquid, PerArea, PerMass, PerSeed};
use hilum::seed::{self, Bushel, SeedSize, SeedUnit, Share, Sown, UnitOfMass, UnitOfSeeds};
use hilum::text::{self, Compound, Written};
use hilum::unit::Unit;

use super::{one, three, two};

pub(super) fn all() {
    texts();
    seeds();
    rates();
}

fn texts() {
    three(Compound::count_in);
    two(Written::measured);
    two(|word, units: core::slice::Iter<'static, Unit>| text::closest(word, units.map(|unit| unit.symbol)));
}

fn seeds() {
    one(SeedSize::new);
    one(SeedSize::get);
    one(SeedSize::of_thousand);
    one(SeedSize::of_seed);
    one(SeedSize::thousand);
    one(SeedSize::seed_mass);
    two(SeedSize::count_in);
    two(SeedSize::mass_of);
    two(SeedSize::within);
    one(Share::new);
    one(Share::number);
    one(UnitOfSeeds::new);
    one(UnitOfMass::new);
    two(SeedUnit::mass);
    three(SeedUnit::units_in);
    one(Bushel::new);
    two(Bushel::bushels_in);
    two(seed::pure_live_seed);
    one(Sown::new);
    three(Sown::for_stand);
    two(Sown::by_mass);
    two(Sown::mass_per_area);
    two(Sown::area);
    two(Sown::seeds_for);
}

fn rates() {
    one(PerMass::<Liquid>::new);
    one(PerMass::<Liquid>::get);
    two(PerMass::<Liquid>::per_seed);
    two(PerMass::<Liquid>::implied_size);
    two(PerMass::<Liquid>::difference);
    two(PerMass::<Liquid>::exceeds);
    two(PerMass::<Liquid>::falls_below);
    two(PerMass::<Liquid>::from_bushel);
    two(PerMass::<Liquid>::per_bushel);
    two(PerMass::<Liquid>::needed);
    two(PerMass::<CellCount>::needed);
    two(PerMass::<Liquid>::treats);
    two(PerMass::<Liquid>::active);
    two(PerMass::<Liquid>::weighed);
    two(PerMass::<Dry>::active);
    two(PerMass::<Dry>::measured);
    two(PerMass::<rate::Active>::in_liquid);
    two(PerMass::<rate::Active>::in_dry);
    one(PerSeed::<Liquid>::new);
    one(PerSeed::<Liquid>::get);
    two(PerSeed::<Liquid>::per_mass);
    two(PerSeed::<Liquid>::per_area);
    two(PerSeed::<Liquid>::from_unit);
    two(PerSeed::<Liquid>::per_unit);
    two(PerSeed::<Liquid>::needed);
    one(PerArea::<Liquid>::new);
    one(PerArea::<Liquid>::get);
    two(PerArea::<Liquid>::per_seed);
    one(Density::new);
    two(Content::per_volume);
    two(Content::by_mass);
}
