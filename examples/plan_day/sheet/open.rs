//! What to take off the shelf.

use hilum_job::document::{Job, OpenedPack, Part, Plan, PlannedTreatment, Treatment};

use super::MARGIN;
use super::words::given;
use crate::number::{joined, product, seed};
use crate::table::Align::{Left, Right};
use crate::table::{Table, labelled};

/// One line for each pack size of each product.
pub(super) fn lines(job: &Job, plan: &Plan) -> Vec<String> {
    let mut table = Table::new([
        (Left, "product"),
        (Right, "needed"),
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
            cells[2].push_str("measure out");
            table.row(cells);
        }
        for (i, opened) in planned.packs.iter().enumerate() {
            let mut cells = if i == 0 { product_cells(planned) } else { Default::default() };
            cells[2] = take(treatment, opened);
            cells[3] = opened.cases.map(|cases| cases.to_string()).unwrap_or_default();
            cells[4] = seed(&opened.covers);
            table.row(cells);
        }
    }
    let mut lines = table.lines();
    let spreads: Vec<String> = plan.treatments.iter().filter_map(spread).collect();
    if !spreads.is_empty() {
        lines.extend(labelled(MARGIN, "Seed size may be off: ", &(spreads.join("; ") + ".")));
    }
    lines
}

/// What a product's need lies between, where that shows.
fn spread(planned: &PlannedTreatment) -> Option<String> {
    let [low, high] = [&planned.needed_low, &planned.needed_high].map(|out| out.as_ref().map(product));
    let (low, high) = (low?, high?);
    (low != high).then(|| format!("{} {low} to {high}", planned.product))
}

/// What stands once for a product.
fn product_cells(planned: &PlannedTreatment) -> [String; 6] {
    let mut cells: [String; 6] = Default::default();
    cells[0].clone_from(&planned.product);
    cells[1] = product(&planned.needed);
    cells[5] = planned.leftover.as_ref().map(product).unwrap_or_default();
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
