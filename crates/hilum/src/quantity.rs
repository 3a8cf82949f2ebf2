//! The trade's quantities, and the one table of its units.
//!
//! Six base quantities (length, mass, time, temperature difference, **seeds**, **cells**), so a dose
//! per seed and a dose per pound are different types:
//!
//! ```
//! use hilum::quantity::{Mass, Volume, VolumePerMass, mass::pound, volume::fluid_ounce};
//!
//! let label: VolumePerMass = Volume::new::<fluid_ounce>(2.5) / Mass::new::<pound>(100.0);
//! let tank: Volume = label * Mass::new::<pound>(30_000.0);
//! assert!((tank.get::<fluid_ounce>() - 750.0).abs() < 1e-9);
//! ```
//!
//! ```compile_fail,E0308
//! use hilum::quantity::{Seeds, Volume, VolumePerMass, seeds::seed, volume::fluid_ounce};
//! let label: VolumePerMass = Volume::new::<fluid_ounce>(1.2) / Seeds::new::<seed>(140_000.0);
//! ```
//!
//! Compound units are not in the table: `fl oz/cwt` is a volume over a mass, here and in text.
// uom's macros make undocumented items; one `expect` here instead of a doc line per unit.
#![expect(missing_docs, reason = "uom's macros write the items; each module's table is the documentation")]

/// A quantity from a number in base units.
macro_rules! base {
    ($quantity:ident, $value:expr) => {
        $quantity { dimension: core::marker::PhantomData, units: core::marker::PhantomData, value: $value }
    };
}
pub(crate) use base;

/// A quantity of this system.
pub trait Measure: Copy {
    /// What it measures.
    const POWERS: crate::unit::Powers;
    /// From a number of base units.
    fn from_base(value: f64) -> Self;
    /// The number of base units.
    fn to_base(self) -> f64;
}

macro_rules! measure {
    ($module:ident, $name:ident) => {
        impl Measure for $name {
            const POWERS: crate::unit::Powers = $module::POWERS;
            fn from_base(value: f64) -> Self {
                base!($name, value)
            }
            fn to_base(self) -> f64 {
                self.value
            }
        }
    };
}

