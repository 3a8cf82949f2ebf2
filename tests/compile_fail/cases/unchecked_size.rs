//! A number becomes a seed size by being looked at, not by being called one.

use hilum::seed::SeedSize;

fn size() -> SeedSize {
    SeedSize(2_800.0)
}

fn main() {}
