//! A unit of seeds is a number, not a mass.

use hilum::quantity::{Mass, mass::pound};
use hilum::seed::UnitOfSeeds;

fn unit() -> Result<UnitOfSeeds, hilum::Error> {
    UnitOfSeeds::new(Mass::new::<pound>(50.0))
}

fn main() {}
