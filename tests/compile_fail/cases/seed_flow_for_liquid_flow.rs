//! What the auger brings is not what the pump brings.

use hilum::seed::Share;
use hilum::treater::{Flow, SeedFlow};

fn off(seed: SeedFlow, target: Flow, tolerance: Share) -> bool {
    target.off_target(seed, tolerance)
}

fn main() {}
