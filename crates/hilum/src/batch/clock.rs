//! When is there time to work?
//!
//! The planner counts *work time*: the shift seconds since the first shift began. A night takes none of it.

use super::Shift;
use crate::math::{ceil, floor, max, min};
use crate::quantity::{Mass, MassFlow, Time, mass::kilogram, mass_flow::kilogram_per_second, time::second};

/// Instants nearer than this are the same: instants since 1970 have a grain of 2.4e-7 s.
pub(super) const INSTANT: f64 = 1e-6;

/// The shifts, and the work time before each.
#[derive(Clone, Copy, Debug)]
pub(super) struct Clock<'a> {
    shifts: &'a [Shift],
    /// Work time before each shift; one more for the end of the last.
    before: &'a [f64],
    /// Whole second that instants are counted from inside.
    base: f64,
}

/// Where a mix fits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Slot {
    /// Index of the shift.
    pub(super) shift: usize,
    /// Its start, since the base.
    pub(super) at: f64,
    /// Work time when all of its tanks are ready.
    pub(super) ready: f64,
}

impl<'a> Clock<'a> {
    /// `before` holds one number more than there are shifts.
    pub(super) fn new(shifts: &'a [Shift], before: &'a mut [f64]) -> Self {
        let base = shifts.first().map_or(0.0, |first| floor(first.from.value));
        let mut work = 0.0;
        let mut cells = before.iter_mut();
        for (shift, cell) in shifts.iter().zip(cells.by_ref()) {
            *cell = work;
            work += shift.to.value - shift.from.value;
        }
        if let Some(last) = cells.next() {
            *last = if shifts.is_empty() { f64::INFINITY } else { work };
        }
        Self { shifts, before, base }
    }

    pub(super) fn has_shifts(&self) -> bool {
        !self.shifts.is_empty()
    }

    /// All the work time there is.
    pub(super) fn total(&self) -> f64 {
        self.before.last().copied().unwrap_or(f64::INFINITY)
    }

    fn shift(&self, index: usize) -> Option<(f64, f64, f64)> {
        let shift = self.shifts.get(index)?;
        let before = self.before.get(index)?;
        Some((*before, shift.from.value - self.base, shift.to.value - self.base))
    }

    /// Work time before an instant.
    pub(super) fn work_at(&self, at: f64) -> f64 {
        let next = self.shifts.partition_point(|shift| shift.from.value - self.base <= at);
        match next.checked_sub(1).and_then(|index| self.shift(index)) {
            Some((before, from, to)) => before + at.min(to) - from,
            None => 0.0,
        }
    }

    /// The first instant by which so much work time has passed (the end of a shift, not the start of the next).
    pub(super) fn instant_of(&self, work: f64) -> f64 {
        let next = self.before.partition_point(|before| *before < work - INSTANT);
        match self.shift(next.saturating_sub(1)) {
            Some((before, from, to)) => (from + (work - before)).min(to),
            None => work,
        }
    }

    /// The instant at which work goes on after so much work time (the start of a shift, not the end of the one
    /// before); `None` after the last shift.
    pub(super) fn resumes(&self, work: f64) -> Option<f64> {
        let next = self.before.partition_point(|before| *before <= work + INSTANT);
        let (before, from, _) = self.shift(next.checked_sub(1)?)?;
        Some(from + (work - before).max(0.0))
    }

    /// The last whole second up to a work time, as work time.
    pub(super) fn whole_second(&self, work: f64) -> f64 {
        let next = self.before.partition_point(|before| *before < work - INSTANT);
        match self.shift(next.saturating_sub(1)) {
            Some((before, from, _)) => before + floor(from + (work - before) + INSTANT) - from,
            None => work,
        }
    }

    /// Work time at which the shift began that goes on after so much work time.
    pub(super) fn shift_start(&self, work: f64) -> f64 {
        let next = self.before.partition_point(|before| *before <= work + INSTANT);
        next.checked_sub(1).and_then(|index| self.before.get(index)).copied().unwrap_or(0.0)
    }

