//! The plan of batches, in the caller's memory.

use core::mem::MaybeUninit;

use hilum::batch::{
    Content, Error, Fill, Job, Label, Memory, Mix, Need, Order, Portion, Pour, Room, SetSize, Shift, Tank,
    plan,
};

use super::input::{
    hilum_batch_job, hilum_batch_need, hilum_batch_order, hilum_batch_set, hilum_batch_shift,
    hilum_batch_tank,
};
use super::output::{
    hilum_batch_first, hilum_batch_mix, hilum_batch_portion, hilum_batch_room, hilum_batch_summary,
};
use crate::call::{self, Answer, Needed, Out, Work, give, need};
use crate::status::Status;

/// Why there is no plan, and which line of the job is at fault, if one is.
struct Fault {
    status: Status,
    line: Option<usize>,
}

impl From<Status> for Fault {
    fn from(status: Status) -> Self {
        Self { status, line: None }
    }
}

impl From<Error> for Fault {
    fn from(error: Error) -> Self {
        let line = match error {
            Error::Value { index, .. } => Some(index),
            Error::TankTooSmall { tank } => Some(tank),
            _ => None,
        };
        Self { status: error.into(), line }
    }
}

impl Fault {
    fn told(self, bad: Out<'_, usize>) -> Status {
        if let (Some(line), Some(bad)) = (self.line, bad) {
            bad.write(line);
        }
        self.status
    }
}

/// The lists of a job, as C gives them.
struct Lists<'a> {
    orders: &'a [hilum_batch_order],
    tanks: &'a [hilum_batch_tank],
    needs: &'a [hilum_batch_need],
    shifts: &'a [hilum_batch_shift],
}

impl Lists<'_> {
    /// # Safety
    /// As for [`call::list`], for every list of the job.
    unsafe fn new(job: hilum_batch_job) -> Answer<Self> {
        // SAFETY: by the caller.
        unsafe {
            Ok(Self {
                orders: call::list(job.orders, job.n_orders)?,
                tanks: call::list(job.tanks, job.n_tanks)?,
                needs: call::list(job.needs, job.n_needs)?,
                shifts: call::list(job.shifts, job.n_shifts)?,
            })
        }
    }

    fn sets(&self) -> Answer<usize> {
        let sum = |sum: usize, tank: &hilum_batch_tank| sum.checked_add(tank.n_sets);
        self.tanks.iter().try_fold(0, sum).ok_or(Status::TOO_LONG)
    }

    fn needed(&self) -> Answer<Needed> {
        let mut needed = Needed::default();
        needed.add::<Order>(self.orders.len())?;
        needed.add::<Tank<'_>>(self.tanks.len())?;
        needed.add::<Option<Need>>(self.needs.len())?;
        needed.add::<Shift>(self.shifts.len())?;
        // Each tank's list begins with a whole word.
        needed.add::<SetSize>(self.sets()?)?;
        Ok(needed)
    }

    /// The job as the core takes it, in working memory.
    ///
    /// # Safety
    /// As for [`call::list`], for the sets of every tank.
    unsafe fn job<'w>(&self, work: &mut Work<'w>) -> Result<Job<'w>, Fault> {
        let mut sets = work.part::<SetSize>(self.sets()?)?;
        let (mut tanks, mut at) = (self.tanks.iter(), 0);
        let tanks = work.list(self.tanks.len(), |index| {
            at = index;
            let tank = tanks.next().ok_or(Status::NO_SUCH_INDEX)?;
            // SAFETY: by the caller.
            let sizes = unsafe { call::list(tank.sets, tank.n_sets) }?;
            tank.core(sets.made(sizes, |set: hilum_batch_set| Ok(set.core()))?)
        });
        let of_tank = |status| Fault { status, line: (status == Status::NO_SUCH_CHOICE).then_some(at) };
        let tanks = tanks.map_err(of_tank)?;
        Ok(Job {
            orders: work.made(self.orders, |order: hilum_batch_order| Ok(order.core()))?,
            tanks,
            needs: work.made(self.needs, |need: hilum_batch_need| Ok(need.core()))?,
            shifts: work.made(self.shifts, |shift: hilum_batch_shift| Ok(shift.core()))?,
        })
    }
}

/// The planner's room, as large as the caller asks for.
fn wanted(job: &Job<'_>, room: &hilum_batch_room) -> Answer<Room> {
    let mut wanted = Room::of(job);
    if room.pours > 0 {
        wanted.pours = usize::try_from(room.pours).map_err(|_| Status::TOO_LONG)?;
    }
    if room.labels > 0 {
        wanted.labels = usize::try_from(room.labels).map_err(|_| Status::TOO_LONG)?;
        wanted.contents = wanted.labels.checked_mul(job.tanks.len()).ok_or(Status::TOO_LONG)?;
    }
    Ok(wanted)
}

