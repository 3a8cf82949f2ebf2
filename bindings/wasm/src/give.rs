//! From what a calculation gives to a slot.

use hilum::quantity::{self, Measure};
use hilum::seed::{SeedSize, Share, Sown};
use hilum::treater::{Flow, SeedFlow, Setting};

use crate::slot::Slot;
#[cfg(feature = "describe")]
use crate::take::{Kind, Take};

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
plain! { Mass Volume Time Seeds MassPerArea Area SeedsPerArea }

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
domain! { SeedSize Share Sown Flow SeedFlow }

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
