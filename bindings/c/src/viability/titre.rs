//! From a titre to cells on the seed and back.

use core::mem::MaybeUninit;

use hilum::viability::{Titre, TitrePerMass, TitrePerVolume};

use crate::active::{HILUM_BY_MASS, HILUM_PER_VOLUME};
use crate::argument::{Part, Set};
use crate::call::{Answer, give, need};
use crate::dose::cells::hilum_cells_per_seed;
use crate::dose::dry::hilum_dry_per_seed;
use crate::dose::liquid::hilum_rate_per_seed;
use crate::number::{of_three, positive};
use crate::quantity::amount::{hilum_mass, hilum_share, hilum_volume};
use crate::quantity::content::{hilum_density, hilum_titre_per_mass, hilum_titre_per_volume};
use crate::status::Status;

/// How a maker states the living cells of a product.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_titre {
    /// HILUM_PER_VOLUME or HILUM_BY_MASS.
    pub stated: i32,
    /// Cells per volume of product; not looked at when stated by mass.
    pub per_volume: hilum_titre_per_volume,
    /// Cells per mass of product; not looked at when stated per volume.
    pub per_mass: hilum_titre_per_mass,
}

impl hilum_titre {
    fn core(self) -> Answer<Titre> {
        match self.stated {
            HILUM_PER_VOLUME => Ok(Titre::PerVolume(self.per_volume.core()?)),
            HILUM_BY_MASS => Ok(Titre::PerMass(self.per_mass.core()?)),
            _ => Err(Status::NO_SUCH_CHOICE),
        }
    }
}

/// Cells per volume: as stated, or titre x density. density may be NULL when it is not known.
/// Errors: NULL titre; HILUM_NEEDED when stated by mass without a density; HILUM_NO_SUCH_CHOICE; a number that is not
/// finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_titre_to_per_volume(
    titre: Option<&hilum_titre>,
    density: Option<&hilum_density>,
    out: Option<&mut MaybeUninit<hilum_titre_per_volume>>,
) -> i32 {
    give(out, || {
        let density = density.map(|density| density.core()).transpose()?;
        Ok(need(titre)?.core()?.per_volume(density)?.into())
    })
}

/// Cells per mass: as stated, or titre / density. density may be NULL when it is not known.
/// Errors: as for hilum_titre_to_per_volume, the other way round.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_titre_to_per_mass(
    titre: Option<&hilum_titre>,
    density: Option<&hilum_density>,
    out: Option<&mut MaybeUninit<hilum_titre_per_mass>>,
) -> i32 {
    give(out, || {
        let density = density.map(|density| density.core()).transpose()?;
        Ok(need(titre)?.core()?.per_mass(density)?.into())
    })
}

/// Titre of the mix, when the living part of a set has this one: titre x part / set.
/// Errors: a number that is not finite or not more than 0; HILUM_NOT_A_SHARE when the part is more than the set.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_titre_per_volume_in_set(
    titre: hilum_titre_per_volume,
    part: hilum_volume,
    set: hilum_volume,
    out: Option<&mut MaybeUninit<hilum_titre_per_volume>>,
) -> i32 {
    of_three(out, titre, positive::<Part, _>(part), positive::<Set, _>(set), |titre, part, set| {
        titre.in_set(part, set)
    })
}

/// Cells on each seed when it is treated: titre x dose x recovery, the share of the cells that arrives alive.
/// Errors: a number that is not finite or not more than 0; a recovery outside 0 to 1.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_titre_per_volume_cells(
    titre: hilum_titre_per_volume,
    dose: hilum_rate_per_seed,
    recovery: hilum_share,
    out: Option<&mut MaybeUninit<hilum_cells_per_seed>>,
) -> i32 {
    of_three(out, titre, dose, recovery, |titre, dose, recovery| Ok(titre.cells(dose, recovery)))
}

