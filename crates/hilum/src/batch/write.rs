//! From what was decided to what is told.

use super::clock::INSTANT;
use super::line::SLACK;
use super::step::{Content, Kind, Plant, Pour};
use super::{Counted, Error, MAX_SIZES, MAX_TANKS, Mix, Portion, Times, tanks};
use crate::math::{ceil, floor};
use crate::quantity::{Mass, Time, Volume, mass::kilogram, time::second, volume::cubic_meter};

/// Writes mixes and portions.
pub(super) struct Writer<'a, 'b> {
    plant: &'b Plant<'a>,
    pours: &'b [Pour],
    /// Position of the last treated seed.
    end: f64,
    mixes: &'b mut [Mix],
    portions: &'b mut [Portion],
    mix_count: usize,
    portion_count: usize,
    /// Mixes so far of every tank.
    numbers: [u32; MAX_TANKS],
}

/// A pour, and until where its tank uses it.
#[derive(Clone, Copy, Debug)]
struct Span {
    pour: Pour,
    tank: usize,
    to: f64,
    hold_up: f64,
}

/// How many batches the pours make: a tank that is topped up makes several of one.
pub(super) fn count(plant: &Plant<'_>, pours: &[Pour], end: f64) -> f64 {
    let mut mixes = 0.0;
    each_span(plant, pours, end, |span| {
        mixes += top_ups(plant, &span);
        Ok(())
    })
    .map_or(f64::INFINITY, |()| mixes)
}

/// Calls `tell` for every pour, once it is known where its tank's next one comes.
fn each_span(
    plant: &Plant<'_>,
    pours: &[Pour],
    end: f64,
    mut tell: impl FnMut(Span) -> Result<(), Error>,
) -> Result<(), Error> {
    let mut open: [Option<Span>; MAX_TANKS] = [None; MAX_TANKS];
    for pour in pours {
        let tank = usize::try_from(pour.tank).unwrap_or(usize::MAX);
        let Some(cell) = open.get_mut(tank) else { continue };
        let mut hold_up = plant.tank(tank).map_or(0.0, |tank| tank.hold_up.value);
        if let Some(mut span) = cell.take() {
            span.to = pour.position;
            let before = content(plant, &span);
            hold_up = plant.hold_up(tank, pour.position, &before);
            tell(span)?;
        }
        *cell = Some(Span { pour: *pour, tank, to: end, hold_up });
    }
    open.into_iter().flatten().try_for_each(tell)
}

/// Slurry poured, where whole sets say it.
fn poured(plant: &Plant<'_>, span: &Span) -> Option<f64> {
    let fill = plant.sets_in(&span.pour, span.tank)?;
    Some(fill.living / plant.living(span.tank, span.pour.position))
}

fn content(plant: &Plant<'_>, span: &Span) -> Content {
    let recipe = plant.line.recipe_end(span.tank, plant.line.order_at(span.pour.position));
    let from = plant.line.slurry(span.tank, span.pour.position);
    let used = plant.line.slurry(span.tank, span.to);
    let end = poured(plant, span).map_or(used, |slurry| from + slurry - span.hold_up);
    let kind = if poured(plant, span).is_some() { Kind::Sets } else { Kind::Measured };
    Content { recipe, from, end, hold_up: span.hold_up, expires: 0.0, kind, opened: [0; MAX_SIZES] }
}

/// Batches of one pour.
fn top_ups(plant: &Plant<'_>, span: &Span) -> f64 {
    if !plant.tops_up(span.tank) {
        return 1.0;
    }
    let content = content(plant, span);
    let capacity = plant.tank(span.tank).map_or(0.0, |tank| tank.capacity.value);
    ceil((content.end - content.from + span.hold_up) / capacity - SLACK).max(1.0)
}

impl<'a, 'b> Writer<'a, 'b> {
    pub(super) fn new(
        plant: &'b Plant<'a>,
        pours: &'b [Pour],
        end: f64,
        mixes: &'b mut [Mix],
        portions: &'b mut [Portion],
    ) -> Self {
        Self { plant, pours, end, mixes, portions, mix_count: 0, portion_count: 0, numbers: [0; MAX_TANKS] }
    }

    /// How many mixes and portions were written.
    pub(super) fn write(mut self) -> Result<(usize, usize), Error> {
        let (plant, pours, end) = (self.plant, self.pours, self.end);
        each_span(plant, pours, end, |span| self.span(&span))?;
        Ok((self.mix_count, self.portion_count))
    }

    fn span(&mut self, span: &Span) -> Result<(), Error> {
        let whole = content(self.plant, span);
        let used = self.plant.line.slurry(span.tank, span.to).min(whole.end).min(whole.recipe);
        let mixes = top_ups(self.plant, span);
        // The lines are filled out of the first one: it leaves some seed to treat, too.
        let each = (used - whole.from + span.hold_up) / mixes;
        let first = if each > span.hold_up + self.plant.slack(span.tank) || mixes < 2.0 {
            each
        } else {
            (span.hold_up + (used - whole.from) / mixes).min(self.plant.capacity(span.tank))
        };
        let others = (used - whole.from + span.hold_up - first) / (mixes - 1.0).max(1.0);
        let (mut from, mut start) = (whole.from, span.pour.position);
        let mut done = 0.0;
        while done < mixes {
            let last = done + 1.0 >= mixes;
            let (hold_up, fill) = if done > 0.0 { (0.0, others) } else { (span.hold_up, first) };
            let to = if last { used } else { from + fill - hold_up };
            let end = if last {
                span.to
            } else {
                self.plant.line.beyond(span.tank, to, self.plant.slack(span.tank))
            };
            let times = if done > 0.0 { self.topped_up(span, start, end) } else { self.times(span, end) };
            self.put(Mix { times, ..self.mix(span, hold_up, to - from) }, start, end)?;
            (from, start) = (to, end);
            done += 1.0;
        }
        Ok(())
    }

