//! Active ingredient is not product: the pump is set for the product.

use hilum::rate::ActivePerMass;
use hilum::treater::{Flow, SeedFlow};

fn pump(seed: SeedFlow, active: ActivePerMass) -> Flow {
    seed.liquid(active)
}

fn main() {}
