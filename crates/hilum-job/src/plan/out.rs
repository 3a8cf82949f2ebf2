//! Numbers in base units → quantities as a plan writes them.

use alloc::borrow::Cow;

use hilum::quantity::Measure;
use hilum::rate::{Active, CellCount, Dry, Liquid, PerArea, PerMass, PerSeed};
use hilum::text::{Bases, Compound};

use crate::document::{Out, Units};

/// A row of the contract's table of output units: US and metric.
#[derive(Debug)]
pub(crate) struct Row {
    us: &'static str,
    metric: &'static str,
}

const fn row(us: &'static str, metric: &'static str) -> Row {
    Row { us, metric }
}

pub(crate) static SEED_MASS: Row = row("lb", "kg");
pub(crate) static AREA: Row = row("ac", "ha");
pub(crate) static LIQUID: Row = row("fl oz", "L");
pub(crate) static DRY: Row = row("lb", "kg");
pub(crate) static FLOW: Row = row("fl oz/min", "mL/min");
pub(crate) static SIZE: Row = row("seeds/lb", "seeds/kg");
pub(crate) static SEEDS: Row = row("seeds", "seeds");
pub(crate) static SOWING: Row = row("seeds/ac", "seeds/ha");
pub(crate) static LIQUID_PER_MASS: Row = row("fl oz/cwt", "mL/100 kg");
pub(crate) static LIQUID_PER_UNIT: Row = row("fl oz/unit", "mL/unit");
pub(crate) static LIQUID_PER_BUSHEL: Row = row("fl oz/bu", "mL/bu");
pub(crate) static LIQUID_PER_AREA: Row = row("fl oz/ac", "mL/ha");
pub(crate) static LIQUID_PER_SEED: Row = row("µL/seed", "µL/seed");
pub(crate) static DRY_PER_MASS: Row = row("oz av/cwt", "g/100 kg");
pub(crate) static DRY_PER_UNIT: Row = row("oz av/unit", "g/unit");
pub(crate) static DRY_PER_BUSHEL: Row = row("oz av/bu", "g/bu");
pub(crate) static DRY_PER_AREA: Row = row("oz av/ac", "g/ha");
pub(crate) static PER_SEED: Row = row("mg/seed", "mg/seed");
pub(crate) static ACTIVE_PER_MASS: Row = row("mg/kg", "mg/kg");
pub(crate) static ACTIVE_PER_AREA: Row = row("lb/ac", "g/ha");
pub(crate) static CELLS: Row = row("CFU/seed", "CFU/seed");

impl Row {
    /// A number of base units, written in this row's unit; `bases` says what `unit` and `bu` are.
    pub(crate) fn with(&self, base: f64, bases: &Bases, units: Units) -> Out {
        let unit = match units {
            Units::Us => self.us,
            Units::Metric => self.metric,
        };
        // The table's units are all read; a test holds that.
        // The numbers below the line of our own units are whole.
        let whole = |digits: &str| digits.parse::<u32>().ok().map(f64::from);
        let value =
            Compound::read_with(unit, whole).and_then(|unit| unit.count_in(base, bases)).unwrap_or(base);
        Out { value, unit: Cow::Borrowed(unit) }
    }

    /// A quantity, written in this row's unit.
    pub(crate) fn of(&self, quantity: impl Measure, units: Units) -> Out {
        self.base(quantity.to_base(), units)
    }

    /// A number of base units, written in this row's unit, which is neither a unit nor a bushel.
    #[inline(never)]
    pub(crate) fn base(&self, base: f64, units: Units) -> Out {
        self.with(base, &Bases::default(), units)
    }
}

/// What counts units, bushels and the like.
pub(crate) fn count(value: f64, unit: &'static str) -> Out {
    Out { value, unit: Cow::Borrowed(unit) }
}

/// A dose as a plan writes it.
pub(crate) trait Written {
    fn out(self, units: Units) -> Out;
}

macro_rules! written {
    ($($dose:ty: $row:expr;)+) => {
        $(impl Written for $dose {
            fn out(self, units: Units) -> Out {
                $row.of(self.get(), units)
            }
        })+
    };
}

written! {
    PerMass<Liquid>: LIQUID_PER_MASS;
    PerMass<Dry>: DRY_PER_MASS;
    PerMass<Active>: ACTIVE_PER_MASS;
    PerSeed<Liquid>: LIQUID_PER_SEED;
    PerSeed<Dry>: PER_SEED;
    PerSeed<Active>: PER_SEED;
    PerSeed<CellCount>: CELLS;
    PerArea<Liquid>: LIQUID_PER_AREA;
    PerArea<Dry>: DRY_PER_AREA;
    PerArea<Active>: ACTIVE_PER_AREA;
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_unit_of_the_table_is_read() {
        for row in [
            &SEED_MASS,
            &AREA,
            &LIQUID,
            &DRY,
            &FLOW,
            &SIZE,
            &SEEDS,
            &SOWING,
            &LIQUID_PER_MASS,
            &LIQUID_PER_UNIT,
            &LIQUID_PER_BUSHEL,
            &LIQUID_PER_AREA,
            &LIQUID_PER_SEED,
            &DRY_PER_MASS,
            &DRY_PER_UNIT,
            &DRY_PER_BUSHEL,
            &DRY_PER_AREA,
            &PER_SEED,
            &ACTIVE_PER_MASS,
            &ACTIVE_PER_AREA,
            &CELLS,
        ] {
            assert!(Compound::read(row.us).is_ok(), "{}", row.us);
            assert!(Compound::read(row.metric).is_ok(), "{}", row.metric);
        }
    }

    #[test]
    fn a_fluid_ounce_per_hundredweight_is_65_ml_per_100_kg() {
        // NIST SP 811: 29.573 529 562 5 mL over 45.359 237 kg.
        let rate = PerMass::<Liquid>::new(hilum::text::read("1 fl oz/cwt").expect("read")).expect("positive");
        assert!((rate.out(Units::Metric).value - 65.198_472_281).abs() < 1e-9);
        assert!((rate.out(Units::Us).value - 1.0).abs() < 1e-15);
    }
}
