//! Living cells of rows.

use core::mem::MaybeUninit;

use hilum::quantity::Temperature;
use hilum::viability::{Life, Period, Survival, plant_by};

use super::{Room, looked_at, perhaps, triples};
use crate::call::{Answer, Work, hilum_work, list, need, room};
use crate::dose::cells::hilum_cells_per_seed;
use crate::dose::dry::hilum_dry_per_seed;
use crate::dose::liquid::hilum_rate_per_seed;
use crate::quantity::amount::{hilum_share, hilum_time};
use crate::quantity::content::{hilum_titre_per_mass, hilum_titre_per_volume};
use crate::quantity::temperature::hilum_temperature;
use crate::status::Status;
use crate::viability::keeping::{hilum_crossing, hilum_life, hilum_plant_by};
use crate::viability::survival::hilum_survival;

/// Cells on each seed when it is treated: titre x dose x recovery.
/// Of a row: as for hilum_titre_per_volume_cells.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_titre_per_volume_cells_rows(
    titres: *const hilum_titre_per_volume,
    doses: *const hilum_rate_per_seed,
    recoveries: *const hilum_share,
    out: *mut hilum_cells_per_seed,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        triples(
            (titres, doses, recoveries),
            out,
            codes,
            n,
            |titres: hilum_titre_per_volume, doses: hilum_rate_per_seed, recoveries: hilum_share| {
                Ok(titres.core()?.cells(doses.core()?, recoveries.core()?).into())
            },
        )
    }
}

/// Cells on each seed when it is treated: titre x dose x recovery.
/// Of a row: as for hilum_titre_per_mass_cells.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_titre_per_mass_cells_rows(
    titres: *const hilum_titre_per_mass,
    doses: *const hilum_dry_per_seed,
    recoveries: *const hilum_share,
    out: *mut hilum_cells_per_seed,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe {
        triples(
            (titres, doses, recoveries),
            out,
            codes,
            n,
            |titres: hilum_titre_per_mass, doses: hilum_dry_per_seed, recoveries: hilum_share| {
                Ok(titres.core()?.cells(doses.core()?, recoveries.core()?).into())
            },
        )
    }
}

/// Which survival curve and which storage history each of n rows has.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct hilum_kept_rows {
    /// The curves, one for each product.
    pub curves: *const hilum_survival,
    /// How many there are.
    pub n_curves: usize,
    /// Which of them each row has, counted from 0.
    pub which: *const i32,
    /// Where the periods of each row begin, counted from 0, and after the last where they end: n + 1 numbers.
    pub first: *const i32,
    /// How long each period lasts. The last of a row goes on, whatever it says.
    pub lasts: *const hilum_time,
    /// The temperature of each period.
    pub at: *const hilum_temperature,
    /// How many periods there are in all.
    pub n_periods: usize,
}

/// The same, looked at.
struct Kept<'a> {
    curves: &'a [hilum_survival],
    which: &'a [i32],
    first: &'a [i32],
    lasts: &'a [hilum_time],
    at: &'a [hilum_temperature],
    work: *mut hilum_work,
    n_work: usize,
}

impl<'a> Kept<'a> {
    /// # Safety
    /// As for [`list`], and for [`room`] while the result is in use.
    unsafe fn new(
        of: Option<&hilum_kept_rows>,
        work: *mut hilum_work,
        n_work: usize,
        n: usize,
    ) -> Answer<Self> {
        let of = need(of)?;
        let more = n.checked_add(1).ok_or(Status::TOO_LONG)?;
        // SAFETY: by the caller.
        unsafe {
            room(work, n_work)?;
            Ok(Self {
                curves: list(of.curves, of.n_curves)?,
                which: list(of.which, n)?,
                first: list(of.first, more)?,
                lasts: list(of.lasts, of.n_periods)?,
                at: list(of.at, of.n_periods)?,
                work,
                n_work,
            })
        }
    }

    fn row(&self, index: usize) -> Answer<(Survival, &'a [Period])> {
        let number = |list: &[i32], index: usize| {
            let number = list.get(index).copied().and_then(|number| usize::try_from(number).ok());
            number.ok_or(Status::NO_SUCH_INDEX)
        };
        let curve = self.curves.get(number(self.which, index)?).ok_or(Status::NO_SUCH_INDEX)?.core()?;
        let from = number(self.first, index)?;
        let to = number(self.first, index.saturating_add(1))?;
        let lasts = self.lasts.get(from..to).ok_or(Status::NO_SUCH_INDEX)?;
        let mut periods = lasts.iter().zip(self.at.get(from..to).ok_or(Status::NO_SUCH_INDEX)?);
        // SAFETY: by the caller of `new`; what an earlier row had there is no longer in use.
        let mut work = unsafe { Work::new(self.work, self.n_work)? };
        let periods = work.list(lasts.len(), |_| {
            let (lasts, at) = periods.next().ok_or(Status::NO_SUCH_INDEX)?;
            Ok(Period::new((*lasts).into(), Some(Temperature::from_celsius(at.celsius)))?)
        })?;
        Ok((curve, periods))
    }
}

