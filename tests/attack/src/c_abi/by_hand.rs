//! Calls whose arguments point to structures that point further.

use std::ffi::CStr;

use arbitrary::Result;

use super::calls::{
    hilum_account_json, hilum_batch_first, hilum_batch_job, hilum_batch_mix, hilum_batch_need,
    hilum_batch_order, hilum_batch_plan, hilum_batch_portion, hilum_batch_room, hilum_batch_set,
    hilum_batch_shift, hilum_batch_summary, hilum_batch_tank, hilum_plan_json, hilum_status_message,
    hilum_status_subject, hilum_work,
};
use super::{Source, Value, filled};

const ROOM_TOO_SMALL: i32 = 6;
const REFUSED: i32 = 400;
/// Whoever asks for room is told within so many calls.
const ASKED: usize = 8;

/// The words for a status are there, and are text.
pub(super) fn messages(status: i32) {
    // SAFETY: static texts.
    let (message, subject) = unsafe { (hilum_status_message(status), hilum_status_subject(status)) };
    for text in [message, subject] {
        assert!(!text.is_null());
        // SAFETY: as above, ended by NUL.
        assert!(unsafe { CStr::from_ptr(text.cast()) }.to_str().is_ok());
    }
}

pub(super) fn status(source: &mut Source<'_, '_>) -> Result<()> {
    messages(source.from.arbitrary()?);
    Ok(())
}

/// Half of the numbers are those of a shed, so that a plan comes out now and then.
fn batch_parts(source: &mut Source<'_, '_>, n: [usize; 3], plain: bool) -> Result<Parts> {
    let [n_orders, n_tanks, n_shifts] = n;
    let mut parts = Parts {
        orders: source.values(n_orders)?,
        sets: source.values(3)?,
        tanks: Vec::new(),
        needs: source.values(n_orders * n_tanks)?,
        shifts: source.values(n_shifts)?,
    };
    let mut step = |scale: f64| Ok(f64::from(source.from.arbitrary::<u8>()?) * scale);
    if plain {
        for order in &mut parts.orders {
            (order.mass.kg, order.speed.kg_per_s, order.changeover.s) =
                (100.0 + step(40.0)?, 0.5 + step(0.01)?, step(3.0)?);
        }
        for set in &mut parts.sets {
            (set.adds.m3, set.ranks) = (1e-3 + step(1e-4)?, [step(1.0)?, 0.0]);
        }
        for need in &mut parts.needs {
            (need.per_mass.m3_per_kg, need.living) = (1e-6 + step(2e-8)?, step(1.0 / 255.0)?);
        }
        let mut at = 0.0;
        for shift in &mut parts.shifts {
            shift.from.s = at + step(200.0)?;
            at = shift.from.s + 100.0 + step(200.0)?;
            shift.to.s = at;
        }
    }
    for _ in 0..n_tanks {
        let n_sets = usize::from(source.from.arbitrary::<bool>()?) * parts.sets.len();
        let mut tank = hilum_batch_tank {
            capacity: source.value()?,
            hold_up: source.value()?,
            mixing: source.value()?,
            pot_life: source.value()?,
            sets: if n_sets > 0 { parts.sets.as_ptr() } else { core::ptr::null() },
            n_sets,
            refill: Value::made(source)?,
        };
        if plain {
            tank.capacity.m3 = 0.02 + f64::from(source.from.arbitrary::<u8>()?) * 1e-3;
            tank.hold_up.m3 = f64::from(source.from.arbitrary::<u8>()?) * 1e-5;
            tank.mixing.s = f64::from(source.from.arbitrary::<u8>()?) * 4.0;
            tank.pot_life.s = f64::from(source.from.arbitrary::<u8>()?) * 300.0;
            tank.refill = 1 + i32::from(source.from.arbitrary::<bool>()?);
        }
        parts.tanks.push(tank);
    }
    Ok(parts)
}

struct Parts {
    orders: Box<[hilum_batch_order]>,
    sets: Box<[hilum_batch_set]>,
    tanks: Vec<hilum_batch_tank>,
    needs: Box<[hilum_batch_need]>,
    shifts: Box<[hilum_batch_shift]>,
}

