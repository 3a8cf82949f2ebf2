//! Every public function of the core, called with values that the compiler cannot know.
//!
//! One function per module of the core. What is not called here is not checked.

use core::hint::black_box;

use hilum::quantity::{
    self, Mass, Seeds, SeedsPerMass, Temperature, TemperatureDifference, Volume, VolumePerMass,
};
use hilum::{math, unit};

pub(crate) fn all() {
    quantities();
    units();
    mathematics();
    #[cfg(feature = "panics")]
    a_panic();
}

fn quantities() {
    let mass = Mass::new::<quantity::mass::pound>(number());
    let volume = Volume::new::<quantity::volume::fluid_ounce>(number());
    let seeds = Seeds::new::<quantity::seeds::seed>(number());
    let rate: VolumePerMass = volume / mass;
    let size: SeedsPerMass = seeds / mass;
    black_box((rate * mass, size * mass));
    let (a, b) = (Temperature::from_celsius(number()), Temperature::from_fahrenheit(number()));
    let difference: TemperatureDifference = a - b;
    let sum = a + difference;
    black_box((sum.celsius(), sum.fahrenheit(), a.partial_cmp(&b)));
}

fn units() {
    for unit in unit::all() {
        black_box(unit.powers.over(black_box(unit.powers)).name());
    }
}

fn mathematics() {
    black_box([math::exp10(number()), math::log10(number()), math::pow(number(), number())]);
    black_box([math::sqrt(number()), math::floor(number()), math::ceil(number())]);
}

fn number() -> f64 {
    black_box(1.0)
}

#[cfg(feature = "panics")]
fn a_panic() {
    #[expect(clippy::indexing_slicing, reason = "the panic that must be seen")]
    black_box([1, 2, 3][black_box(1_usize)]);
}