    fn mix(&self, span: &Span, hold_up: f64, applied: f64) -> Mix {
        let plant = self.plant;
        let slack = plant.slack(span.tank);
        let discarded = poured(plant, span).map_or(0.0, |slurry| slurry - hold_up - applied);
        let discarded = if discarded > slack { discarded } else { 0.0 };
        let sets = plant.sets_in(&span.pour, span.tank).map_or([0; MAX_SIZES], |fill| fill.sets);
        let volume = Volume::new::<cubic_meter>;
        Mix {
            tank: span.tank,
            number: 0,
            times: None,
            mixed: volume(applied + hold_up + discarded),
            sets,
            applied: volume(applied),
            hold_up: volume(hold_up),
            discarded: volume(discarded),
        }
    }

    fn times(&self, span: &Span, end: f64) -> Option<Times> {
        let (plant, clock) = (self.plant, &self.plant.clock);
        clock.has_shifts().then(|| {
            let at = clock.caller(span.pour.at);
            let time = Time::new::<second>;
            let use_by = plant.pot_life(span.tank).map(|life| time(floor(at + life + INSTANT)));
            let done = self.instant_at(span.tank, end);
            Times {
                mix_at: time(at),
                ready_at: time(at + plant.mixing(span.tank)),
                use_by,
                done_at: use_by.map_or(done, |use_by| time(done.value.min(use_by.value))),
            }
        })
    }

    /// A refill beside running: ready when the one before is used up, within one shift.
    fn topped_up(&self, span: &Span, start: f64, end: f64) -> Option<Times> {
        let clock = &self.plant.clock;
        if !clock.has_shifts() {
            return None;
        }
        let mixing = self.plant.mixing(span.tank);
        let work = self.work_at(start);
        let at = clock
            .slot_before(f64::NEG_INFINITY, work - mixing + 2.0 * INSTANT, mixing)
            .map_or(span.pour.at, |slot| slot.at);
        let at = clock.caller(at);
        let time = Time::new::<second>;
        let done_at = self.instant_at(span.tank, end);
        Some(Times { mix_at: time(at), ready_at: time(at + mixing), use_by: None, done_at })
    }

    /// Work time when the last seed before a position has passed.
    fn work_at(&self, position: f64) -> f64 {
        let plant = self.plant;
        let next = self.pours.partition_point(|pour| pour.position < position);
        let (from, ready) = plant.left(self.pours.get(..next).unwrap_or(&[]));
        plant.leg_to(from, ready, position).arrival
    }

    fn instant_at(&self, tank: usize, position: f64) -> Time {
        let work = self.work_at(self.plant.line.last_need(tank, position));
        Time::new::<second>(self.plant.clock.caller(self.plant.clock.instant_of(work)))
    }

    fn put(&mut self, mut mix: Mix, start: f64, end: f64) -> Result<(), Error> {
        let limit = self.mixes.len();
        if let Some(number) = self.numbers.get_mut(mix.tank) {
            *number += 1;
            mix.number = *number;
        }
        let cell =
            self.mixes.get_mut(self.mix_count).ok_or(Error::TooMany { counted: Counted::Mixes, limit })?;
        *cell = mix;
        let (first, last) = (self.plant.line.order_at(start), self.plant.line.order_at(end));
        for order in first..=last {
            let from = self.plant.line.start_of(order).max(start);
            let to = self.plant.line.start_of(order + 1).min(end);
            if to > from && self.plant.line.need(order, mix.tank).is_some() {
                self.portion(order, to - from)?;
            }
        }
        self.mix_count += 1;
        Ok(())
    }

    fn portion(&mut self, order: usize, mass: f64) -> Result<(), Error> {
        let limit = self.portions.len();
        let cell = self
            .portions
            .get_mut(self.portion_count)
            .ok_or(Error::TooMany { counted: Counted::Portions, limit })?;
        *cell = Portion { mix: self.mix_count, order, mass: Mass::new::<kilogram>(mass) };
        self.portion_count += 1;
        Ok(())
    }
}

/// Sets of one size opened in all.
pub(super) fn opened(plant: &Plant<'_>, pours: &[Pour], tank: usize, size: usize) -> u64 {
    pours
        .iter()
        .filter(|pour| usize::try_from(pour.tank) == Ok(tank))
        .filter_map(|pour| plant.sets_in(pour, tank))
        .map(|fill| fill.sets.get(size).map_or(0, |count| u64::from(*count)))
        .sum()
}

/// The tanks of which more sets are opened than are on the shelf.
pub(super) fn beyond_stock(plant: &Plant<'_>, pours: &[Pour]) -> u32 {
    let short = |tank: usize| {
        let Some(it) = plant.tank(tank) else { return false };
        let sizes = super::fill::sizes(it).iter().enumerate();
        sizes
            .filter_map(|(size, set)| set.stock.map(|stock| (size, stock)))
            .any(|(size, stock)| opened(plant, pours, tank, size) > u64::from(stock))
    };
    tanks(u32::MAX).filter(|tank| short(*tank)).map(|tank| 1 << tank).sum()
}
