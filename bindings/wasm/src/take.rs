//! From a slot to what a calculation takes.

use hilum::Error;
use hilum::account;
use hilum::math;
use hilum::mix::HoldUp;
use hilum::quantity::{self, Mass, Measure, Temperature};
use hilum::rate::{
    Active, ActiveContent, CellCount, Content, Density, Dry, Liquid, PerArea, PerMass, PerSeed, Substance,
};
use hilum::seed::{Bushel, SeedSize, SeedUnit, Share, Sown, UnitOfMass, UnitOfSeeds};
use hilum::treater::{Flow, SeedFlow, Setting};
use hilum::unit::Powers;
use hilum::viability::{DecimalReduction, TitrePerMass, TitrePerVolume, WeibullScale, WeibullShape};

use crate::give::Give;
use crate::refusal::{Refusal, Refused};
use crate::slots::Slots;
use crate::value::{Of, Value};

mod wanted;
pub(crate) use wanted::{Check, Wanted};

/// A kind of value: what its units are, for documentation and for what comes out.
#[cfg(feature = "describe")]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Kind {
    /// What it is, in words.
    pub words: &'static str,
    /// The unit by default; none for a plain number.
    pub metric: &'static str,
    /// The unit where customary ones are wanted.
    pub us: &'static str,
    /// The unit of `hilum/numbers`.
    pub base: &'static str,
}

#[cfg(feature = "describe")]
macro_rules! kind {
    ($words:literal $metric:literal $us:literal $base:literal) => {
        Kind { words: $words, metric: $metric, us: $us, base: $base }
    };
}
macro_rules! kinds {
    ($($words:literal $metric:literal $us:literal $base:literal),+) => {
        #[cfg(feature = "describe")]
        const KINDS: &'static [Kind] = &[$(kind!($words $metric $us $base)),+];
    };
}

/// What a calculation takes.
pub(crate) trait Take: Sized {
    /// What may be written; the first is what a number of base units stands for.
    #[cfg(feature = "describe")]
    const KINDS: &'static [Kind];
    /// What is looked at before.
    const WANTED: Wanted;
    /// Out of a number that was looked at.
    fn make(slots: &Slots, field: usize, base: f64) -> Result<Self, Refused>;
}

/// An input that was looked at with the others.
#[inline(always)]
pub(crate) fn next<T: Take>(slots: &Slots, field: &mut usize) -> Result<T, Refused> {
    let at = *field;
    *field = at.saturating_add(1);
    let base = slots.base(at);
    #[cfg(feature = "text")]
    // SAFETY: the script calls no calculation with numbers that [`crate::text::looked`] refuses.
    unsafe {
        core::hint::assert_unchecked(T::WANTED.check.passes(base));
    }
    T::make(slots, at, base)
}

/// An input as it is looked at only when the others are known.
pub(crate) fn take<T: Take>(slots: &Slots, field: usize) -> Result<T, Refused> {
    T::make(slots, field, slots.checked(field, T::WANTED)?)
}

/// A domain type out of a number that its own check was asked about before.
#[cfg(feature = "text")]
#[inline(always)]
fn made<T>(made: Result<T, Error>) -> Result<T, Refused> {
    match made {
        Ok(made) => Ok(made),
        Err(_) => crate::never(),
    }
}

/// A domain type, whose own check is asked; the script asks for the reason.
#[cfg(not(feature = "text"))]
#[inline(always)]
fn made<T>(made: Result<T, Error>) -> Result<T, Refused> {
    made.map_err(|_| Refused)
}

/// What is dosed, and what its doses are called.
pub(crate) trait Dosed: Substance<PerMass: Measure, PerSeed: Measure, PerArea: Measure> {
    #[cfg(feature = "describe")]
    const PER_MASS: &'static [Kind];
    #[cfg(feature = "describe")]
    const PER_SEED: &'static [Kind];
    #[cfg(feature = "describe")]
    const PER_AREA: &'static [Kind];
}

/// A product: measured by volume or by mass.
pub(crate) trait Product:
    Dosed + Substance<Amount: Take + Give + Measure + account::Quantity<Product = Self>, PerMass: Give>
{
    /// How its living cells are stated.
    type Titre: Take + Give;

    /// The titre that a dose needs to put so many living cells on one seed.
    fn titre_for(
        dose: PerSeed<Self>,
        cells: PerSeed<CellCount>,
        recovery: Share,
    ) -> Result<Self::Titre, Error>;

    /// Living cells that a dose puts on one seed.
    fn cells(titre: Self::Titre, dose: PerSeed<Self>, recovery: Share) -> PerSeed<CellCount>;

    /// The dose that puts so many living cells on one seed.
    fn dose_for(
        titre: Self::Titre,
        cells: PerSeed<CellCount>,
        recovery: Share,
    ) -> Result<PerSeed<Self>, Error>;

    /// The active ingredient in a dose of it.
    fn active(
        rate: PerMass<Self>,
        content: Content,
        density: Option<Density>,
    ) -> Result<PerMass<Active>, Error>;
}

