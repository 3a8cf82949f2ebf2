//! Which numbers mean what: the entries that a treater needs.

use core::marker::PhantomData;

use super::{Carried, Entry, Row};
use crate::quantity::{
    Area, Mass, MassFlow, MassPerArea, MassPerSeed, MassPerVolume, Ratio, Seeds, SeedsPerArea, Temperature,
    Volume, VolumeFlow, VolumePerArea, VolumePerMass, VolumePerSeed,
};

/// The entries of one quantity that an implement can be set to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Controlled<Q> {
    /// What is wanted.
    pub setpoint: Entry<Q>,
    /// What is.
    pub actual: Entry<Q>,
    /// What is taken when nothing is wanted.
    pub default: Entry<Q>,
    /// The least that can be set.
    pub minimum: Entry<Q>,
    /// The most that can be set.
    pub maximum: Entry<Q>,
}

impl<Q: Carried> Controlled<Q> {
    /// Five numbers in a row: setpoint, actual, default, minimum, maximum.
    const fn from(first: u16, steps: f64) -> Self {
        Self {
            setpoint: Entry::new(first, steps),
            actual: Entry::new(first + 1, steps),
            default: Entry::new(first + 2, steps),
            minimum: Entry::new(first + 3, steps),
            maximum: Entry::new(first + 4, steps),
        }
    }

    const fn span(self) -> Span {
        Span { first: self.setpoint.row, many: 5 }
    }
}

/// The entries of what a bin or tank holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Held<Q> {
    /// What it is to hold.
    pub setpoint: Entry<Q>,
    /// What it holds.
    pub actual: Entry<Q>,
    /// The most that it can hold.
    pub maximum: Entry<Q>,
}

impl<Q: Carried> Held<Q> {
    /// Three numbers in a row.
    const fn from(first: u16, steps: f64) -> Self {
        Self {
            setpoint: Entry::new(first, steps),
            actual: Entry::new(first + 1, steps),
            maximum: Entry::new(first + 2, steps),
        }
    }

    const fn span(self) -> Span {
        Span { first: self.setpoint.row, many: 3 }
    }
}

/// Volume per area, 1 to 5: 0.01 mm³/m².
pub const VOLUME_PER_AREA: Controlled<VolumePerArea> = Controlled::from(1, 1e11);
/// Mass per area, 6 to 10: 1 mg/m².
pub const MASS_PER_AREA: Controlled<MassPerArea> = Controlled::from(6, 1e6);
/// Seeds per area, 11 to 15: 0.001 per m².
pub const SEEDS_PER_AREA: Controlled<SeedsPerArea> = Controlled::from(11, 1e3);
/// Mass per mass, 26 to 30: 1 mg/kg. A dry dose, or active ingredient, per mass of seed.
pub const MASS_PER_MASS: Controlled<Ratio> = Controlled::from(26, 1e6);
/// Volume per mass, 31 to 35: 1 mm³/kg. The slurry's rate.
pub const VOLUME_PER_MASS: Controlled<VolumePerMass> = Controlled::from(31, 1e9);
/// Volume per time, 36 to 40: 1 mm³/s. The pump's flow.
pub const VOLUME_FLOW: Controlled<VolumeFlow> = Controlled::from(36, 1e9);
/// Mass per time, 41 to 45: 1 mg/s. The flow of seed.
pub const MASS_FLOW: Controlled<MassFlow> = Controlled::from(41, 1e6);
/// Temperature, 578 to 582: 1 mK. Minimum and maximum come before the default here.
pub const TEMPERATURE: Controlled<Temperature> = Controlled {
    setpoint: millikelvin(578),
    actual: millikelvin(579),
    minimum: millikelvin(580),
    maximum: millikelvin(581),
    default: millikelvin(582),
};
/// Ambient temperature, 192: 1 mK.
pub const AMBIENT_TEMPERATURE: Entry<Temperature> = millikelvin(192);
/// Volume in a tank, 71 to 73: 1 mL.
pub const VOLUME_HELD: Held<Volume> = Held::from(71, 1e6);
/// Mass in a bin, 74 to 76: 1 g.
pub const MASS_HELD: Held<Mass> = Held::from(74, 1e3);
/// Seeds in a bin, 77 to 79: one by one.
pub const SEEDS_HELD: Held<Seeds> = Held::from(77, 1.0);
/// Total volume applied, 80: 1 L.
pub const TOTAL_VOLUME: Entry<Volume> = Entry::new(80, 1e3);
/// Total mass applied, 81: 1 kg.
pub const TOTAL_MASS: Entry<Mass> = Entry::new(81, 1.0);
/// Total seeds applied, 82: one by one.
pub const TOTAL_SEEDS: Entry<Seeds> = Entry::new(82, 1.0);
/// Total area, 116: 1 m².
pub const TOTAL_AREA: Entry<Area> = Entry::new(116, 1.0);
/// Density, 121: 1 mg/L.
pub const DENSITY: Entry<MassPerVolume> = Entry::new(121, 1e3);
/// Seed size as the mass of a thousand seeds, 122: 1 mg per 1000.
pub const THOUSAND_SEED_MASS: Entry<MassPerSeed> = Entry::new(122, 1e9);
/// Volume of a thousand seeds, 123: 1 mL per 1000.
pub const THOUSAND_SEED_VOLUME: Entry<VolumePerSeed> = Entry::new(123, 1e9);
/// A share that is wanted, 140: 1 ppm.
pub const SETPOINT_SHARE: Entry<Ratio> = Entry::new(140, 1e6);
/// A share that is, 308: 1 ppm.
pub const ACTUAL_SHARE: Entry<Ratio> = Entry::new(308, 1e6);

/// A temperature in thousandths of a kelvin, up to 1000 K; 0 °C is 273 150.
const fn millikelvin(number: u16) -> Entry<Temperature> {
    let kelvin = Entry::<Temperature>::new(number, 1e3);
    Entry { row: Row { zero: 273_150.0, most: 1_000_000, ..kelvin.row }, quantity: PhantomData }
}

/// Rows whose numbers follow each other and which carry the same: a row each would be 2 kB of a controller's flash.
#[derive(Clone, Copy)]
pub(super) struct Span {
    first: Row,
    many: u16,
}

impl Span {
    /// The row of a number in this span.
    pub(super) fn row(self, number: u16) -> Option<Row> {
        let place = number.checked_sub(self.first.number)?;
        (place < self.many).then_some(Row { number, ..self.first })
    }
}

const fn one<Q>(entry: Entry<Q>) -> Span {
    Span { first: entry.row, many: 1 }
}

/// All of them.
pub(super) const TABLE: &[Span] = &[
    VOLUME_PER_AREA.span(),
    MASS_PER_AREA.span(),
    SEEDS_PER_AREA.span(),
    MASS_PER_MASS.span(),
    VOLUME_PER_MASS.span(),
    VOLUME_FLOW.span(),
    MASS_FLOW.span(),
    TEMPERATURE.span(),
    VOLUME_HELD.span(),
    MASS_HELD.span(),
    SEEDS_HELD.span(),
    one(AMBIENT_TEMPERATURE),
    one(TOTAL_VOLUME),
    one(TOTAL_MASS),
    one(TOTAL_SEEDS),
    one(TOTAL_AREA),
    one(DENSITY),
    one(THOUSAND_SEED_MASS),
    one(THOUSAND_SEED_VOLUME),
    one(SETPOINT_SHARE),
    one(ACTUAL_SHARE),
];
