//! Columns of numbers in a unit that their table names.

use core::ffi::c_char;

use hilum::seed::{SeedUnit, UnitOfSeeds};
use hilum::text::{Bases, Compound, Measured, Written};

use super::{Room, looked_at, perhaps};
use crate::call::{self, Answer};
use crate::quantity::amount::hilum_seeds;
use crate::quantity::{finite, in_range};
use crate::seed::hilum_bushel;
use crate::status::Status;

/// What `unit` and `bu` mean in each row.
struct Columns<'a> {
    units: Option<&'a [hilum_seeds]>,
    bushels: Option<&'a [hilum_bushel]>,
}

impl Columns<'_> {
    #[inline]
    fn row(&self, index: usize) -> Answer<Bases> {
        if let (None, None) = (self.units, self.bushels) {
            return Ok(Bases::default());
        }
        self.stated(index)
    }

    fn stated(&self, index: usize) -> Answer<Bases> {
        let unit = self.units.map(|units| units.get(index).ok_or(Status::NO_SUCH_INDEX)).transpose()?;
        let bushel = self.bushels.map(|own| own.get(index).ok_or(Status::NO_SUCH_INDEX)).transpose()?;
        let unit = unit.map(|unit| UnitOfSeeds::new((*unit).into()).map(SeedUnit::Count)).transpose()?;
        Ok(Bases { unit, bushel: bushel.map(|bushel| bushel.core()).transpose()? })
    }
}

/// A number of a row, in the unit of its column.
struct Cell<'a> {
    number: f64,
    unit: Compound,
    columns: &'a Columns<'a>,
    row: usize,
}

fn base(cell: &Cell<'_>) -> Answer<f64> {
    let written = Written { number: finite(cell.number)?, unit: cell.unit };
    match written.measured(&cell.columns.row(cell.row)?)? {
        Measured::Quantity { value, .. } => in_range(value),
        Measured::Temperature(at) => Ok(at.checked()?.celsius()),
    }
}

fn count(cell: &Cell<'_>) -> Answer<f64> {
    let number = in_range(cell.number)?;
    finite(cell.unit.count_in(number, &cell.columns.row(cell.row)?)?)
}

/// # Safety
/// As for [`call::list`], [`call::text`] and [`call::room`].
unsafe fn converted(
    (numbers, out, codes, n): (*const f64, *mut f64, *mut i32, usize),
    (text, length): (*const c_char, usize),
    (units, bushels): (*const hilum_seeds, *const hilum_bushel),
    convert: impl Fn(&Cell<'_>) -> Answer<f64>,
) -> i32 {
    looked_at((|| {
        // SAFETY: by the caller.
        let (numbers, room) = unsafe { (call::list(numbers, n)?, Room::new(out, codes, n)?) };
        // SAFETY: as above.
        let columns = unsafe { Columns { units: perhaps(units, n)?, bushels: perhaps(bushels, n)? } };
        // SAFETY: as above.
        let unit = Compound::read(unsafe { call::text(text, length) }?)?;
        let columns = &columns;
        let cells = numbers.iter().enumerate();
        room.fill(cells.map(|(row, number)| convert(&Cell { number: *number, unit, columns, row })));
        Ok(())
    })())
}

/// A column of numbers of a unit, given as text of length bytes without a number ("fl oz/unit"), in base units of what
/// it measures, or in degrees Celsius. hilum_text_read of "1 fl oz/unit" tells what that is. units says how many seeds
/// "unit" is in each row, bushels what "bu" weighs; NULL where the text has none.
///
/// Errors: the texts' (200 and up). Of a row: as for hilum_text_read; HILUM_OUT_OF_RANGE beyond 1e-30 to 1e30.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_text_base_rows(
    numbers: *const f64,
    text: *const c_char,
    length: usize,
    units: *const hilum_seeds,
    bushels: *const hilum_bushel,
    out: *mut f64,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { converted((numbers, out, codes, n), (text, length), (units, bushels), base) }
}

/// The other way round: a column of base units as numbers of a unit. Not for temperatures.
///
/// Errors: the texts' (200 and up). Of a row: as for hilum_text_count_in.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_text_count_in_rows(
    numbers: *const f64,
    text: *const c_char,
    length: usize,
    units: *const hilum_seeds,
    bushels: *const hilum_bushel,
    out: *mut f64,
    codes: *mut i32,
    n: usize,
) -> i32 {
    // SAFETY: the conventions.
    unsafe { converted((numbers, out, codes, n), (text, length), (units, bushels), count) }
}
