//! A powder has no volume in the slurry.

use hilum::mix::{Slurry, Water};
use hilum::rate::{Dry, PerMass};

fn slurry(powder: PerMass<Dry>) -> Result<Slurry, hilum::Error> {
    Slurry::of([powder], Water::None)
}

fn main() {}