    /// The first place for a mix at or after a work time.
    pub(super) fn slot(&self, work: f64, mixing: f64) -> Option<Slot> {
        if !self.has_shifts() {
            return Some(Slot { shift: 0, at: work, ready: work });
        }
        let next = self.before.partition_point(|before| *before <= work);
        let index = next.saturating_sub(1);
        let (before, from, to) = self.shift(index)?;
        let at = ceil(from + (work - before) - INSTANT);
        if at + mixing <= to + INSTANT {
            return Some(Slot { shift: index, at, ready: (before + at + mixing - from).max(work) });
        }
        self.slot_from(next, mixing)
    }

    /// The first place for a mix at the start of a shift, from this shift on.
    pub(super) fn slot_from(&self, shift: usize, mixing: f64) -> Option<Slot> {
        (shift..self.shifts.len()).find_map(|index| {
            let (before, from, to) = self.shift(index)?;
            let at = ceil(from - INSTANT);
            let ready = before + at + mixing - from;
            (at + mixing <= to + INSTANT).then_some(Slot { shift: index, at, ready })
        })
    }

    /// The last place for a mix that starts before a work time, and after another.
    pub(super) fn slot_before(&self, after: f64, before: f64, mixing: f64) -> Option<Slot> {
        let last = self.before.partition_point(|start| *start < before);
        for index in (0..last).rev() {
            let (start, from, to) = self.shift(index)?;
            let at = floor(to - mixing + INSTANT).min(ceil(from + (before - start) - INSTANT) - 1.0);
            let work = start + at - from;
            if work <= after + INSTANT {
                return None;
            }
            if at >= from {
                return Some(Slot { shift: index, at, ready: work + mixing });
            }
        }
        None
    }

    /// Work time until which a mix may be used.
    pub(super) fn expiry(&self, mixed_at: f64, pot_life: f64) -> f64 {
        if self.has_shifts() { self.work_at(floor(mixed_at + pot_life + INSTANT)) } else { f64::INFINITY }
    }

    /// An instant as the caller counts them.
    pub(super) fn caller(&self, at: f64) -> f64 {
        at + self.base
    }
}

/// How much work time lies between two instants? The shift time from `from` until `to`; 0 if `to` is not later.
///
/// ```
/// use hilum::batch::{Shift, work_between};
/// use hilum::quantity::{Time, time::hour};
/// let h = Time::new::<hour>;
/// let days = [Shift { from: h(8.0), to: h(17.0) }, Shift { from: h(32.0), to: h(41.0) }];
/// // From three o'clock in the afternoon to nine the next morning: two hours and one.
/// assert_eq!(work_between(h(15.0), h(33.0), &days), h(3.0));
/// ```
#[must_use]
pub fn work_between(from: Time, to: Time, shifts: &[Shift]) -> Time {
    let seconds = shifts
        .iter()
        .map(|shift| max(min(shift.to.value, to.value) - max(shift.from.value, from.value), 0.0))
        .sum();
    Time::new::<second>(seconds)
}