/// Cells on each seed after a time in storage: cells at treating x 10^(log10 S). None left is 0.
/// work: as many as the longest history has periods.
///
/// Errors: NULL. Of a row: HILUM_NO_SUCH_INDEX where it has no such curve or periods; HILUM_ROOM_TOO_SMALL for its
/// periods; as for hilum_survival_count.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_survival_count_rows(
    of: Option<&hilum_kept_rows>,
    at_treating: *const hilum_cells_per_seed,
    after: *const hilum_time,
    work: *mut hilum_work,
    n_work: usize,
    out: *mut hilum_cells_per_seed,
    codes: *mut i32,
    n: usize,
) -> i32 {
    looked_at((|| {
        // SAFETY: the conventions.
        let (kept, room) = unsafe { (Kept::new(of, work, n_work, n)?, Room::new(out, codes, n)?) };
        // SAFETY: as above.
        let (at_treating, after) = unsafe { (list(at_treating, n)?, list(after, n)?) };
        room.fill(at_treating.iter().zip(after).enumerate().map(|(index, (cells, after))| {
            let (survival, storage) = kept.row(index)?;
            Ok(survival.count(cells.core()?, storage, (*after).into())?.into())
        }));
        Ok(())
    })())
}

/// The last moment at which there are enough cells on a seed, as hilum_crossing has it: at and is. work: as many as the
/// longest history has periods.
///
/// Errors: as for hilum_survival_count_rows.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_survival_crossing_rows(
    of: Option<&hilum_kept_rows>,
    at_treating: *const hilum_cells_per_seed,
    minimum: *const hilum_cells_per_seed,
    work: *mut hilum_work,
    n_work: usize,
    at: *mut hilum_time,
    is: *mut i32,
    codes: *mut i32,
    n: usize,
) -> i32 {
    looked_at((|| {
        // SAFETY: the conventions.
        let (kept, times) = unsafe { (Kept::new(of, work, n_work, n)?, Room::new(at, codes, n)?) };
        // SAFETY: as above.
        let (cells, minimum, is) = unsafe { (list(at_treating, n)?, list(minimum, n)?, room(is, n)?) };
        times.fill(cells.iter().zip(minimum).zip(is).enumerate().map(|(index, ((cells, least), is))| {
            is.write(0);
            let (survival, storage) = kept.row(index)?;
            let crossing: hilum_crossing = survival.crossing(cells.core()?, least.core()?, storage).into();
            is.write(crossing.is);
            Ok(crossing.at)
        }));
        Ok(())
    })())
}

/// What a column says of a row, where there is a column.
fn life(column: Option<&[hilum_life]>, index: usize) -> Answer<Option<Life>> {
    column.and_then(|lives| lives.get(index)).map(|life| life.core()).transpose()
}

/// How long each seed may wait, as hilum_plant_by has it: within, is and because. on_seed and partners may be NULL where
/// nothing is stated, and so may crossing_at together with crossing_is.
///
/// Errors: NULL. Of a row: as for hilum_plant_by_of with one partner.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_plant_by_of_rows(
    on_seed: *const hilum_life,
    partners: *const hilum_life,
    crossing_at: *const hilum_time,
    crossing_is: *const i32,
    within: *mut hilum_time,
    is: *mut i32,
    because: *mut i32,
    codes: *mut i32,
    n: usize,
) -> i32 {
    looked_at((|| {
        // SAFETY: the conventions.
        let (on_seed, partners) = unsafe { (perhaps(on_seed, n)?, perhaps(partners, n)?) };
        // SAFETY: as above.
        let (ats, crossings) = unsafe { (perhaps(crossing_at, n)?, perhaps(crossing_is, n)?) };
        if ats.is_some() != crossings.is_some() {
            return Err(Status::NULL);
        }
        // SAFETY: as above.
        let (times, is, because) = unsafe { (Room::new(within, codes, n)?, room(is, n)?, room(because, n)?) };
        let crossing = |index: usize| -> Option<hilum_crossing> {
            Some(hilum_crossing { at: *ats?.get(index)?, is: *crossings?.get(index)? })
        };
        times.fill(is.iter_mut().zip(because).enumerate().map(|(index, (is, because))| {
            (*is, *because) = (MaybeUninit::zeroed(), MaybeUninit::zeroed());
            let own = life(on_seed, index)?;
            let minimum = crossing(index).map(hilum_crossing::core).transpose()?;
            let by: hilum_plant_by = plant_by(own, life(partners, index)?.as_slice(), minimum).into();
            is.write(by.is);
            because.write(by.because);
            Ok(by.within)
        }));
        Ok(())
    })())
}
