//! A dose per bag sold by weight is a dose per mass, not per seed.

use hilum::quantity::Volume;
use hilum::rate::RatePerSeed;
use hilum::seed::UnitOfMass;

fn dose(amount: Volume, bag: UnitOfMass) -> Result<RatePerSeed, hilum::Error> {
    RatePerSeed::from_unit(amount, bag)
}

fn main() {}
