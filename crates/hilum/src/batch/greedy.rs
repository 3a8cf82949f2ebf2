//! A valid plan, quickly: every tank as full as it can be used.

use super::step::{Content, Leg, Plant, Pour};
use super::{Counted, Error, MAX_TANKS};

/// How far a plan got.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Reach {
    /// Pours that were decided.
    pub(super) pours: usize,
    /// Seed treated.
    pub(super) position: f64,
    /// Work time when the last seed has passed.
    pub(super) finish: f64,
}

/// The greedy walk.
pub(super) struct Walk<'a, 'b> {
    plant: &'b Plant<'a>,
    contents: [Content; MAX_TANKS],
    position: f64,
    work: f64,
    finish: f64,
}

/// Plans one stop after the other.
pub(super) fn plan(plant: &Plant<'_>, pours: &mut [Pour]) -> Result<Reach, Error> {
    let contents = [Content::default(); MAX_TANKS];
    let mut walk = Walk { plant, contents, position: 0.0, work: 0.0, finish: 0.0 };
    let mut count = 0;
    // Pours since the last seed passed: dropped if no more does.
    let mut useful = 0;
    let mut idle = 0;
    while walk.position < plant.line.end() && idle <= plant.tanks.len() {
        let before = walk.position;
        let Some(poured) = walk.stop(pours, count)? else { break };
        count = poured;
        let Leg { to, arrival, work } = plant.leg(walk.position, walk.work, walk.contents());
        (walk.position, walk.work) = (to, work);
        if to > before {
            (useful, idle, walk.finish) = (count, 0, arrival);
        } else {
            idle += 1;
        }
        if work > plant.clock.total() {
            break;
        }
    }
    Ok(Reach { pours: useful, position: walk.position, finish: walk.finish })
}

impl Walk<'_, '_> {
    fn contents(&self) -> &[Content] {
        self.contents.get(..self.plant.tanks.len()).unwrap_or(&[])
    }

    fn due(&self) -> u32 {
        let due = |(tank, content)| self.plant.is_due(tank, self.position, self.work, content);
        self.contents().iter().enumerate().filter(|it| due((it.0, it.1))).map(|(tank, _)| 1 << tank).sum()
    }

    /// Mixes what is due; none when the shifts are over.
    fn stop(&mut self, pours: &mut [Pour], count: usize) -> Result<Option<usize>, Error> {
        let due = self.due();
        if due == 0 {
            return Ok(Some(count));
        }
        let mixing = tanks(due).map(|tank| self.plant.mixing(tank)).fold(0.0, f64::max);
        let Some(mut slot) = self.plant.clock.slot(self.work, mixing) else { return Ok(None) };
        loop {
            let mut next = count;
            let mut contents = self.contents;
            for tank in tanks(due) {
                let (fill, content) = self.choose(tank, slot.at, slot.ready)?;
                let limit = pours.len();
                let cell = pours.get_mut(next).ok_or(Error::TooMany { counted: Counted::Mixes, limit })?;
                *cell = Pour { position: self.position, at: slot.at, tank: number(tank), fill: number(fill) };
                if let Some(cell) = contents.get_mut(tank) {
                    *cell = content;
                }
                next += 1;
            }
            let lives =
                tanks(due).all(|tank| contents.get(tank).is_some_and(|content| content.expires > slot.ready));
            if lives {
                (self.contents, self.work) = (contents, slot.ready);
                return Ok(Some(next));
            }
            match self.plant.clock.slot_from(slot.shift + 1, mixing) {
                Some(later) => slot = later,
                None => return Ok(None),
            }
        }
    }

    /// As much as will be used, and no more if that can be helped.
    fn choose(&self, tank: usize, at: f64, ready: f64) -> Result<(usize, Content), Error> {
        let plant = self.plant;
        let before = self.contents.get(tank).copied().unwrap_or_default();
        let most = plant.mixed(tank, self.position, at, None, &before);
        if !plant.is_sets(tank, plant.line.order_at(self.position)) {
            return Ok((0, most));
        }
        let share = plant.living(tank, self.position);
        let usable = plant.position_at(self.position, ready, most.expires.min(plant.clock.total()));
        let used = plant.line.slurry(tank, usable);
        let wanted = (used.min(most.recipe) - most.from + most.hold_up) * share;
        let fills = plant.fills.get(tank).copied().unwrap_or(super::fill::Fills::NONE);
        let slack = 1.0 + super::line::SLACK;
        let largest = plant.tank(tank).map_or(0.0, |it| it.capacity.value) * share * slack;
        let top = fills.at_most(largest).ok_or(Error::TankTooSmall { tank })?;
        let enough = fills.at_least(wanted / slack).filter(|fill| *fill <= top);
        let below = fills
            .at_most(wanted)
            .filter(|it| leaves_seed(&fills, *it, most.hold_up * share))
            .map(|it| it.min(top));
        let fill = if used >= most.recipe { enough.or(below) } else { below.or(enough) }.unwrap_or(top);
        let slurry = fills.get(fill).map(|fill| fill.living / share);
        Ok((fill, plant.mixed(tank, self.position, at, slurry, &before)))
    }
}

/// More than the lines take.
fn leaves_seed(fills: &super::fill::Fills<'_>, fill: usize, lines: f64) -> bool {
    fills.get(fill).is_some_and(|fill| fill.living > lines * (1.0 + super::line::SLACK))
}

/// The tanks of a set.
pub(super) fn tanks(set: u32) -> impl Iterator<Item = usize> + Clone {
    (0..MAX_TANKS).filter(move |tank| set & (1 << tank) != 0)
}

fn number(index: usize) -> u32 {
    u32::try_from(index).unwrap_or(u32::MAX)
}
