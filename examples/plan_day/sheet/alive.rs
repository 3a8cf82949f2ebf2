//! Living cells on the seed, and until when to plant.

use hilum_job::document::{Job, LivingCells, Plan, PlantByReason};

use super::MARGIN;
use crate::clock::moment;
use crate::number::cells;
use crate::table::Align::{Left, Right};
use crate::table::Table;

/// One line for each living product and order.
pub(super) fn lines(_: &Job, plan: &Plan) -> Vec<String> {
    let mut table = Table::new([
        (Left, "product"),
        (Left, "order"),
        (Right, "at treating\nCFU/seed"),
        (Right, "at planting\nCFU/seed"),
        (Right, "at least\nCFU/seed"),
        (Left, "plant by"),
        (Left, "set by"),
    ])
    .beside(MARGIN);
    for treatment in &plan.treatments {
        let doses = treatment.orders.iter().filter_map(|dose| Some((dose, dose.living.as_ref()?)));
        for (i, (dose, living)) in doses.enumerate() {
            let name = if i == 0 { treatment.product.clone() } else { String::new() };
            let [treating, planting, minimum, by, because] = row(living);
            table.row([name, dose.order.clone(), treating, planting, minimum, by, because]);
        }
    }
    table.lines()
}

fn row(living: &LivingCells) -> [String; 5] {
    let because = match living.because {
        Some(PlantByReason::OnSeedLife) => "life on seed",
        Some(PlantByReason::Partner) => "partner on seed",
        Some(PlantByReason::Minimum) => "cell count",
        None => "",
    };
    [
        cells(&living.at_treating),
        living.at_planting.as_ref().map(cells).unwrap_or_default(),
        living.minimum.as_ref().map(cells).unwrap_or_default(),
        living.plant_by.as_deref().map(moment).unwrap_or_default(),
        because.to_owned(),
    ]
}
