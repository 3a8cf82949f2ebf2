//! What one set of a product holds, and how alive its mix is.

use hilum::error::positive;
use hilum::quantity::{Mass, Measure, Volume};
use hilum::viability::Titre;
use hilum::{Argument, Error};

use super::dose::Amount;
use crate::model::pack::{Pack, PartAmount};
use crate::model::treatment::Treatment;

/// What can be got out of a set, in the measure that the product is handled by; `None` where its parts are
/// not given.
pub(crate) fn usable(treatment: &Treatment<'_>, pack: &Pack<'_>) -> Result<Option<Amount>, Error> {
    if pack.parts.is_empty() {
        return Ok(None);
    }
    let amount = if treatment.tank.is_some() {
        let total = sum(pack, |part| volume(treatment, part).map(|volume| volume.value))?;
        Amount::Liquid(Volume::from_base(total))
    } else {
        Amount::Dry(Mass::from_base(sum(pack, |part| mass(treatment, part).map(|mass| mass.value))?))
    };
    positive(Argument::Set, amount.base())?;
    Ok(Some(amount))
}

fn sum(pack: &Pack<'_>, of: impl Fn(PartAmount) -> Result<f64, Error>) -> Result<f64, Error> {
    pack.parts.iter().try_fold(0.0, |total, (_, part)| Ok(total + of(*part)?))
}

fn volume(treatment: &Treatment<'_>, part: PartAmount) -> Result<Volume, Error> {
    let needed = Error::Needed { argument: Argument::Density };
    match part {
        PartAmount::Volume(volume) => Ok(volume),
        PartAmount::Mass(mass) => Ok(mass / treatment.density.ok_or(needed)?.get()),
    }
}

fn mass(treatment: &Treatment<'_>, part: PartAmount) -> Result<Mass, Error> {
    let needed = Error::Needed { argument: Argument::Density };
    match part {
        PartAmount::Mass(mass) => Ok(mass),
        PartAmount::Volume(volume) => Ok(volume * treatment.density.ok_or(needed)?.get()),
    }
}

/// The titre of the mix. Where it is stated of a part: titre × part / set; where pack sizes differ in that,
/// the lowest, so that no promise is overstated.
pub(crate) fn mix_titre(treatment: &Treatment<'_>) -> Result<Option<Titre>, Error> {
    let Some(living) = &treatment.living else { return Ok(None) };
    if !living.of_part {
        return Ok(Some(living.titre));
    }
    let name = treatment.doc.living.as_ref().and_then(|living| living.titre_of.as_deref());
    let mut lowest: Option<Titre> = None;
    for pack in &treatment.packs {
        for (_, part) in pack.parts.iter().filter(|(part, _)| Some(*part) == name) {
            let titre = in_set(treatment, pack, living.titre, *part)?;
            lowest = Some(match (lowest, titre) {
                (Some(Titre::PerVolume(low)), Titre::PerVolume(titre)) if low <= titre => {
                    Titre::PerVolume(low)
                }
                (Some(Titre::PerMass(low)), Titre::PerMass(titre)) if low <= titre => Titre::PerMass(low),
                (_, titre) => titre,
            });
        }
    }
    Ok(lowest)
}

/// A part's titre, spread over the whole set.
fn in_set(
    treatment: &Treatment<'_>,
    pack: &Pack<'_>,
    titre: Titre,
    part: PartAmount,
) -> Result<Titre, Error> {
    let set = usable(treatment, pack)?.ok_or(Error::Needed { argument: Argument::Set })?;
    match (titre, set) {
        (Titre::PerVolume(titre), Amount::Liquid(set)) => {
            titre.in_set(volume(treatment, part)?, set).map(Titre::PerVolume)
        }
        (Titre::PerMass(titre), Amount::Dry(set)) => {
            titre.in_set(mass(treatment, part)?, set).map(Titre::PerMass)
        }
        (Titre::PerMass(titre), Amount::Liquid(set)) => {
            titre.stirred_into(mass(treatment, part)?, set).map(Titre::PerVolume)
        }
        (Titre::PerVolume(_), Amount::Dry(set)) => {
            let titre = titre.per_mass(treatment.density)?;
            titre.in_set(mass(treatment, part)?, set).map(Titre::PerMass)
        }
    }
}
