//! An order as a plan writes it.

use alloc::vec::Vec;

use hilum::quantity::{Measure, VolumePerMass};
use hilum::seed::{SeedUnit, UnitOfMass};

use super::draft::Draft;
use super::out::{AREA, LIQUID_PER_MASS, SEED_MASS, SEEDS, count};
use super::recipe::TankWork;
use crate::document::{OrderLiquid, PlannedOrder, Record};
use crate::model::order::{Amount, Order};

/// Whole packages and the like: a sum that is whole but for rounding is not rounded up.
const SLACK: f64 = 1e-9;

/// One order.
pub(crate) fn order(
    draft: &Draft<'_, '_>,
    order: &Order<'_>,
    liquid: VolumePerMass,
    record: Record,
) -> PlannedOrder {
    let units = draft.units();
    let seed = &order.seed;
    let in_units = order.bases.unit.and_then(|unit| unit.units_in(seed.mass, seed.size).ok());
    let spread = order.spread.map(|[a, b]| (a.mass.value.min(b.mass.value), a.mass.value.max(b.mass.value)));
    let mass = |base: f64| SEED_MASS.base(base, units);
    PlannedOrder {
        order: order.doc.order.clone(),
        lot: order.doc.lot.clone(),
        mass: SEED_MASS.of(seed.mass, units),
        seeds: SEEDS.of(seed.seeds, units),
        units: in_units.map(|n| count(n, "units")),
        bushels: order
            .bases
            .bushel
            .and_then(|bushel| bushel.bushels_in(seed.mass).ok())
            .map(|n| count(n, "bu")),
        packages: packages(order),
        area: seed.sown.and_then(|sown| sown.area(seed.seeds).ok()).map(|area| AREA.of(area, units)),
        mass_low: spread.map(|(low, _)| mass(low)),
        mass_high: spread.map(|(_, high)| mass(high)),
        liquid: OrderLiquid {
            per_mass: LIQUID_PER_MASS.of(liquid, units),
            limit: draft.model.treater.max_liquid.map(|limit| LIQUID_PER_MASS.of(limit.get(), units)),
        },
        record,
    }
}

/// All liquid on each order's seed; none is 0.
pub(crate) fn liquids(orders: usize, tanks: &[TankWork]) -> Vec<VolumePerMass> {
    let mut liquids = alloc::vec![VolumePerMass::from_base(0.0); orders];
    for tank in tanks {
        for draw in &tank.orders {
            if let Some(sum) = liquids.get_mut(draw.order) {
                sum.value += draw.slurry.rate().get().value;
            }
        }
    }
    liquids
}

fn packages(order: &Order<'_>) -> Option<u32> {
    let (seed, size) = (&order.seed, order.seed.size);
    let number = match order.package? {
        Amount::Mass(mass) => SeedUnit::Mass(UnitOfMass::new(mass).ok()?).units_in(seed.mass, size).ok()?,
        Amount::Seeds(seeds) => {
            SeedUnit::Count(hilum::seed::UnitOfSeeds::new(seeds).ok()?).units_in(seed.mass, size).ok()?
        }
        Amount::Area(_) => return None,
    };
    let whole = hilum::math::ceil(number * (1.0 - SLACK));
    hilum::math::to_u64(whole).and_then(|whole| u32::try_from(whole).ok())
}
