//! Cells per gram say nothing of a dose in millilitres.

use hilum::rate::{CellCount, PerSeed, RatePerSeed};
use hilum::seed::Share;
use hilum::viability::TitrePerMass;

fn on_seed(titre: TitrePerMass, dose: RatePerSeed) -> PerSeed<CellCount> {
    titre.cells(dose, Share::WHOLE)
}

fn main() {}
