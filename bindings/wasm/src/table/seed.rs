//! How much seed is it, and how is it sown?

use hilum::quantity::{Area, Mass, MassPerArea, MassPerSeed, Seeds};
use hilum::seed::{Bushel, SeedSize, SeedUnit, Share, Sown, pure_live_seed};

use crate::refusal::{Blame, positive};
use crate::value::Value;

super::calculators! {
    slots =>
    unit {
        /// The same quantity in another unit.
        convert(value: Value) -> value: Value = value;
    }
    seed {
        /// How many seeds there are in a mass: mass × size.
        count(mass: Mass, size: SeedSize) -> seeds: Seeds = size.count_in(mass).looked_at()?;
        /// What a number of seeds weighs: seeds / size.
        mass(seeds: Seeds, size: SeedSize) -> mass: Mass = size.mass_of(seeds).looked_at()?;
        /// The size of seed of which a thousand weigh so much: 1000 / mass.
        size_from_thousand(thousand: Mass) -> size: SeedSize = SeedSize::of_thousand(thousand).looked_at()?;
        /// What a thousand seeds weigh: 1000 / size.
        thousand(size: SeedSize) -> thousand: Mass = size.thousand();
        /// The size of seed of which one weighs so much: 1 / mass per seed.
        size_from_seed(seed: MassPerSeed) -> size: SeedSize = SeedSize::of_seed(seed).looked_at()?;
        /// What one seed weighs, on average: 1 / size.
        seed_mass(size: SeedSize) -> seed: MassPerSeed = size.seed_mass();
        /// The least seeds per mass that a tolerance leaves possible: size × (1 − tolerance).
        least_within(size: SeedSize, tolerance: Share) -> size: SeedSize = size.within(tolerance).of(slots, 1)?.0;
        /// The most seeds per mass that a tolerance leaves possible: size × (1 + tolerance).
        most_within(size: SeedSize, tolerance: Share) -> size: SeedSize = size.within(tolerance).of(slots, 1)?.1;
        /// What one seed unit weighs: unit / size, or what a bag sold by weight holds.
        unit_mass(unit: SeedUnit, size: SeedSize) -> mass: Mass = unit.mass(size);
        /// How many seed units a mass is: mass × size / unit, or mass / unit for bags sold by weight.
        units(mass: Mass, size: SeedSize, unit: SeedUnit) -> units: f64 = unit.units_in(mass, size).looked_at()?;
        /// How many bushels a mass is: mass / bushel.
        bushels(mass: Mass, bushel: Bushel) -> bushels: f64 = bushel.bushels_in(mass).looked_at()?;
        /// The share of a lot that is pure seed which germinates: purity × germination.
        pure_live(purity: Share, germination: Share) -> share: Share = pure_live_seed(purity, germination);
    }
    sowing {
        /// What to sow for a stand of plants: stand / (germination × emergence of viable seed).
        for_stand(stand: Sown, germination: Share, emergence: Share) -> sown: Sown = {
            positive(slots, 1, germination.number())?;
            Sown::for_stand(stand, germination, emergence).of(slots, 2)?
        };
        /// Seeds per area of a sowing rate by mass: rate × size.
        seeds_per_area(rate: MassPerArea, size: SeedSize) -> sown: Sown = Sown::by_mass(rate, size).of(slots, 0)?;
        /// Mass per area of a sowing rate by number: sown / size.
        mass_per_area(sown: Sown, size: SeedSize) -> rate: MassPerArea = sown.mass_per_area(size);
        /// The area that a number of seeds sows: seeds / sown.
        area(seeds: Seeds, sown: Sown) -> area: Area = sown.area(seeds).looked_at()?;
        /// The seeds that an area takes: sown × area.
        seeds_for(area: Area, sown: Sown) -> seeds: Seeds = sown.seeds_for(area).looked_at()?;
    }
}
