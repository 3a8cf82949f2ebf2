//! What does the label mean, how much product is that, and is it allowed?

use hilum::limit::SeasonLimit;
use hilum::mix::{Slurry, Water};
use hilum::pack::{Coverage, SetsNeeded};
use hilum::quantity::{Mass, MassPerArea, Measure, Seeds, SeedsPerArea, Volume};
use hilum::rate::{
    ActivePerArea, ActivePerMass, ActivePerSeed, Content, Density, PerArea, PerMass, PerSeed, RatePerMass,
    Substance,
};
use hilum::seed::{Bushel, SeedSize, Share, Sown, UnitOfSeeds};

use crate::refusal::{Blame, Refusal, Refused};
use crate::slot::Slots;

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
        /// The share of the season's limit that this is: (active per seed × sown + used) / limit; more than 1 is not allowed.
        share(limit: MassPerArea, used: MassPerArea, active: ActivePerSeed, sown: Sown) -> share: f64 =
            season(slots, limit, Some(used))?.share(active, sown);
    }
    mix {
        /// The share of a product in a mix that is made up with water: rate / volume made up to.
        share(rate: RatePerMass, make_up_to: RatePerMass) -> share: Share =
            Slurry::of([rate], Water::UpTo(make_up_to)).of(slots, 1)?.share(rate).of(slots, 0)?;
        /// The seed that a volume of mix treats: volume / slurry rate.
        treats(volume: Volume, slurry: RatePerMass) -> mass: Mass =
            Slurry::of([slurry], Water::None).looked_at()?.treats(volume).looked_at()?;
        /// The mix that a mass of seed takes up: mass × slurry rate.
        fill(mass: Mass, slurry: RatePerMass) -> volume: Volume =
            Slurry::of([slurry], Water::None).looked_at()?.fill(mass).looked_at()?;
    }
    pack {
        /// Whole sets to open for a mass of seed: need / what one set covers, rounded up.
        sets(need: Mass, covers: Mass) -> sets: f64 = {
            let set = Coverage::new(covers).looked_at()?;
            let sets = SetsNeeded::sum([(need, set)]).looked_at()?.whole().of(slots, 0)?;
            u32::try_from(sets).map(f64::from).map_err(|_| slots.refuse(0, Refusal::not_a_count(f64::INFINITY)))?
        };
    }
}

fn season(slots: &Slots, limit: MassPerArea, used: Option<MassPerArea>) -> Result<SeasonLimit, Refused> {
    let none = MassPerArea::from_base(0.0);
    SeasonLimit::new(limit, used.unwrap_or(none)).of(slots, 0)
}
