//! How many living cells land on a seed?

use hilum::rate::{CellCount, PerMass, PerSeed};
use hilum::seed::{SeedSize, Share};
use hilum::viability::{TitrePerMass, TitrePerVolume};

use crate::give::{SomeTitre, slot};
use crate::refusal::{Blame, Refused};
use crate::slots::Slots;
use crate::take::{AnyAmount, AnyTitre, Product, take};
use crate::value::Value;

super::calculators! {
    slots =>
    living {
        /// Living cells that land on one seed: titre × dose per seed × recovery.
        cells_per_seed[S](titre: <S as Product>::Titre, per_seed: PerSeed<S>, recovery: Share)
            -> cells: PerSeed<CellCount> = S::cells(titre, per_seed, recovery);
        /// Living cells that land on one seed: titre × rate / size × recovery.
        cells_per_seed[S](titre: <S as Product>::Titre, rate: PerMass<S>, size: SeedSize, recovery: Share)
            -> cells: PerSeed<CellCount> = S::cells(titre, rate.per_seed(size), recovery);
        /// The dose that puts so many living cells on one seed: cells / (titre × recovery).
        dose_for[S](titre: <S as Product>::Titre, cells: PerSeed<CellCount>, recovery: Share)
            -> per_seed: PerSeed<S> = S::dose_for(titre, cells, recovery).of(slots, 2)?;
        /// The titre that a dose needs to put so many living cells on one seed: cells / (dose × recovery).
        titre_for[S](per_seed: PerSeed<S>, cells: PerSeed<CellCount>, recovery: Share) -> titre: <S as Product>::Titre =
            S::titre_for(per_seed, cells, recovery).of(slots, 2)?;
        /// The titre of a set, when that of its living part is known: titre × part / set.
        titre_in_set(titre: AnyTitre, part: AnyAmount, set: AnyAmount) -> titre: SomeTitre = {
            let _: (AnyTitre, AnyAmount, AnyAmount) = (titre, part, set);
            SomeTitre(in_set(slots)?)
        };
    }
}

/// A powder in a dry set, a liquid part in a liquid set, or a powder stirred into a liquid one.
fn in_set(slots: &Slots) -> Result<Value, Refused> {
    if slots.get(0).of.is_liquid() {
        let titre: TitrePerVolume = take(slots, 0)?;
        return Ok(slot(titre.in_set(take(slots, 1)?, take(slots, 2)?).of(slots, 1)?.get()));
    }
    let (titre, part) = (take::<TitrePerMass>(slots, 0)?, take(slots, 1)?);
    if slots.get(2).of.is_liquid() {
        Ok(slot(titre.stirred_into(part, take(slots, 2)?).of(slots, 1)?.get()))
    } else {
        Ok(slot(titre.in_set(part, take(slots, 2)?).of(slots, 1)?.get()))
    }
}
