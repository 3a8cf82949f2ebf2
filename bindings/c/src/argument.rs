//! Which number of a calculation a status speaks of.

use core::ffi::CStr;

use hilum::Argument;
use hilum::batch::{Counted, Field};

/// One row of the list in `hilum.h`: the number, the name behind `HILUM_OF_`, and the words.
pub type Row = (i32, &'static str, &'static CStr);

/// Numbers are never reused: a new row takes the next free one.
macro_rules! arguments {
    ($list:ident, $of:ident, $core:ident { $($number:literal $name:ident $variant:ident: $words:literal;)+ }) => {
        /// For the header.
        pub const $list: &[Row] = &[$(($number, stringify!($name), $words)),+];

        /// The number of an argument; 0 for one that this version does not number.
        pub(crate) const fn $of(argument: $core) -> i32 {
            match argument {
                $($core::$variant => $number,)+
                _ => 0,
            }
        }
    };
}

/// An argument by name, for a number that has no type of its own.
pub(crate) trait Name {
    const ARGUMENT: Argument;
}

macro_rules! names {
    ($($name:ident)+) => { $(
        pub(crate) enum $name {}
        impl Name for $name {
            const ARGUMENT: Argument = Argument::$name;
        }
    )+ };
}

names! { Area CatchTime CaughtMass CaughtVolume MixVolume Part ProductAmount RatePerBushel RatePerUnit SeedMass Seeds Set
SowingRate ThousandSeedMass Need Covered }

arguments! { VALUES, of_value, Argument {
    1 SEED_MASS SeedMass: c"the mass of seed";
    2 SEEDS Seeds: c"the number of seeds";
    3 SEED_SIZE SeedSize: c"the seed size";
    4 THOUSAND_SEED_MASS ThousandSeedMass: c"the mass of a thousand seeds";
    5 SIZE_TOLERANCE SizeTolerance: c"the tolerance of the seed size";
    6 SEED_UNIT SeedUnit: c"the seed unit";
    7 BUSHEL Bushel: c"the bushel";
    8 SHARE Share: c"the share";
    9 GERMINATION Germination: c"the germination";
    10 EMERGENCE Emergence: c"the emergence";
    11 SOWN Sown: c"the seeds sown per area";
    12 SOWING_RATE SowingRate: c"the sowing rate";
    13 AREA Area: c"the area";
    14 RATE_PER_MASS RatePerMass: c"the rate per mass of seed";
    15 RATE_PER_BUSHEL RatePerBushel: c"the rate per bushel";
    16 RATE_PER_SEED RatePerSeed: c"the rate per seed";
    17 RATE_PER_UNIT RatePerUnit: c"the rate per unit";
    18 RATE_PER_AREA RatePerArea: c"the rate per area";
    19 PRODUCT_AMOUNT ProductAmount: c"the amount of product";
    20 DENSITY Density: c"the density";
    21 DURATION Duration: c"the duration";
    22 TEMPERATURE Temperature: c"the temperature";
    23 ACTIVE_CONTENT ActiveContent: c"the content of active ingredient";
    24 TITRE Titre: c"the titre";
    25 PART_OF_SET PartOfSet: c"the part's share of the set";
    26 PART Part: c"the amount of the part";
    27 SET Set: c"the amount of the set";
    28 RECOVERY Recovery: c"the recovery";
    29 DECIMAL_REDUCTION DecimalReduction: c"the decimal reduction time";
    30 FAST_REDUCTION FastReduction: c"the fast decimal reduction time";
    31 WEIBULL_SCALE WeibullScale: c"the scale of the survival curve";
    32 WEIBULL_SHAPE WeibullShape: c"the shape of the survival curve";
    33 REFERENCE_TEMPERATURE ReferenceTemperature: c"the reference temperature of the survival curve";
    34 Z_VALUE ZValue: c"the z value of the survival curve";
    35 STORAGE_PERIOD StoragePeriod: c"the length of the storage period";
    36 STORAGE_TEMPERATURE StorageTemperature: c"the storage temperature";
    37 TIME_SINCE_TREATING TimeSinceTreating: c"the time since treating";
    38 READING Reading: c"the reading";
    39 RESOLUTION Resolution: c"the resolution of the reading";
    40 USED Used: c"the amount used by the readings";
    41 READING_TIME ReadingTime: c"the time of the reading";
    42 SEED_TOTAL SeedTotal: c"the total of seed";
    43 LIQUID_TOTAL LiquidTotal: c"the total of liquid";
    44 TANK_CONTENT TankContent: c"the content of the tank";
    45 COUNT_TIME CountTime: c"the times of the counts";
    46 COUNT Count: c"the count";
    47 LIFE Life: c"the life on the seed";
    48 COVERAGE Coverage: c"the seed that a set covers";
    49 NEED Need: c"the seed that sets must cover";
    50 COVERED Covered: c"the seed that the opened sets cover";
    51 PRICE Price: c"the price of a set";
    52 SETS Sets: c"the number of sets";
    53 MIX_RATE MixRate: c"the rate of a product in the mix";
    54 MAKE_UP_TO MakeUpTo: c"the volume per mass of seed that the mix is made up to";
    55 MIX_VOLUME MixVolume: c"the volume of mix";
    56 HOLD_UP HoldUp: c"the hold-up of pump and lines";
    57 MIN_FILL MinFill: c"the least fill of the tank";
    58 MIX_SHARE MixShare: c"the share of a product in the mix";
    59 SEED_FLOW SeedFlow: c"the flow of seed";
    60 LIQUID_FLOW LiquidFlow: c"the flow of liquid";
    61 UTILISATION Utilisation: c"the utilisation";
    62 CHARGE Charge: c"the charge of a batch treater";
    63 CYCLE Cycle: c"the cycle of a batch treater";
    64 CAUGHT_VOLUME CaughtVolume: c"the volume caught";
    65 CAUGHT_MASS CaughtMass: c"the mass caught";
    66 CATCH_TIME CatchTime: c"the time of the catch";
    67 SETTING Setting: c"the setting of the pump";
    68 PUMP_CURVE PumpCurve: c"a catch of the pump curve";
    69 DUMP Dump: c"the mass of a dump";
    70 DUMPS Dumps: c"the number of dumps";
    71 DUMP_TIME DumpTime: c"the time that the dumps took";
    72 SEASON_LIMIT SeasonLimit: c"the season's limit";
    73 SEASON_USED SeasonUsed: c"what the season has used";
    74 BUS_VALUE BusValue: c"the value on the bus";
} }