/// The dose that lands so many cells: cells / (titre x recovery).
/// Errors: a number that is not finite or not more than 0; a recovery outside 0 to 1, or of 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_titre_per_volume_dose_for(
    titre: hilum_titre_per_volume,
    cells: hilum_cells_per_seed,
    recovery: hilum_share,
    out: Option<&mut MaybeUninit<hilum_rate_per_seed>>,
) -> i32 {
    of_three(out, titre, cells, recovery, |titre, cells, recovery| titre.dose_for(cells, recovery))
}

/// The titre at which a dose lands so many cells: cells / (dose x recovery).
/// Errors: a number that is not finite or not more than 0; a recovery outside 0 to 1, or of 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_titre_per_volume_needed(
    cells: hilum_cells_per_seed,
    dose: hilum_rate_per_seed,
    recovery: hilum_share,
    out: Option<&mut MaybeUninit<hilum_titre_per_volume>>,
) -> i32 {
    of_three(out, cells, dose, recovery, |cells, dose, recovery| {
        TitrePerVolume::needed(cells, dose, recovery)
    })
}

/// Titre of a dry mix, when the living part of a set has this one: titre x part / set.
/// Errors: a number that is not finite or not more than 0; HILUM_NOT_A_SHARE when the part is more than the set.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_titre_per_mass_in_set(
    titre: hilum_titre_per_mass,
    part: hilum_mass,
    set: hilum_mass,
    out: Option<&mut MaybeUninit<hilum_titre_per_mass>>,
) -> i32 {
    of_three(out, titre, positive::<Part, _>(part), positive::<Set, _>(set), |titre, part, set| {
        titre.in_set(part, set)
    })
}

/// Titre of the liquid made when a living powder is stirred into a set: titre x powder / set.
/// Errors: a number that is not finite or not more than 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_titre_per_mass_stirred_into(
    titre: hilum_titre_per_mass,
    powder: hilum_mass,
    set: hilum_volume,
    out: Option<&mut MaybeUninit<hilum_titre_per_volume>>,
) -> i32 {
    of_three(out, titre, positive::<Part, _>(powder), positive::<Set, _>(set), |titre, powder, set| {
        titre.stirred_into(powder, set)
    })
}

/// Cells on each seed when it is treated: titre x dose x recovery, the share of the cells that arrives alive.
/// Errors: a number that is not finite or not more than 0; a recovery outside 0 to 1.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_titre_per_mass_cells(
    titre: hilum_titre_per_mass,
    dose: hilum_dry_per_seed,
    recovery: hilum_share,
    out: Option<&mut MaybeUninit<hilum_cells_per_seed>>,
) -> i32 {
    of_three(out, titre, dose, recovery, |titre, dose, recovery| Ok(titre.cells(dose, recovery)))
}

/// The dose that lands so many cells: cells / (titre x recovery).
/// Errors: a number that is not finite or not more than 0; a recovery outside 0 to 1, or of 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_titre_per_mass_dose_for(
    titre: hilum_titre_per_mass,
    cells: hilum_cells_per_seed,
    recovery: hilum_share,
    out: Option<&mut MaybeUninit<hilum_dry_per_seed>>,
) -> i32 {
    of_three(out, titre, cells, recovery, |titre, cells, recovery| titre.dose_for(cells, recovery))
}

/// The titre at which a dose lands so many cells: cells / (dose x recovery).
/// Errors: a number that is not finite or not more than 0; a recovery outside 0 to 1, or of 0.
#[unsafe(no_mangle)]
pub extern "C" fn hilum_titre_per_mass_needed(
    cells: hilum_cells_per_seed,
    dose: hilum_dry_per_seed,
    recovery: hilum_share,
    out: Option<&mut MaybeUninit<hilum_titre_per_mass>>,
) -> i32 {
    of_three(out, cells, dose, recovery, |cells, dose, recovery| TitrePerMass::needed(cells, dose, recovery))
}
