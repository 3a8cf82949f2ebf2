//! Living cells on the seed, and until when to plant.

use hilum_job::document::{Job, LivingCells, Out, Plan, PlannedTreatment, PlantByReason};

use super::MARGIN;
use super::group::{self, Column};
use crate::clock::moment;
use crate::number::cells;
use crate::table::Align::{Left, Right};
use crate::table::Table;

/// One line for each living product and run of orders that fare alike.
pub(super) fn lines(job: &Job, plan: &Plan) -> Vec<String> {
    let mut table = Table::new([
        (Left, "product"),
        (Right, "at treating"),
        (Right, "at planting"),
        (Right, "at least"),
        (Left, "plant by"),
        (Left, "set by"),
    ])
    .beside(MARGIN);
    for treatment in &plan.treatments {
        let (numbers, living) = living_orders(treatment);
        group::add(&mut table, job, &treatment.product, &numbers, &columns(&living));
    }
    table.lines()
}

/// The orders on which a product is alive.
fn living_orders(treatment: &PlannedTreatment) -> (Vec<&str>, Vec<&LivingCells>) {
    let living =
        treatment.orders.iter().filter_map(|dose| Some((dose.order.as_str(), dose.living.as_ref()?)));
    living.unzip()
}

fn columns(living: &[&LivingCells]) -> [Column; 5] {
    let counts = |of: fn(&LivingCells) -> Option<&Out>| {
        let outs = || living.iter().map(|living| of(living));
        let unit = outs().flatten().next().map(|out| out.unit.to_string()).unwrap_or_default();
        Column { unit, cells: outs().map(|out| out.map(cells).unwrap_or_default()).collect() }
    };
    let words = |of: fn(&LivingCells) -> String| {
        let cells = living.iter().map(|living| of(living)).collect();
        Column { unit: String::new(), cells }
    };
    [
        counts(|living| Some(&living.at_treating)),
        counts(|living| living.at_planting.as_ref()),
        counts(|living| living.minimum.as_ref()),
        words(|living| living.plant_by.as_deref().map(moment).unwrap_or_default()),
        words(because),
    ]
}

fn because(living: &LivingCells) -> String {
    let because = match living.because {
        Some(PlantByReason::OnSeedLife) => "life on seed",
        Some(PlantByReason::Partner) => "partner on seed",
        Some(PlantByReason::Minimum) => "cell count",
        None => "",
    };
    because.to_owned()
}
