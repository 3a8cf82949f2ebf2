//! Facts of the trade about keeping seed and mixes alive. All of them are common practice; the label,
//! and what a maker declares, come before them.

use crate::quantity::{CellsPerSeed, Temperature, Time, base};

/// No liquid on seed this cold: it freezes on the seed. Common practice.
pub const FROZEN: Temperature = Temperature::FREEZING;
/// Treated seed keeps best at or below this (50 °F). Common practice.
pub const STORE_COOL: Temperature = Temperature::from_celsius(10.0);
/// Too warm for treated seed, unless its maker says otherwise. Common practice.
pub const STORE_WARM: Temperature = Temperature::from_celsius(25.0);
/// How long a mix with a living product is usually good: 24 h. Common practice.
pub const USUAL_POT_LIFE: Time = base!(Time, 86_400.0);
/// How long cells are typically stated to last on treated seed: 120 d. Common practice.
pub const TYPICAL_ON_SEED_LIFE: Time = base!(Time, 120.0 * 86_400.0);
/// How many cells are typically asked for at planting: 1e5 CFU/seed. Common practice.
pub const TYPICAL_MINIMUM: CellsPerSeed = base!(CellsPerSeed, 1e5);

/// Whether seed is too cold to take a liquid: at or below 0 °C. Dry treated seed may freeze.
#[must_use]
pub fn frozen(seed: Temperature) -> bool {
    seed <= FROZEN
}

/// How a storage temperature suits treated seed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Warmth {
    /// At or below [`STORE_COOL`].
    Cool,
    /// Warmer than that, though not too warm.
    Fair,
    /// Above what the maker declares, or above [`STORE_WARM`] when nothing is declared.
    TooWarm,
}

/// How a storage temperature suits treated seed whose maker says to store it below another.
///
/// ```
/// use hilum::quantity::Temperature;
/// use hilum::viability::storage::{Warmth, warmth};
/// // Common practice: at or below 50 °F (10 °C), and not above 25 °C.
/// assert_eq!(warmth(Temperature::from_fahrenheit(50.0), None), Warmth::Cool);
/// assert_eq!(warmth(Temperature::from_celsius(18.0), None), Warmth::Fair);
/// assert_eq!(warmth(Temperature::from_celsius(18.0), Some(Temperature::from_celsius(15.0))), Warmth::TooWarm);
/// ```
#[must_use]
pub fn warmth(storage: Temperature, store_below: Option<Temperature>) -> Warmth {
    if storage > store_below.unwrap_or(STORE_WARM) {
        Warmth::TooWarm
    } else if storage > STORE_COOL {
        Warmth::Fair
    } else {
        Warmth::Cool
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::time::{day, hour};

    #[test]
    fn the_borders_belong_to_the_side_the_trade_puts_them() {
        assert!(frozen(Temperature::from_fahrenheit(32.0)));
        assert!(!frozen(Temperature::from_fahrenheit(32.1)));
        assert_eq!(warmth(Temperature::from_celsius(25.0), None), Warmth::Fair);
        assert_eq!(warmth(Temperature::from_celsius(25.1), None), Warmth::TooWarm);
        assert_eq!(warmth(Temperature::from_fahrenheit(50.1), None), Warmth::Fair);
        let four = Some(Temperature::from_celsius(4.0));
        assert_eq!(warmth(Temperature::from_celsius(6.0), four), Warmth::TooWarm);
        assert_eq!(warmth(Temperature::from_celsius(4.0), four), Warmth::Cool);
    }

    #[test]
    fn the_usual_times_are_a_day_and_four_months() {
        assert_eq!(USUAL_POT_LIFE, Time::new::<hour>(24.0));
        assert_eq!(TYPICAL_ON_SEED_LIFE, Time::new::<day>(120.0));
    }
}