impl Product for Liquid {
    type Titre = TitrePerVolume;

    fn titre_for(
        dose: PerSeed<Self>,
        cells: PerSeed<CellCount>,
        recovery: Share,
    ) -> Result<TitrePerVolume, Error> {
        TitrePerVolume::needed(cells, dose, recovery)
    }

    fn cells(titre: TitrePerVolume, dose: PerSeed<Self>, recovery: Share) -> PerSeed<CellCount> {
        titre.cells(dose, recovery)
    }

    fn dose_for(
        titre: TitrePerVolume,
        cells: PerSeed<CellCount>,
        recovery: Share,
    ) -> Result<PerSeed<Self>, Error> {
        titre.dose_for(cells, recovery)
    }

    fn active(
        rate: PerMass<Self>,
        content: Content,
        density: Option<Density>,
    ) -> Result<PerMass<Active>, Error> {
        Ok(rate.active(content.per_volume(density)?))
    }
}

impl Product for Dry {
    type Titre = TitrePerMass;

    fn titre_for(
        dose: PerSeed<Self>,
        cells: PerSeed<CellCount>,
        recovery: Share,
    ) -> Result<TitrePerMass, Error> {
        TitrePerMass::needed(cells, dose, recovery)
    }

    fn cells(titre: TitrePerMass, dose: PerSeed<Self>, recovery: Share) -> PerSeed<CellCount> {
        titre.cells(dose, recovery)
    }

    fn dose_for(
        titre: TitrePerMass,
        cells: PerSeed<CellCount>,
        recovery: Share,
    ) -> Result<PerSeed<Self>, Error> {
        titre.dose_for(cells, recovery)
    }

    fn active(
        rate: PerMass<Self>,
        content: Content,
        density: Option<Density>,
    ) -> Result<PerMass<Active>, Error> {
        rate.active(content.by_mass(density)?)
    }
}

macro_rules! dosed {
    ($($name:ident: [$($mass:literal)+] [$($seed:literal)+] [$($area:literal)+];)+) => {$(
        impl Dosed for $name {
            #[cfg(feature = "describe")]
            const PER_MASS: &'static [Kind] = &[kind!($($mass)+)];
            #[cfg(feature = "describe")]
            const PER_SEED: &'static [Kind] = &[kind!($($seed)+)];
            #[cfg(feature = "describe")]
            const PER_AREA: &'static [Kind] = &[kind!($($area)+)];
        }
    )+};
}

dosed! {
    Liquid: ["volume per mass of seed" "mL/100 kg" "fl oz/cwt" "m3/kg"]
        ["volume per seed" "µL/seed" "µL/seed" "m3/seed"] ["volume per area" "mL/ha" "fl oz/ac" "m3/m2"];
    Dry: ["mass per mass of seed" "g/100 kg" "oz av/cwt" "kg/kg"]
        ["mass per seed" "mg/seed" "mg/seed" "kg/seed"] ["mass per area" "g/ha" "oz av/ac" "kg/m2"];
    Active: ["mass of active per mass of seed" "mg/kg" "mg/kg" "kg/kg"]
        ["mass of active per seed" "mg/seed" "mg/seed" "kg/seed"]
        ["mass of active per area" "g/ha" "lb/ac" "kg/m2"];
    CellCount: ["cells per mass of seed" "CFU/kg" "CFU/kg" "CFU/kg"]
        ["cells per seed" "CFU/seed" "CFU/seed" "CFU/seed"] ["cells per area" "CFU/ha" "CFU/ac" "CFU/m2"];
}

macro_rules! dose {
    ($($name:ident $kinds:ident;)+) => {$(
        impl<S: Dosed> Take for $name<S> {
            #[cfg(feature = "describe")]
            const KINDS: &'static [Kind] = S::$kinds;
            const WANTED: Wanted = Wanted::of(S::$name::POWERS, Check::Positive);
            fn make(_: &Slots, _: usize, base: f64) -> Result<Self, Refused> {
                made($name::new(S::$name::from_base(base)))
            }
        }
        impl<S: Dosed> Give for $name<S> {
            #[cfg(feature = "describe")]
            const KINDS: &'static [Kind] = S::$kinds;
            fn give(self, _: &Slots) -> f64 {
                self.get().to_base()
            }
        }
    )+};
}
dose! { PerMass PER_MASS; PerSeed PER_SEED; PerArea PER_AREA; }