/// How much seed can be run in one pot life, at the best moment to mix?
///
/// speed × max over t of (work time in t…t + `pot_life`, less mixing), t in a shift that the mixing fits into.
/// In a shift the earliest moment is the best, so the starts of the shifts are all that is looked at; t counts
/// in whole seconds, as does the end of the pot life. Without shifts: speed × (`pot_life` − mixing).
///
/// ```
/// use hilum::batch::{Shift, most_treatable};
/// use hilum::quantity::{Mass, MassFlow, Time, mass::kilogram, mass_flow::kilogram_per_second, time::{hour, minute}};
/// let h = Time::new::<hour>;
/// let days = [Shift { from: h(8.0), to: h(12.0) }, Shift { from: h(32.0), to: h(41.0) }];
/// let speed = MassFlow::new::<kilogram_per_second>(2.0);
/// // Worked by hand: six hours from the second morning, less a quarter of an hour: 20 700 s at 2 kg/s.
/// let most = most_treatable(h(6.0), Time::new::<minute>(15.0), &days, speed);
/// assert_eq!(most, Mass::new::<kilogram>(41_400.0));
/// ```
#[must_use]
pub fn most_treatable(pot_life: Time, mixing: Time, shifts: &[Shift], speed: MassFlow) -> Mass {
    let speed = speed.get::<kilogram_per_second>();
    let (life, mixing) = (pot_life.value, mixing.value);
    let best = if shifts.is_empty() {
        floor(life + INSTANT) - mixing
    } else {
        shifts.iter().map(|shift| usable(*shift, life, mixing, shifts)).fold(0.0, max)
    };
    Mass::new::<kilogram>(max(best * speed, 0.0))
}

/// Seconds of work between ready and expired, when mixed first thing in this shift.
fn usable(shift: Shift, life: f64, mixing: f64, shifts: &[Shift]) -> f64 {
    let at = ceil(shift.from.value - INSTANT);
    if at + mixing > shift.to.value + INSTANT {
        return 0.0;
    }
    let (at, end) = (Time::new::<second>(at), Time::new::<second>(floor(at + life + INSTANT)));
    work_between(at, end, shifts).value - mixing
}

#[cfg(test)]
mod tests {
    extern crate std;

    use super::*;
    use crate::quantity::time::hour;

    /// Eight to twelve and one to five, counted from midnight; six to ten the next day.
    fn days() -> [Shift; 3] {
        let shift = |from, to| Shift { from: Time::new::<hour>(from), to: Time::new::<hour>(to) };
        [shift(8.0, 12.0), shift(13.0, 17.0), shift(30.0, 34.0)]
    }

    const HOUR: f64 = 3600.0;

    #[test]
    fn work_time_stands_still_at_night() {
        let (shifts, mut before) = (days(), [0.0; 4]);
        let clock = Clock::new(&shifts, &mut before);
        assert_eq!(clock.total().to_bits(), (12.0 * HOUR).to_bits());
        // Instants count from eight o'clock.
        for (at, work) in
            [(-1.0, 0.0), (2.0, 2.0), (4.5, 4.0), (6.0, 5.0), (20.0, 8.0), (23.0, 9.0), (99.0, 12.0)]
        {
            assert!((clock.work_at(at * HOUR) - work * HOUR).abs() < 1e-9, "{at}");
        }
        // Four hours of work are over at noon, and go on at one.
        assert!((clock.instant_of(4.0 * HOUR) - 4.0 * HOUR).abs() < 1e-9);
        assert!((clock.resumes(4.0 * HOUR).unwrap() - 5.0 * HOUR).abs() < 1e-9);
        assert_eq!(clock.resumes(12.0 * HOUR), None);
    }

    #[test]
    fn a_mix_lies_within_one_shift() {
        let (shifts, mut before) = (days(), [0.0; 4]);
        let clock = Clock::new(&shifts, &mut before);
        // Half past eleven: half an hour fits, an hour does not and waits until one.
        let slot = clock.slot(3.5 * HOUR, 0.5 * HOUR).unwrap();
        assert_eq!((slot.shift, slot.at.to_bits()), (0, (3.5 * HOUR).to_bits()));
        let slot = clock.slot(3.5 * HOUR, HOUR).unwrap();
        assert_eq!(
            (slot.shift, slot.at.to_bits(), slot.ready.to_bits()),
            (1, (5.0 * HOUR).to_bits(), (5.0 * HOUR).to_bits())
        );
        // On a whole second; five hours fit nowhere.
        assert_eq!(clock.slot(10.25, 60.0).unwrap().at.to_bits(), 11.0_f64.to_bits());
        assert_eq!(clock.slot(0.0, 5.0 * HOUR), None);
        // The last hour before five in the afternoon starts at four; before noon the last one starts at eleven.
        assert_eq!(clock.slot_before(0.0, 8.0 * HOUR, HOUR).unwrap().at.to_bits(), (8.0 * HOUR).to_bits());
        assert_eq!(clock.slot_before(0.0, 4.0 * HOUR, HOUR).unwrap().at.to_bits(), (3.0 * HOUR).to_bits());
        assert_eq!(clock.slot_before(3.5 * HOUR, 4.0 * HOUR, HOUR), None);
    }

