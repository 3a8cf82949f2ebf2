//! What does the label mean, and is it allowed?

use hilum::limit::{SeasonLimit, total_on_seed};
use hilum::quantity::{Mass, MassPerArea, Measure, Seeds, SeedsPerArea};
use hilum::rate::{
    ActivePerArea, ActivePerMass, ActivePerSeed, Content, Density, Dry, PerArea, PerMass, PerSeed,
    RatePerMass, Substance,
};
use hilum::seed::{Bushel, SeedSize, Sown, UnitOfSeeds};

use crate::give::{SomeRate, slot};
use crate::refusal::{Blame, Refused};
use crate::slots::Slots;

super::calculators! {
    slots =>
    rate {
        /// The same dose on one seed: rate / size.
        per_seed[S](rate: PerMass<S>, size: SeedSize) -> per_seed: PerSeed<S> = rate.per_seed(size);
        /// The same dose per mass of seed: dose per seed × size.
        per_mass[S](per_seed: PerSeed<S>, size: SeedSize) -> rate: PerMass<S> = per_seed.per_mass(size);
        /// The same dose per mass of seed: dose per unit / unit × size.
        per_mass[S](per_unit: <S as Substance>::Amount, unit: UnitOfSeeds, size: SeedSize) -> rate: PerMass<S> =
            PerSeed::<S>::from_unit(per_unit, unit).looked_at()?.per_mass(size);
        /// The same dose per seed unit: rate / size × unit.
        per_unit[S](rate: PerMass<S>, size: SeedSize, unit: UnitOfSeeds) -> per_unit: <S as Substance>::Amount =
            rate.per_seed(size).per_unit(unit);
        /// The dose on one seed, of a label that states an amount per seed unit: amount / unit.
        from_unit[S](amount: <S as Substance>::Amount, unit: UnitOfSeeds) -> per_seed: PerSeed<S> =
            PerSeed::from_unit(amount, unit).looked_at()?;
        /// The same dose per bushel: rate × bushel.
        per_bushel[S](rate: PerMass<S>, bushel: Bushel) -> amount: <S as Substance>::Amount =
            rate.per_bushel(bushel);
        /// The dose per mass, of a label that states an amount per bushel: amount / bushel.
        from_bushel[S](amount: <S as Substance>::Amount, bushel: Bushel) -> rate: PerMass<S> =
            PerMass::from_bushel(amount, bushel).looked_at()?;
        /// The same dose per area sown: dose per seed × seeds sown per area.
        per_area[S](per_seed: PerSeed<S>, sown: Sown) -> per_area: PerArea<S> = per_seed.per_area(sown);
        /// Product for a mass of seed: rate × mass.
        needed[S](rate: PerMass<S>, mass: Mass) -> amount: <S as Substance>::Amount = rate.needed(mass).looked_at()?;
        /// The seed that an amount of product treats: amount / rate.
        treats[S](rate: PerMass<S>, amount: <S as Substance>::Amount) -> mass: Mass =
            rate.treats(amount).looked_at()?;
        /// The dose on one seed, of a label that states an amount per area: dose per area / seeds sown per area.
        from_area[S](per_area: PerArea<S>, sown: Sown) -> per_seed: PerSeed<S> = per_area.per_seed(sown);
        /// A liquid dose, weighed: rate × density.
        weighed(rate: RatePerMass, density: Density) -> rate: PerMass<Dry> = rate.weighed(density);
        /// A dose by mass, measured by volume: rate / density.
        measured(rate: PerMass<Dry>, density: Density) -> rate: RatePerMass = rate.measured(density);
        /// The seed size at which a dose per mass and a dose per seed are the same: rate / dose per seed.
        implied_size[S](rate: PerMass<S>, per_seed: PerSeed<S>) -> size: SeedSize = rate.implied_size(per_seed);
        /// By how much a dose per seed differs from the rate that governs: dose × size / rate − 1.
        difference[S](rate: PerMass<S>, per_seed: PerSeed<S>, size: SeedSize) -> difference: f64 =
            per_seed.per_mass(size).difference(rate);
    }
    active {
        /// Active ingredient per mass of seed: rate × content.
        per_mass[S](rate: PerMass<S>, content: Content) -> active: ActivePerMass =
            S::active(rate, content, None).of(slots, 1)?;
        /// Active ingredient per mass of seed, where rate and content need the density to meet.
        per_mass[S](rate: PerMass<S>, content: Content, density: Density) -> active: ActivePerMass =
            S::active(rate, content, Some(density)).of(slots, 1)?;
        /// Active ingredient per seed: rate / size × content.
        per_seed[S](rate: PerMass<S>, size: SeedSize, content: Content) -> active: ActivePerSeed =
            S::active(rate, content, None).of(slots, 2)?.per_seed(size);
        /// Active ingredient per seed: dose per seed × content.
        per_seed[S](per_seed: PerSeed<S>, content: Content) -> active: ActivePerSeed = {
            // The core knows the active in a dose per mass; at one seed per kilogram that is the dose per seed.
            let one_per_kg = SeedSize::new(Seeds::from_base(1.0) / Mass::from_base(1.0)).looked_at()?;
            S::active(per_seed.per_mass(one_per_kg), content, None).of(slots, 1)?.per_seed(one_per_kg)
        };
        /// The product that holds so much active: active / content, liquid where the content is per volume.
        product(active: ActivePerMass, content: Content) -> rate: SomeRate = SomeRate(match content {
            Content::PerVolume(content) => slot(active.in_liquid(content).get()),
            Content::ByMass(share) => slot(active.in_dry(share).of(slots, 1)?.get()),
        });
        /// The liquid product that holds so much active, where the content is by mass: active / (content × density).
        product(active: ActivePerMass, content: Content, density: Density) -> rate: SomeRate =
            SomeRate(slot(active.in_liquid(content.per_volume(Some(density)).of(slots, 1)?).get()));
        /// Active ingredient per area: active per seed × seeds sown per area.
        per_area(active: ActivePerSeed, sown: Sown) -> per_area: ActivePerArea = active.per_area(sown);
        /// Active ingredient per area: active per mass / size × seeds sown per area.
        per_area(active: ActivePerMass, size: SeedSize, sown: Sown) -> per_area: ActivePerArea =
            active.per_seed(size).per_area(sown);
    }
    limit {
        /// What the season comes to: active per seed × seeds sown per area.
        per_area(active: ActivePerSeed, sown: Sown) -> per_area: ActivePerArea =
            season(slots, MassPerArea::from_base(1.0), None)?.total(active, sown);
        /// What the season comes to: active per seed × seeds sown per area + used.
        per_area(active: ActivePerSeed, sown: Sown, used: MassPerArea) -> per_area: ActivePerArea =
            season(slots, MassPerArea::from_base(1.0), Some(used))?.total(active, sown);
        /// The sowing rate at which the season's limit is met: limit / active per seed.
        max_sowing(limit: MassPerArea, active: ActivePerSeed) -> sown: SeedsPerArea =
            season(slots, limit, None)?.max_sowing(active);
        /// The sowing rate at which the season's limit is met: (limit − used) / active per seed, 0 when nothing is left.
        max_sowing(limit: MassPerArea, used: MassPerArea, active: ActivePerSeed) -> sown: SeedsPerArea =
            season(slots, limit, Some(used))?.max_sowing(active);
        /// An active on the seed, over two products or what was on it before: first + second.
        on_seed(first: ActivePerSeed, second: ActivePerSeed) -> active: ActivePerSeed =
            total_on_seed([first, second]).looked_at()?;
        /// The share of the season's limit that this is: active per seed × sown / limit; more than 1 is not allowed.
        share(limit: MassPerArea, active: ActivePerSeed, sown: Sown) -> share: f64 =
            season(slots, limit, None)?.share(active, sown);
        /// The share of the season's limit that this is: (active per seed × sown + used) / limit; more than 1 is not allowed.
        share(limit: MassPerArea, used: MassPerArea, active: ActivePerSeed, sown: Sown) -> share: f64 =
            season(slots, limit, Some(used))?.share(active, sown);
    }
}

fn season(slots: &Slots, limit: MassPerArea, used: Option<MassPerArea>) -> Result<SeasonLimit, Refused> {
    let none = MassPerArea::from_base(0.0);
    SeasonLimit::new(limit, used.unwrap_or(none)).of(slots, 0)
}