/// Plans batches, and gives what room is asked for.
pub(super) fn batch(source: &mut Source<'_, '_>) -> Result<()> {
    let plain = source.from.arbitrary()?;
    let n = [
        source.from.int_in_range(0..=4)?,
        source.from.int_in_range(0..=3)?,
        source.from.int_in_range(0..=3)?,
    ];
    let parts = batch_parts(source, n, plain)?;
    let job = hilum_batch_job {
        orders: source.lent(parts.orders.as_ptr())?,
        n_orders: parts.orders.len(),
        tanks: source.lent(parts.tanks.as_ptr())?,
        n_tanks: parts.tanks.len(),
        needs: source.lent(parts.needs.as_ptr())?,
        n_needs: parts.needs.len(),
        shifts: source.lent(parts.shifts.as_ptr())?,
        n_shifts: parts.shifts.len(),
    };
    let (pours, labels) = (source.from.int_in_range(0..=2048)?, source.from.int_in_range(0..=1024)?);
    let (mut n_work, mut n_mixes, mut n_portions) = (0, 0, 0);
    for asked in 0.. {
        let mut work = vec![hilum_work { opaque: [0xA5A5; 3] }; n_work].into_boxed_slice();
        let mut mixes = filled::<hilum_batch_mix>(n_mixes);
        let mut portions = filled::<hilum_batch_portion>(n_portions);
        let mut firsts = filled::<hilum_batch_first>(parts.orders.len());
        let mut summary = filled::<hilum_batch_summary>(1);
        let mut room = hilum_batch_room {
            work: work.as_mut_ptr(),
            n_work,
            mixes: mixes.as_mut_ptr(),
            n_mixes,
            portions: portions.as_mut_ptr(),
            n_portions,
            firsts: firsts.as_mut_ptr(),
            pours,
            labels,
        };
        // SAFETY: every pointer is NULL or points to as many values as are told.
        let status = unsafe {
            hilum_batch_plan(&raw const job, &raw mut room, summary.as_mut_ptr(), std::ptr::null_mut())
        };
        source.told(status);
        source.written(&summary, status);
        if status == ROOM_TOO_SMALL {
            assert!(asked < ASKED, "room is asked for again and again");
            assert!((room.n_work, room.n_mixes, room.n_portions) > (n_work, n_mixes, n_portions));
            assert!(room.n_work < 4_000_000 && room.n_mixes < 200_000 && room.n_portions < 400_000);
            (n_work, n_mixes, n_portions) =
                (room.n_work.max(n_work), room.n_mixes.max(n_mixes), room.n_portions.max(n_portions));
            continue;
        }
        if status == 0 {
            assert!(mixes[..room.n_mixes].iter().all(Value::is_sound));
            assert!(portions[..room.n_portions].iter().all(Value::is_sound));
            assert!(firsts.iter().all(Value::is_sound));
        }
        return Ok(());
    }
    Ok(())
}

/// A document in, a document or a list of problems out, by asking for the length first or by a guess.
pub(super) fn document(source: &mut Source<'_, '_>) -> Result<()> {
    const JOB: &str = include_str!("../../../tests/documents/sound.json");
    const RUN: &str = include_str!("../../../tests/documents/run.json");
    let is_job: bool = source.from.arbitrary()?;
    let mut text: Box<[u8]> = if is_job { JOB } else { RUN }.as_bytes().into();
    for _ in 0..source.from.int_in_range(0..=4)? {
        let at = source.from.choose_index(text.len())?;
        text[at] = source.from.arbitrary()?;
    }
    let mut capacity = source.from.int_in_range(0..=20_000)?;
    loop {
        let mut out = filled::<u8>(capacity);
        let mut length = 0;
        let call = if is_job { hilum_plan_json } else { hilum_account_json };
        // SAFETY: text and room are as long as told.
        let status = unsafe { call(text.as_ptr(), text.len(), out.as_mut_ptr(), capacity, &raw mut length) };
        source.told(status);
        match status {
            ROOM_TOO_SMALL => {
                assert!(length > capacity && out.iter().all(|byte| *byte == super::FILL));
                capacity = length;
            }
            0 | REFUSED => {
                let written = core::str::from_utf8(&out[..length]).expect("UTF-8");
                serde_json::from_str::<serde_json::Value>(written).expect("JSON");
                return Ok(());
            }
            _ => return Ok(()),
        }
    }
}