    // The second shift begins a quarter of a second late, so that whole seconds of the clock are none of work.
    #[test]
    fn whole_seconds_are_of_the_clock() {
        let (mut shifts, mut before) = (days(), [0.0; 4]);
        shifts[1].from = Time::new::<second>(13.0 * HOUR + 0.25);
        let clock = Clock::new(&shifts, &mut before);
        let noon = 4.0 * HOUR;
        for (work, whole) in [(10.75, 10.0), (11.0, 11.0), (noon, noon), (noon + 1.5, noon + 0.75)] {
            assert!((clock.whole_second(work) - whole).abs() < 1e-9, "{work}");
        }
        for (work, start) in [(0.0, 0.0), (noon - 1.0, 0.0), (noon, noon), (noon + 9.0, noon)] {
            assert!((clock.shift_start(work) - start).abs() < 1e-9, "{work}");
        }
        // Four hours fit into the second shift to the second, and the last mix before ten begins a second before it.
        assert_eq!(Clock::new(&days(), &mut before).slot(3.5 * HOUR, noon).map(|slot| slot.shift), Some(1));
        let slot = Clock::new(&days(), &mut before).slot_before(0.0, 2.0 * HOUR, 60.0).unwrap();
        assert_eq!(slot.at.to_bits(), (2.0 * HOUR - 1.0).to_bits());
    }

    // Worked by hand, at 1 kg/s: six hours less a quarter; 100 of 100.7 s less 10; ten minutes of mixing in a shift of ten
    // leave three hours of the next, where five would not do and the next itself loses ten.
    #[test]
    fn the_most_that_a_mix_can_treat() {
        let most = |life: f64, mixing: f64, shifts: &[(f64, f64)]| {
            let shift = |(from, to): &(f64, f64)| Shift {
                from: Time::new::<hour>(*from),
                to: Time::new::<hour>(*to),
            };
            let shifts: std::vec::Vec<Shift> = shifts.iter().map(shift).collect();
            let (life, mixing) = (Time::new::<second>(life), Time::new::<second>(mixing));
            most_treatable(life, mixing, &shifts, MassFlow::new::<kilogram_per_second>(1.0)).get::<kilogram>()
        };
        let is = |kg: f64, expected: f64| assert!((kg - expected).abs() < 1e-6, "{kg} is not {expected}");
        is(most(6.0 * HOUR, 900.0, &[]), 20_700.0);
        is(most(100.7, 10.0, &[]), 90.0);
        is(most(6.0 * HOUR, 600.0, &[(8.0, 8.0 + 1.0 / 6.0), (9.0, 12.0)]), 10_800.0);
        is(most(6.0 * HOUR, 600.0, &[(8.0, 8.0 + 1.0 / 12.0), (9.0, 12.0)]), 10_200.0);
        is(most(HOUR, 600.0, &[(8.0, 12.0)]), 3_000.0);
    }

    #[test]
    fn a_pot_life_counts_the_night() {
        let (shifts, mut before) = (days(), [0.0; 4]);
        let clock = Clock::new(&shifts, &mut before);
        // Mixed at four in the afternoon, good for fifteen hours: until seven the next morning.
        assert!((clock.expiry(8.0 * HOUR, 15.0 * HOUR) - 9.0 * HOUR).abs() < 1e-9);
    }
}
