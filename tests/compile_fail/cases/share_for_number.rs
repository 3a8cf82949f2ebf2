//! A share is no setting, and a plain number is no share.

use hilum::seed::{Share, pure_live_seed};
use hilum::treater::Setting;

fn setting(stroke: Share) -> Result<Setting, hilum::Error> {
    Setting::new(stroke)
}

fn live() -> Share {
    pure_live_seed(0.98, 0.92)
}

fn main() {}
