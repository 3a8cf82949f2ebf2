//! Whole lists.

use hilum::many;
use hilum::quantity::{Mass, Measure, Seeds, SeedsPerMass, VolumePerSeed};
use hilum::rate::{Liquid, PerMass, PerSeed};
use hilum::text::{Compound, Scale};

use super::{one, three, two};

fn sum<T: Measure, E>(results: Result<impl Iterator<Item = T>, E>) -> Result<f64, E> {
    results.map(|results| results.map(Measure::to_base).sum())
}

pub(super) fn all() {
    two(Compound::scale);
    two(Scale::base);
    two(Scale::number);
    one(|list: &'static [f64]| {
        many::each(list, |n| n, |n| if n > 0.0 { Ok(()) } else { Err(()) }, |n| n).is_ok()
    });
    two(|rate: PerMass<Liquid>, seed: &'static [Mass]| sum(many::needed(rate, seed)));
    two(|dose: PerSeed<Liquid>, seeds: &'static [Seeds]| sum(many::needed_by_seeds(dose, seeds)));
    two(|rate: PerMass<Liquid>, sizes: &'static [SeedsPerMass]| {
        sum(many::per_seed(rate, sizes).map(|doses| doses.map(PerSeed::get)))
    });
    two(|dose: PerSeed<Liquid>, sizes: &'static [SeedsPerMass]| {
        sum(many::per_mass(dose, sizes).map(|rates| rates.map(PerMass::get)))
    });
    two(|sizes: &'static [SeedsPerMass], seed: &'static [Mass]| sum(many::count_in(sizes, seed)));
    two(|sizes: &'static [SeedsPerMass], seeds: &'static [Seeds]| sum(many::mass_of(sizes, seeds)));
    three(|titre, recovery, doses: &'static [VolumePerSeed]| {
        sum(many::cells(titre, recovery, doses).map(|cells| cells.map(PerSeed::get)))
    });
}
