//! A dose per seed is no dose per mass: what it comes to depends on the size of the seed.

use hilum::mix::{Slurry, Water};
use hilum::rate::RatePerSeed;

fn slurry(label: RatePerSeed) -> Result<Slurry, hilum::Error> {
    Slurry::of([label], Water::None)
}

fn main() {}
