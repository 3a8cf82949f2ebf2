//! From what a calculation gives to a number, and what it measures.

use hilum::quantity::{self, Measure, VolumePerMass};
#[cfg(feature = "describe")]
use hilum::rate::{Dry, Liquid, PerMass};
use hilum::seed::{SeedSize, Share, Sown};
use hilum::treater::{Flow, SeedFlow, Setting};
use hilum::viability::{DecimalReduction, TitrePerMass, TitrePerVolume};

use crate::slots::Slots;
#[cfg(feature = "describe")]
use crate::take::{AnyTitre, Kind, Take};
use crate::value::{Of, Value};

/// What a calculation gives.
pub(crate) trait Give: Sized {
    /// What it may be.
    #[cfg(feature = "describe")]
    const KINDS: &'static [Kind];
    /// In base units.
    fn give(self, slots: &Slots) -> f64;
}

/// A quantity as a slot.
pub(crate) fn slot<Q: Measure>(quantity: Q) -> Value {
    Value { number: quantity.to_base(), of: Of::powers(Q::POWERS) }
}

macro_rules! plain {
    ($($name:ident)+) => {$(
        impl Give for quantity::$name {
            #[cfg(feature = "describe")]
            const KINDS: &'static [Kind] = <Self as Take>::KINDS;
            fn give(self, _: &Slots) -> f64 {
                self.to_base()
            }
        }
    )+};
}
plain! { Mass Volume Time Seeds MassPerArea MassPerSeed Area SeedsPerArea }

macro_rules! domain {
    ($($name:ident $quantity:ident)+) => {$(
        impl Give for $name {
            #[cfg(feature = "describe")]
            const KINDS: &'static [Kind] = <Self as Take>::KINDS;
            fn give(self, _: &Slots) -> f64 {
                self.get().to_base()
            }
        }
    )+};
}
domain! {
    SeedSize SeedsPerMass
    Share Ratio
    Sown SeedsPerArea
    Flow VolumeFlow
    SeedFlow MassFlow
    DecimalReduction Time
    TitrePerVolume CellsPerVolume
    TitrePerMass CellsPerMass
}

impl Give for f64 {
    #[cfg(feature = "describe")]
    const KINDS: &'static [Kind] = &[];
    fn give(self, _: &Slots) -> f64 {
        self
    }
}

impl Give for Setting {
    #[cfg(feature = "describe")]
    const KINDS: &'static [Kind] = &[];
    fn give(self, _: &Slots) -> f64 {
        self.number()
    }
}

/// As it came: what is converted.
impl Give for Value {
    #[cfg(feature = "describe")]
    const KINDS: &'static [Kind] = <Self as Take>::KINDS;
    fn give(self, slots: &Slots) -> f64 {
        slots.say(self)
    }
}

/// Liquid per mass of seed, water too: there may be none.
impl Give for VolumePerMass {
    #[cfg(feature = "describe")]
    const KINDS: &'static [Kind] = <PerMass<Liquid> as Take>::KINDS;
    fn give(self, _: &Slots) -> f64 {
        self.to_base()
    }
}

/// The uncertainty of a rate by mass.
impl Give for quantity::Ratio {
    #[cfg(feature = "describe")]
    const KINDS: &'static [Kind] = <PerMass<Dry> as Take>::KINDS;
    fn give(self, _: &Slots) -> f64 {
        self.to_base()
    }
}

/// One of several, told apart by its dimension.
macro_rules! any {
    ($($(#[$doc:meta])* $name:ident $kinds:expr;)+) => {$(
        $(#[$doc])*
        pub(crate) struct $name(pub(crate) Value);
        impl Give for $name {
            #[cfg(feature = "describe")]
            #[allow(clippy::indexing_slicing, reason = "a constant: what is out of bounds does not compile")]
            const KINDS: &'static [Kind] = $kinds;
            fn give(self, slots: &Slots) -> f64 {
                slots.say(self.0)
            }
        }
    )+};
}

any! {
    /// A dose of a product by volume or by mass.
    SomeRate &[<PerMass<Liquid> as Take>::KINDS[0], <PerMass<Dry> as Take>::KINDS[0]];
    /// A titre per volume or per mass.
    SomeTitre <AnyTitre as Take>::KINDS;
    /// What an entry of the data dictionary carries.
    FromTheBus crate::take::ON_THE_BUS;
}
