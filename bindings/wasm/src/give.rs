//! From what a calculation gives to a slot.

use hilum::quantity::{self, Measure, VolumePerMass};
#[cfg(feature = "describe")]
use hilum::rate::{Dry, Liquid, PerMass};
use hilum::seed::{SeedSize, Share, Sown};
use hilum::treater::{Flow, SeedFlow, Setting};
use hilum::viability::{DecimalReduction, TitrePerMass, TitrePerVolume};

use crate::slot::Slot;
#[cfg(feature = "describe")]
use crate::take::{AnyTitre, Kind, Take};

/// What a calculation gives.
pub(crate) trait Give {
    /// What it may be.
    #[cfg(feature = "describe")]
    const KINDS: &'static [Kind];
    fn give(self) -> Slot;
}

/// Any quantity as a slot.
pub(crate) trait GiveQuantity {
    fn give_quantity(self) -> Slot;
}
impl<Q: Measure> GiveQuantity for Q {
    fn give_quantity(self) -> Slot {
        Slot::Quantity(self.to_base(), Q::POWERS)
    }
}

macro_rules! plain {
    ($($name:ident)+) => {$(
        impl Give for quantity::$name {
            #[cfg(feature = "describe")]
            const KINDS: &'static [Kind] = <Self as Take>::KINDS;
            fn give(self) -> Slot {
                self.give_quantity()
            }
        }
    )+};
}
plain! { Mass Volume Time Seeds MassPerArea MassPerSeed Area SeedsPerArea }

macro_rules! domain {
    ($($name:ident)+) => {$(
        impl Give for $name {
            #[cfg(feature = "describe")]
            const KINDS: &'static [Kind] = <Self as Take>::KINDS;
            fn give(self) -> Slot {
                self.get().give_quantity()
            }
        }
    )+};
}
domain! { SeedSize Share Sown Flow SeedFlow DecimalReduction TitrePerVolume TitrePerMass }

impl Give for f64 {
    #[cfg(feature = "describe")]
    const KINDS: &'static [Kind] = &[];
    fn give(self) -> Slot {
        Slot::Number(self)
    }
}

impl Give for Setting {
    #[cfg(feature = "describe")]
    const KINDS: &'static [Kind] = &[];
    fn give(self) -> Slot {
        Slot::Number(self.number())
    }
}

/// As it came: what is converted.
impl Give for Slot {
    #[cfg(feature = "describe")]
    const KINDS: &'static [Kind] = <Self as Take>::KINDS;
    fn give(self) -> Slot {
        self
    }
}

/// Liquid per mass of seed, water too: there may be none.
impl Give for VolumePerMass {
    #[cfg(feature = "describe")]
    const KINDS: &'static [Kind] = <PerMass<Liquid> as Take>::KINDS;
    fn give(self) -> Slot {
        self.give_quantity()
    }
}

/// The uncertainty of a rate by mass.
impl Give for quantity::Ratio {
    #[cfg(feature = "describe")]
    const KINDS: &'static [Kind] = <PerMass<Dry> as Take>::KINDS;
    fn give(self) -> Slot {
        self.give_quantity()
    }
}

/// One of several, told apart by its dimension.
macro_rules! any {
    ($($(#[$doc:meta])* $name:ident $kinds:expr;)+) => {$(
        $(#[$doc])*
        pub(crate) struct $name(pub(crate) Slot);
        impl Give for $name {
            #[cfg(feature = "describe")]
            #[allow(clippy::indexing_slicing, reason = "a constant: what is out of bounds does not compile")]
            const KINDS: &'static [Kind] = $kinds;
            fn give(self) -> Slot {
                self.0
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
