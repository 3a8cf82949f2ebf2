//! Two points on the temperature scale have a difference, but no sum.

use hilum::quantity::Temperature;

fn sum(store: Temperature, field: Temperature) -> Temperature {
    store + field
}

fn main() {}