fn add(needed: &mut Needed, planner: Room, room: &hilum_batch_room) -> Answer<()> {
    needed.add::<f64>(planner.numbers)?;
    needed.add::<Fill>(planner.fills)?;
    needed.add::<Pour>(planner.pours)?;
    needed.add::<Label>(planner.labels)?;
    needed.add::<Content>(planner.contents)?;
    needed.add::<Mix>(room.n_mixes)?;
    needed.add::<Portion>(room.n_portions)
}

fn memory<'w>(planner: Room, work: &mut Work<'w>) -> Answer<Memory<'w>> {
    Ok(Memory {
        numbers: work.list(planner.numbers, |_| Ok(0.0))?,
        fills: work.list(planner.fills, |_| Ok(Fill::default()))?,
        pours: work.list(planner.pours, |_| Ok(Pour::default()))?,
        labels: work.list(planner.labels, |_| Ok(Label::default()))?,
        contents: work.list(planner.contents, |_| Ok(Content::default()))?,
    })
}

fn fits(needed: Needed, room: &mut hilum_batch_room) -> Answer<()> {
    if needed.items() <= room.n_work {
        return Ok(());
    }
    room.n_work = needed.items();
    Err(Status::ROOM_TOO_SMALL)
}

/// # Safety
/// The conventions of the header, for all that the job and the room point to.
unsafe fn planned(job: hilum_batch_job, room: &mut hilum_batch_room) -> Result<hilum_batch_summary, Fault> {
    // SAFETY: by the caller.
    let lists = unsafe { Lists::new(job) }?;
    let mut needed = lists.needed()?;
    fits(needed, room)?;
    // SAFETY: by the caller.
    let mut work = unsafe { Work::new(room.work, room.n_work) }?;
    // SAFETY: by the caller.
    let job = unsafe { lists.job(&mut work) }?;
    let planner = wanted(&job, room)?;
    add(&mut needed, planner, room)?;
    fits(needed, room)?;
    let plan = plan(job, memory(planner, &mut work)?)?;
    let (mixes, portions) = plan.room();
    if mixes > room.n_mixes || portions > room.n_portions {
        (room.n_mixes, room.n_portions) = (mixes, portions);
        return Err(Status::ROOM_TOO_SMALL.into());
    }
    let mix_list = work.list(mixes, |_| Ok(Mix::default()))?;
    let portion_list = work.list(portions, |_| Ok(Portion::default()))?;
    let (mixes, portions) = plan.write(mix_list, portion_list)?;
    // SAFETY: by the caller.
    let (mixes_out, portions_out) =
        unsafe { (call::room(room.mixes, mixes)?, call::room(room.portions, portions)?) };
    for (to, from) in mixes_out.iter_mut().zip(mix_list) {
        to.write(hilum_batch_mix::new(from)?);
    }
    for (to, from) in portions_out.iter_mut().zip(portion_list) {
        to.write(hilum_batch_portion::new(from)?);
    }
    if !room.firsts.is_null() {
        // SAFETY: by the caller.
        let firsts = unsafe { call::room(room.firsts, lists.orders.len()) }?;
        for (order, to) in firsts.iter_mut().enumerate() {
            to.write(hilum_batch_first::new(plan.first_seed(order)));
        }
    }
    (room.n_mixes, room.n_portions) = (mixes, portions);
    Ok(plan.summary().into())
}

/// Plans the batches of a job: which mix is made when, from how many sets, for which seed. In this order: all orders
/// treated within the shifts, least living product thrown away, fewest mixes, earliest finish.
///
/// Set the room's lists and their lengths; n_work, n_mixes and n_portions may be 0 at first. On HILUM_ROOM_TOO_SMALL
/// the room says how much is needed: give that and call again, until another status comes (it takes a few
/// calls, since each need is known only when the one before is met).
///
/// Errors: NULL; HILUM_ROOM_TOO_SMALL; HILUM_NO_SUCH_CHOICE; HILUM_BATCH_VALUE, HILUM_BATCH_NEEDS, HILUM_BATCH_TOO_MANY,
/// HILUM_BATCH_TANK_TOO_SMALL. bad may be NULL; the index of the order, need, tank or shift at fault is written to it where
/// a number of one cannot be (hilum_status_subject tells of which), a tank is too small, or its refill is no choice.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn hilum_batch_plan(
    job: Option<&hilum_batch_job>,
    room: Option<&mut hilum_batch_room>,
    out: Option<&mut MaybeUninit<hilum_batch_summary>>,
    bad: Option<&mut MaybeUninit<usize>>,
) -> i32 {
    give(out, || {
        let (job, room) = (need(job)?, room.ok_or(Status::NULL)?);
        // SAFETY: the conventions.
        unsafe { planned(job, room) }.map_err(|fault| fault.told(bad))
    })
}
