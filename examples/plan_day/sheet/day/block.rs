//! One day of shifts as a row of marks.

use chrono::{TimeDelta, Timelike};

use super::Mix;
use crate::clock::Instant;

/// As many marks stand beside each other at most.
const MARKS: i64 = 60;
/// Minutes that one mark may stand for.
const STEPS: [i64; 11] = [5, 10, 15, 20, 30, 60, 120, 240, 480, 720, 1440];
/// Marks that an hour's name and its space take.
const SCALE: i64 = 3;

/// The shifts that begin on one day.
#[derive(Clone, Debug)]
pub(super) struct Block {
    pub(super) shifts: Vec<(Instant, Instant)>,
    pub(super) start: Instant,
    pub(super) end: Instant,
    pub(super) minutes: i64,
}

/// Shifts → days.
pub(super) fn days(shifts: &[(Instant, Instant)]) -> Vec<Block> {
    let same_day = |a: &(Instant, Instant), b: &(Instant, Instant)| a.0.date_naive() == b.0.date_naive();
    shifts.chunk_by(same_day).filter_map(Block::of).collect()
}

impl Block {
    fn of(shifts: &[(Instant, Instant)]) -> Option<Self> {
        let from = shifts.first()?.0;
        let end = shifts.iter().map(|(_, to)| *to).max()?;
        // A whole hour, so that the hours' names stand on marks.
        let into_hour = i64::from(from.minute()).saturating_mul(60).saturating_add(i64::from(from.second()));
        let start = from.checked_sub_signed(TimeDelta::seconds(into_hour))?;
        let span = (end - start).num_minutes();
        let minutes =
            STEPS.into_iter().find(|step| span <= step.saturating_mul(MARKS)).unwrap_or(span / MARKS + 1);
        Some(Self { shifts: shifts.to_vec(), start, end, minutes })
    }

    /// Whether any of a mix's making or running falls on this day.
    pub(super) fn shows(&self, mix: &Mix) -> bool {
        mix.begun < self.end && mix.done > self.start
    }

    /// Whether treating goes on in most of the step that begins at an instant.
    pub(super) fn works(&self, from: Instant) -> bool {
        let middle = from.checked_add_signed(TimeDelta::seconds(self.minutes.saturating_mul(30)));
        middle.is_some_and(|middle| self.shifts.iter().any(|(from, to)| *from <= middle && middle < *to))
    }

    /// Where the step after this one begins.
    pub(super) fn next(&self, from: Instant) -> Instant {
        from.checked_add_signed(TimeDelta::minutes(self.minutes)).unwrap_or(self.end)
    }

    /// One mark for each step.
    pub(super) fn bar(&self, mark: impl Fn(Instant) -> char) -> String {
        self.steps().map(mark).collect()
    }

    /// The names of hours above their marks.
    pub(super) fn scale(&self) -> String {
        // Hours between two names, so that they do not touch.
        let apart = SCALE.saturating_mul(self.minutes).saturating_add(59) / 60;
        let mut scale = String::new();
        for (i, step) in self.steps().enumerate() {
            let hours = (step - self.start).num_minutes();
            if hours % apart.max(1).saturating_mul(60) == 0 && scale.len() <= i {
                scale.push_str(&step.format("%H ").to_string());
            } else if scale.len() <= i {
                scale.push(' ');
            }
        }
        let marks = self.steps().count();
        scale.truncate(marks);
        format!("{scale:marks$}")
    }

    fn steps(&self) -> impl Iterator<Item = Instant> {
        std::iter::successors(Some(self.start), |from| Some(self.next(*from)))
            .take_while(|from| *from < self.end)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::clock::read;

    fn day(from: &str, to: &str) -> Block {
        let at = |time: &str| read(&format!("2027-04-{time}:00+02:00")).unwrap();
        days(&[(at(from), at(to))]).remove(0)
    }

    #[test]
    fn hours_stand_on_their_marks() {
        let block = day("14T06:30", "14T14:30");
        assert_eq!((block.minutes, block.start), (10, read("2027-04-14T06:00:00+02:00").unwrap()));
        assert_eq!(&block.scale()[..15], "06    07    08 ");
        assert_eq!(block.scale().len(), block.bar(|_| 'x').len());
        assert_eq!(&block.bar(|at| if block.works(at) { '=' } else { ' ' })[..5], "   ==");
    }

    #[test]
    fn a_long_shift_takes_coarser_marks() {
        let block = day("14T06:00", "16T06:00");
        assert_eq!(block.minutes, 60);
        assert_eq!(&block.scale()[..9], "06 09 12 ");
        assert_eq!(block.bar(|_| 'x').len(), 48);
    }
}