/// Writes, from one table, uom's quantities, the system and its table.
macro_rules! quantities {
    (
        base { $($base:ident: $base_unit:ident, $letter:ident;)+ }
        with_units { $(
            $(#[$doc:meta])*
            $name:ident, $module:ident, $words:literal, [$($power:ident)+] {
                $($(#[$source:meta])* $number:literal $unit:ident $factor:expr, $symbol:literal, $ucum:literal;)+
            }
        )+ }
        derived { $($dname:ident, $dmodule:ident, $dwords:literal, [$($dpower:ident)+], $dunit:ident, $dsymbol:literal;)+ }
    ) => {
        $(
            $(#[$doc])*
            #[macro_use]
            pub mod $module {
                quantity! {
                    quantity: $name; $words;
                    dimension: Trade<$($power),+>;
                    units { $($(#[$source])* @$unit: $factor; $symbol, $symbol, $symbol;)+ }
                }
                /// What all of these measure.
                pub const POWERS: crate::unit::Powers = powers!($($power)+);
                /// Their rows of the table.
                pub const UNITS: &[crate::unit::Unit] = &[$(crate::unit::Unit {
                    number: $number, symbol: $symbol, ucum: $ucum, factor: $factor, powers: POWERS,
                }),+];
            }
        )+
        $(
            #[doc = $dwords]
            #[macro_use]
            pub mod $dmodule {
                quantity! {
                    quantity: $dname; $dwords;
                    dimension: Trade<$($dpower),+>;
                    units { @$dunit: 1.0; $dsymbol, $dsymbol, $dsymbol; }
                }
                /// What these measure.
                pub const POWERS: crate::unit::Powers = powers!($($dpower)+);
            }
        )+
        system! {
            /// The base quantities.
            quantities: Trade { $($base: $base_unit, $letter;)+ }
            /// The named quantities.
            units: TradeUnits { $(mod $module::$name,)+ $(mod $dmodule::$dname,)+ }
        }
        $(measure!($module, $name);)+
        $(measure!($dmodule, $dname);)+
        #[allow(unused_imports)]
        mod in_f64 { Trade!(crate::quantity, f64); }
        pub use in_f64::*;

        /// The table, by quantity.
        pub(crate) const TABLE: &[&[crate::unit::Unit]] = &[$($module::UNITS),+];
        /// What each dimension is called in a message.
        pub(crate) const NAMES: &[(crate::unit::Powers, &str)] =
            &[$(($module::POWERS, $words),)+ $(($dmodule::POWERS, $dwords),)+];
    };
}

quantities! {
    base { length: meter, L; mass: kilogram, M; time: second, T; temperature_difference: kelvin, Th; seeds: seed, S; cells: cell, C; }
    with_units {
        /// Seed and product by mass.
        Mass, mass, "mass", [Z0 P1 Z0 Z0 Z0 Z0] {
            10 kilogram 1.0, "kg", "kg";
            11 gram 1e-3, "g", "g";
            12 milligram 1e-6, "mg", "mg";
            13 microgram 1e-9, "µg", "ug";
            14 tonne 1e3, "t", "t";
            // Avoirdupois pound: NIST SP 811 B.8, exact.
            20 pound 0.453_592_37, "lb", "[lb_av]";
            21 ounce_avoirdupois 0.028_349_523_125, "oz av", "[oz_av]";
            // 100 lb.
            22 hundredweight 45.359_237, "cwt", "[scwt_av]";
        }
        /// Clock time, pot life, storage.
        Time, time, "time", [Z0 Z0 P1 Z0 Z0 Z0] {
            30 second 1.0, "s", "s";
            31 minute 60.0, "min", "min";
            32 hour 3600.0, "h", "h";
            33 day 86_400.0, "d", "d";
        }
        /// A difference of temperatures; a point on the scale is [`Temperature`].
        TemperatureDifference, temperature_difference, "temperature difference", [Z0 Z0 Z0 P1 Z0 Z0] {
            40 kelvin 1.0, "K", "K";
            41 degree_celsius_difference 1.0, "delta_degC", "K";
            42 degree_fahrenheit_difference 5.0 / 9.0, "delta_degF", "[degF]";
        }
        /// A number of seeds.
        Seeds, seeds, "number of seeds", [Z0 Z0 Z0 Z0 P1 Z0] {
            50 seed 1.0, "seeds", "{seed}";
        }
        /// Living cells, as colony-forming units.
        Cells, cells, "number of cells", [Z0 Z0 Z0 Z0 Z0 P1] {
            60 cell 1.0, "CFU", "[CFU]";
        }
        /// Land.
        Area, area, "area", [P2 Z0 Z0 Z0 Z0 Z0] {
            70 square_meter 1.0, "m2", "m2";
            71 hectare 1e4, "ha", "har";
            // 0.3048 m squared.
            72 square_foot 0.092_903_04, "ft2", "[sft_i]";
            // International acre, 43 560 ft²; UCUM has no code of its own for it.
            73 acre 4_046.856_422_4, "ac", "43560.[sft_i]";
        }
        /// Liquids.
        Volume, volume, "volume", [P3 Z0 Z0 Z0 Z0 Z0] {
            80 cubic_meter 1.0, "m3", "m3";
            81 liter 1e-3, "L", "L";
            82 milliliter 1e-6, "mL", "mL";
            83 microliter 1e-9, "µL", "uL";
            // US gallon, 231 in³: NIST HB 44 App. C.
            90 gallon 3.785_411_784e-3, "gal", "[gal_us]";
            91 quart 9.463_529_46e-4, "qt", "[qt_us]";
            92 pint 4.731_764_73e-4, "pt", "[pt_us]";
            93 fluid_ounce 2.957_352_956_25e-5, "fl oz", "[foz_us]";
            94 imperial_gallon 4.546_09e-3, "imp gal", "[gal_br]";
            // Imperial gallon, 4.54609 L: NIST SP 811 B.8, exact; pint 1/8, quart 1/4, fluid ounce 1/160.
            95 imperial_quart 1.136_522_5e-3, "imp qt", "[qt_br]";
            96 imperial_pint 5.682_612_5e-4, "imp pt", "[pt_br]";
            97 imperial_fluid_ounce 2.841_306_25e-5, "imp fl oz", "[foz_br]";
        }
        /// Shares and percentages.
        Ratio, ratio, "share, or mass per mass", [Z0 Z0 Z0 Z0 Z0 Z0] {
            100 one 1.0, "", "1";
            101 percent 1e-2, "%", "%";
        }
    }
    derived {
        // No unit of length is in the documents: litres per hectare have the dimension of one.
        Length,         length,          "volume per area",         [P1 Z0 Z0 Z0 Z0 Z0], meter, "m";
        VolumePerMass,  volume_per_mass,  "volume per mass of seed", [P3 N1 Z0 Z0 Z0 Z0], cubic_meter_per_kilogram, "m3/kg";
        VolumePerSeed,  volume_per_seed,  "volume per seed",         [P3 Z0 Z0 Z0 N1 Z0], cubic_meter_per_seed, "m3/seed";
        MassPerSeed,    mass_per_seed,    "mass per seed",           [Z0 P1 Z0 Z0 N1 Z0], kilogram_per_seed, "kg/seed";
        MassPerArea,    mass_per_area,    "mass per area",           [N2 P1 Z0 Z0 Z0 Z0], kilogram_per_square_meter, "kg/m2";
        MassPerVolume,  mass_per_volume,  "mass per volume",         [N3 P1 Z0 Z0 Z0 Z0], kilogram_per_cubic_meter, "kg/m3";
        SeedsPerMass,   seeds_per_mass,   "seeds per mass",          [Z0 N1 Z0 Z0 P1 Z0], seed_per_kilogram, "seeds/kg";
        SeedsPerArea,   seeds_per_area,   "seeds per area",          [N2 Z0 Z0 Z0 P1 Z0], seed_per_square_meter, "seeds/m2";
        CellsPerVolume, cells_per_volume, "cells per volume",        [N3 Z0 Z0 Z0 Z0 P1], cell_per_cubic_meter, "CFU/m3";
        CellsPerMass,   cells_per_mass,   "cells per mass",          [Z0 N1 Z0 Z0 Z0 P1], cell_per_kilogram, "CFU/kg";
        CellsPerArea,   cells_per_area,   "cells per area",          [N2 Z0 Z0 Z0 Z0 P1], cell_per_square_meter, "CFU/m2";
        CellsPerSeed,   cells_per_seed,   "cells per seed",          [Z0 Z0 Z0 Z0 N1 P1], cell_per_seed, "CFU/seed";
        MassFlow,       mass_flow,        "mass per time",           [Z0 P1 N1 Z0 Z0 Z0], kilogram_per_second, "kg/s";
        VolumeFlow,     volume_flow,      "volume per time",         [P3 Z0 N1 Z0 Z0 Z0], cubic_meter_per_second, "m3/s";
    }
}

/// A depth of liquid over land. Litres per hectare have the dimension of a length, so this is an
/// alias; the domain type is `rate::PerArea`.
pub type VolumePerArea = Length;

/// A point on the temperature scale, kept in °C so that 0 °C, 10 °C and 50 °F are exact.
///
/// A point minus a point is a [`TemperatureDifference`]; two points cannot be added.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
#[repr(transparent)]
pub struct Temperature {
    celsius: f64,
}

impl Temperature {
    /// Water freezes.
    pub const FREEZING: Self = Self::from_celsius(0.0);
    /// Nothing is colder.
    pub const ABSOLUTE_ZERO: Self = Self::from_celsius(-273.15);

    #[must_use]
    pub const fn from_celsius(celsius: f64) -> Self {
        Self { celsius }
    }
    /// The same point, if there can be one.
    ///
    /// # Errors
    /// When it is not finite or below absolute zero.
    pub fn checked(self) -> Result<Self, crate::Error> {
        crate::error::temperature(crate::Argument::Temperature, self)
    }
    #[must_use]
    pub const fn from_fahrenheit(fahrenheit: f64) -> Self {
        Self { celsius: (fahrenheit - 32.0) * 5.0 / 9.0 }
    }
    #[must_use]
    pub const fn celsius(self) -> f64 {
        self.celsius
    }
    #[must_use]
    pub const fn fahrenheit(self) -> f64 {
        self.celsius * 9.0 / 5.0 + 32.0
    }
}

impl core::ops::Sub for Temperature {
    type Output = TemperatureDifference;
    fn sub(self, other: Self) -> TemperatureDifference {
        TemperatureDifference::new::<temperature_difference::kelvin>(self.celsius - other.celsius)
    }
}

impl core::ops::Add<TemperatureDifference> for Temperature {
    type Output = Self;
    fn add(self, by: TemperatureDifference) -> Self {
        Self { celsius: self.celsius + by.value }
    }
}