arguments! { COUNTS, of_count, Counted {
    201 BATCH_ORDERS Orders: c"orders";
    202 BATCH_TANKS Tanks: c"tanks";
    203 BATCH_SHIFTS Shifts: c"shifts";
    204 BATCH_SET_SIZES SetSizes: c"set sizes of one tank";
    205 BATCH_MIXES Mixes: c"batches";
    206 BATCH_PORTIONS Portions: c"portions";
    207 BATCH_SETS Sets: c"sets in one batch";
} }

arguments! { FIELDS, of_field, Field {
    221 BATCH_MASS Mass: c"the seed mass of an order";
    222 BATCH_SPEED Speed: c"the seed speed of an order";
    223 BATCH_CHANGEOVER Changeover: c"the changeover before an order";
    224 BATCH_PER_MASS PerMass: c"the slurry per mass of seed of a need";
    225 BATCH_LIVING Living: c"the living share of a need";
    226 BATCH_CAPACITY Capacity: c"the capacity of a tank";
    227 BATCH_HOLD_UP HoldUp: c"the hold-up of a tank";
    228 BATCH_MIXING Mixing: c"the mixing time of a tank";
    229 BATCH_POT_LIFE PotLife: c"the pot life of a tank";
    230 BATCH_ADDS Adds: c"a set's volume of a tank";
    231 BATCH_RANK Rank: c"a set's rank of a tank";
    232 BATCH_SHIFT Shift: c"the hours of a shift";
} }

/// The words for a number.
pub(crate) fn words(number: i32) -> &'static CStr {
    let mut rows = VALUES.iter().chain(COUNTS).chain(FIELDS);
    rows.find(|(own, ..)| *own == number).map_or(c"", |(.., words)| words)
}