/// Plain quantities: the calculation looks at them too.
macro_rules! plain {
    ($($name:ident $check:ident $words:literal $metric:literal $us:literal $base:literal;)+) => {$(
        impl Take for quantity::$name {
            kinds!($words $metric $us $base);
            const WANTED: Wanted = Wanted::of(<Self as Measure>::POWERS, Check::$check);
            fn make(_: &Slots, _: usize, base: f64) -> Result<Self, Refused> {
                Ok(Self::from_base(base))
            }
        }
    )+};
}

plain! {
    Mass Positive "mass" "kg" "lb" "kg";
    Volume Positive "volume" "L" "fl oz" "m3";
    Time NotNegative "time" "h" "h" "s";
    Seeds Positive "number of seeds" "seeds" "seeds" "seeds";
    MassPerArea NotNegative "mass per area" "kg/ha" "lb/ac" "kg/m2";
    Area Positive "area" "ha" "ac" "m2";
    MassPerSeed Positive "mass per seed" "mg/seed" "mg/seed" "kg/seed";
    SeedsPerArea Positive "seeds per area" "seeds/ha" "seeds/ac" "seeds/m2";
    TemperatureDifference Positive "temperature difference" "K" "delta_degF" "K";
}

/// Domain types, whose constructors look once more.
macro_rules! domain {
    ($($name:ident $quantity:ident $check:ident $words:literal $metric:literal $us:literal $base:literal;)+) => {$(
        impl Take for $name {
            kinds!($words $metric $us $base);
            const WANTED: Wanted =
                Wanted::of(<quantity::$quantity as Measure>::POWERS, Check::$check);
            fn make(_: &Slots, _: usize, base: f64) -> Result<Self, Refused> {
                made($name::new(quantity::$quantity::from_base(base)))
            }
        }
    )+};
}

domain! {
    SeedSize SeedsPerMass Positive "seeds per mass" "seeds/kg" "seeds/lb" "seeds/kg";
    Share Ratio Share "share" "%" "%" "1";
    Sown SeedsPerArea Positive "seeds per area" "seeds/ha" "seeds/ac" "seeds/m2";
    UnitOfSeeds Seeds Positive "number of seeds" "seeds" "seeds" "seeds";
    Bushel Mass Positive "mass" "kg" "lb" "kg";
    HoldUp Volume NotNegative "volume" "L" "fl oz" "m3";
    Density MassPerVolume Positive "mass per volume" "kg/L" "lb/gal" "kg/m3";
    ActiveContent MassPerVolume Positive "mass per volume" "g/L" "lb/gal" "kg/m3";
    SeedFlow MassFlow Positive "mass per time" "kg/min" "lb/min" "kg/s";
    Flow VolumeFlow Positive "volume per time" "mL/min" "fl oz/min" "m3/s";
    TitrePerVolume CellsPerVolume Positive "cells per volume" "CFU/mL" "CFU/mL" "CFU/m3";
    TitrePerMass CellsPerMass Positive "cells per mass" "CFU/g" "CFU/g" "CFU/kg";
    DecimalReduction Time Positive "time" "d" "d" "s";
    WeibullScale Time Positive "time" "d" "d" "s";
    WeibullShape Ratio Positive "number" "" "" "";
}

impl Take for Setting {
    kinds!("number" "" "" "");
    const WANTED: Wanted = Wanted::of(quantity::ratio::POWERS, Check::NotNegative);
    fn make(_: &Slots, _: usize, base: f64) -> Result<Self, Refused> {
        made(Self::new(base))
    }
}

/// A whole number of things.
impl Take for u32 {
    kinds!("whole number" "" "" "");
    const WANTED: Wanted = Wanted::of(quantity::ratio::POWERS, Check::NotNegative);
    fn make(slots: &Slots, field: usize, base: f64) -> Result<Self, Refused> {
        let whole = math::to_u64(base).and_then(|whole| Self::try_from(whole).ok());
        whole.ok_or_else(|| slots.refuse(field, Refusal::not_a_count(base)))
    }
}

impl Take for Temperature {
    kinds!("temperature" "degC" "degF" "degC");
    const WANTED: Wanted = Wanted::TEMPERATURE;
    fn make(_: &Slots, _: usize, base: f64) -> Result<Self, Refused> {
        Ok(Self::from_celsius(base))
    }
}

/// Either of two, told apart by what was written.
fn is(slots: &Slots, field: usize, of: Powers) -> bool {
    slots.get(field).of == Of::powers(of)
}

impl Take for SeedUnit {
    kinds!("number of seeds" "seeds" "seeds" "seeds", "mass" "kg" "lb" "kg");
    const WANTED: Wanted = Wanted::LATER;
    fn make(slots: &Slots, field: usize, _: f64) -> Result<Self, Refused> {
        if is(slots, field, quantity::mass::POWERS) {
            let mass: Mass = take(slots, field)?;
            made(UnitOfMass::new(mass)).map(Self::Mass)
        } else {
            take(slots, field).map(Self::Count)
        }
    }
}

