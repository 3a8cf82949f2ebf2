//! What to take off the shelf.

use hilum_job::document::{Job, OpenedPack, Part, Plan, PlannedTreatment, Treatment};

use super::MARGIN;
use super::words::given;
use crate::number::{joined, product, seed};
use crate::table::Align::{Left, Right};
use crate::table::Table;

/// One line for each pack size of each product.
pub(super) fn lines(job: &Job, plan: &Plan) -> Vec<String> {
    let mut table = Table::new([
        (Left, "product"),
        (Right, "needed"),
        (Right, "between"),
        (Left, "open"),
        (Right, "cases"),
        (Right, "for seed"),
        (Right, "left over"),
    ])
    .beside(MARGIN);
    for (treatment, planned) in job.treatments.iter().zip(&plan.treatments) {
        if planned.orders.is_empty() {
            continue;
        }
        if planned.packs.is_empty() {
            let mut cells = product_cells(planned);
            cells[3].push_str("measure out");
            table.row(cells);
        }
        for (i, opened) in planned.packs.iter().enumerate() {
            let mut cells = if i == 0 { product_cells(planned) } else { Default::default() };
            cells[3] = take(treatment, opened);
            cells[4] = opened.cases.map(|cases| cases.to_string()).unwrap_or_default();
            cells[5] = seed(&opened.covers);
            table.row(cells);
        }
    }
    table.lines()
}

/// What stands once for a product.
fn product_cells(planned: &PlannedTreatment) -> [String; 7] {
    let mut cells: [String; 7] = Default::default();
    cells[0].clone_from(&planned.product);
    cells[1] = product(&planned.needed);
    if let (Some(low), Some(high)) = (&planned.needed_low, &planned.needed_high) {
        cells[2] = format!("{} to {}", product(low), product(high));
    }
    cells[6] = planned.leftover.as_ref().map(product).unwrap_or_default();
    cells
}

/// `6 x shed set (culture 220 fl oz, extender 61 fl oz)`
fn take(treatment: &Treatment, opened: &OpenedPack) -> String {
    let pack = treatment.packs.iter().flatten().find(|pack| pack.pack == opened.pack);
    let parts: Vec<String> =
        pack.and_then(|pack| pack.parts.as_ref()).into_iter().flatten().map(contents).collect();
    let name = format!("{} x {}", opened.sets, opened.pack);
    // One part that is the pack itself says nothing that the name does not.
    if parts.len() < 2 { name } else { format!("{name} ({})", parts.join(", ")) }
}

fn contents(part: &Part) -> String {
    joined(&part.part, &given(&part.fill))
}
