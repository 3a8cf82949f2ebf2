//! What goes in the tank, and what do I open?

use hilum::mix::{HoldUp, Slurry, Water, pour, total_liquid, weigh};
use hilum::pack::{Coverage, SetsNeeded};
use hilum::quantity::{Mass, Measure, Volume, VolumePerMass};
use hilum::rate::{Density, PerMass, RatePerMass, Substance};
use hilum::seed::Share;

use crate::refusal::{Blame, Refusal, Refused, positive};
use crate::slots::Slots;

super::calculators! {
    slots =>
    mix {
        /// The share of a product in a mix that is made up with water: rate / volume made up to.
        share(rate: RatePerMass, make_up_to: RatePerMass) -> share: Share =
            Slurry::of([rate], Water::UpTo(make_up_to)).of(slots, 1)?.share(rate).of(slots, 0)?;
        /// The water of a mix that is made up to a volume: volume made up to − rate.
        water(rate: RatePerMass, make_up_to: RatePerMass) -> water: VolumePerMass =
            Slurry::of([rate], Water::UpTo(make_up_to)).of(slots, 1)?.water();
        /// The water of a mix to which so much is added.
        water(rate: RatePerMass, plus: RatePerMass) -> water: VolumePerMass =
            Slurry::of([rate], Water::Plus(plus)).looked_at()?.water();
        /// The share of water in a mix that is made up to a volume: (volume made up to − rate) / volume made up to.
        water_share(rate: RatePerMass, make_up_to: RatePerMass) -> share: Share =
            Slurry::of([rate], Water::UpTo(make_up_to)).of(slots, 1)?.water_share();
        /// The share of water in a mix to which so much is added: water / (rate + water).
        water_share(rate: RatePerMass, plus: RatePerMass) -> share: Share =
            Slurry::of([rate], Water::Plus(plus)).looked_at()?.water_share();
        /// The seed that a volume of mix treats: volume / slurry rate.
        treats(volume: Volume, slurry: RatePerMass) -> mass: Mass = alone(slurry)?.treats(volume).looked_at()?;
        /// The seed that a volume of mix treats, when empty lines are filled first: (volume − hold-up) / slurry rate.
        treats(volume: Volume, slurry: RatePerMass, hold_up: HoldUp) -> mass: Mass =
            hold_up.treats(alone(slurry)?, volume).of(slots, 0)?;
        /// The mix that a mass of seed takes up: mass × slurry rate.
        fill(slurry: RatePerMass, mass: Mass) -> volume: Volume = alone(slurry)?.fill(mass).looked_at()?;
        /// The mix for a mass of seed, when empty lines are filled first: mass × slurry rate + hold-up.
        fill(slurry: RatePerMass, mass: Mass, hold_up: HoldUp) -> volume: Volume =
            hold_up.mixed(alone(slurry)?, mass).looked_at()?;
        /// All liquid that lands on the seed, of two products or tanks: first + second.
        total_liquid(first: RatePerMass, second: RatePerMass) -> rate: RatePerMass =
            total_liquid([first, second]).looked_at()?;
        /// What to pour of a product into a mix: share × volume.
        pour(share: Share, volume: Volume) -> volume: Volume = pour(share, volume).looked_at()?;
        /// What a volume weighs: volume × density.
        weigh(volume: Volume, density: Density) -> mass: Mass = {
            // Of a mix that is nothing there is nothing to weigh.
            positive(slots, 0, volume.to_base())?;
            weigh(volume, density).looked_at()?
        };
    }
    pack {
        /// Whole sets to open for a mass of seed: need / what one set covers, rounded up.
        sets(need: Mass, covers: Mass) -> sets: f64 = {
            let set = Coverage::new(covers).looked_at()?;
            counted(slots, SetsNeeded::sum([(need, set)]).looked_at()?.whole().of(slots, 0)?)?
        };
        /// The seed that one set covers: usable amount / rate.
        coverage[S](usable: <S as Substance>::Amount, rate: PerMass<S>) -> covers: Mass =
            Coverage::at(usable, rate).looked_at()?.get();
    }
}

fn alone(slurry: RatePerMass) -> Result<Slurry, Refused> {
    Slurry::of([slurry], Water::None).looked_at()
}

fn counted(slots: &Slots, sets: u64) -> Result<f64, Refused> {
    let refused = |_| slots.refuse(0, Refusal::not_a_count(f64::INFINITY));
    u32::try_from(sets).map(f64::from).map_err(refused)
}