impl Take for Content {
    kinds!("mass per volume" "g/L" "lb/gal" "kg/m3", "share" "%" "%" "1");
    const WANTED: Wanted = Wanted::LATER;
    fn make(slots: &Slots, field: usize, _: f64) -> Result<Self, Refused> {
        if is(slots, field, quantity::ratio::POWERS) {
            take(slots, field).map(Self::ByMass)
        } else {
            take(slots, field).map(Self::PerVolume)
        }
    }
}

/// What a gauge shows of a product: there may be none.
pub(crate) struct Shown<S: Product>(pub(crate) S::Amount);
impl<S: Product> Take for Shown<S> {
    #[cfg(feature = "describe")]
    const KINDS: &'static [Kind] = <S::Amount as Take>::KINDS;
    const WANTED: Wanted = Wanted::of(<S::Amount as Measure>::POWERS, Check::NotNegative);
    fn make(_: &Slots, _: usize, base: f64) -> Result<Self, Refused> {
        Ok(Self(S::Amount::from_base(base)))
    }
}

/// Seed on a scale: there may be none.
pub(crate) struct Weighed(pub(crate) Mass);
impl Take for Weighed {
    kinds!("mass" "kg" "lb" "kg");
    const WANTED: Wanted = Wanted::of(<Mass as Measure>::POWERS, Check::NotNegative);
    fn make(_: &Slots, _: usize, base: f64) -> Result<Self, Refused> {
        Ok(Self(Mass::from_base(base)))
    }
}

/// A plain number.
impl Take for f64 {
    kinds!("number" "" "" "");
    const WANTED: Wanted = Wanted::of(quantity::ratio::POWERS, Check::Positive);
    fn make(_: &Slots, _: usize, base: f64) -> Result<Self, Refused> {
        Ok(base)
    }
}

/// A whole number from the bus, of either sign.
impl Take for i32 {
    kinds!("whole number" "" "" "");
    const WANTED: Wanted = Wanted::LATER;
    fn make(slots: &Slots, field: usize, _: f64) -> Result<Self, Refused> {
        let number = slots.base(field);
        math::to_i32(number).ok_or_else(|| slots.refuse(field, Refusal::not_a_count(number)))
    }
}

/// What may be one of several, which the calculation itself takes by its place.
macro_rules! any {
    ($($(#[$doc:meta])* $name:ident [$($kind:tt)+];)+) => {$(
        $(#[$doc])*
        pub(crate) struct $name;
        impl Take for $name {
            kinds!($($kind)+);
            const WANTED: Wanted = Wanted::LATER;
            fn make(_: &Slots, _: usize, _: f64) -> Result<Self, Refused> {
                Ok(Self)
            }
        }
    )+};
}

any! {
    /// A titre, per volume or per mass.
    AnyTitre ["cells per volume" "CFU/mL" "CFU/mL" "CFU/m3", "cells per mass" "CFU/g" "CFU/g" "CFU/kg"];
    /// A volume or a mass.
    AnyAmount ["volume" "L" "fl oz" "m3", "mass" "kg" "lb" "kg"];
    /// What an entry of the data dictionary carries.
    Carried ["quantity that the entry carries" "mL" "fl oz" "base units"];
}

/// Anything that has a unit.
impl Take for Value {
    kinds!("quantity" "" "" "");
    const WANTED: Wanted = Wanted::LATER;
    fn make(slots: &Slots, field: usize, _: f64) -> Result<Self, Refused> {
        Ok(slots.get(field))
    }
}

/// The units of what the data dictionary carries.
#[cfg(feature = "describe")]
pub(crate) const ON_THE_BUS: &[Kind] = &[
    kind!("liquid per mass of seed" "mL/100 kg" "fl oz/cwt" "m3/kg"),
    kind!("volume" "L" "fl oz" "m3"),
    kind!("volume per time" "mL/min" "fl oz/min" "m3/s"),
    kind!("volume per area" "mL/ha" "fl oz/ac" "m3/m2"),
    kind!("mass" "kg" "lb" "kg"),
    kind!("mass per mass" "g/100 kg" "oz av/cwt" "kg/kg"),
    kind!("mass per time" "kg/min" "lb/min" "kg/s"),
    kind!("mass per area" "kg/ha" "lb/ac" "kg/m2"),
    kind!("mass per seed" "mg/seed" "mg/seed" "kg/seed"),
    kind!("mass per volume" "kg/L" "lb/gal" "kg/m3"),
    kind!("number of seeds" "seeds" "seeds" "seeds"),
    kind!("seeds per area" "seeds/ha" "seeds/ac" "seeds/m2"),
    kind!("area" "ha" "ac" "m2"),
    kind!("time" "s" "s" "s"),
    kind!("temperature" "degC" "degF" "degC"),
];
