//! The season's limit is one of active ingredient, not of product.

use hilum::limit::SeasonLimit;
use hilum::quantity::SeedsPerArea;
use hilum::rate::{Dry, PerSeed};

fn most(season: SeasonLimit, product: PerSeed<Dry>) -> SeedsPerArea {
    season.max_sowing(product)
}

fn main() {}
