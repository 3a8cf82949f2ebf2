//! A maximum per seed does not bound a dose per area.

use hilum::rate::{RatePerArea, RatePerSeed};

fn too_much(dose: RatePerArea, most: RatePerSeed) -> bool {
    dose.exceeds(most)
}

fn main() {}
