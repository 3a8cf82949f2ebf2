//! What happens from one stop to the next?

use super::clock::{Clock, INSTANT};
use super::fill::{self, Fill, Fills, Keep};
use super::line::{Line, SLACK};
use super::node::Node;
use super::{MAX_SIZES, MAX_TANKS, Refill, Tank, tanks};

/// How a tank's mix was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub(super) enum Kind {
    /// There is none yet.
    #[default]
    None,
    /// By measure: it will turn out to be as much as is used.
    Measured,
    /// Of whole sets.
    Sets,
    /// By measure, and refilled beside running.
    ToppedUp,
}

/// What is in a tank.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Content {
    /// The recipe, known by the slurry used until its end; 0 before the first mix.
    pub(super) recipe: f64,
    /// Slurry used when it was mixed.
    pub(super) from: f64,
    /// Slurry used when it will be used up.
    pub(super) end: f64,
    /// What went into empty lines.
    pub(super) hold_up: f64,
    /// Work time until which it may be used.
    pub(super) expires: f64,
    pub(super) kind: Kind,
    /// Sets of each size opened so far for the tank.
    pub(super) opened: [u32; MAX_SIZES],
}

impl Content {
    /// The same mix, of so much slurry in whole sets.
    pub(super) fn of_sets(self, slurry: f64) -> Self {
        Self { end: self.from + slurry - self.hold_up, kind: Kind::Sets, ..self }
    }
}

/// One tank's mix, as decided.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Pour {
    pub(super) position: f64,
    /// Instant since the clock's base.
    pub(super) at: f64,
    pub(super) tank: u32,
    /// Index of the whole sets.
    pub(super) fill: u32,
    /// The shift that the treater waits for on purpose; 0 if for none.
    pub(super) wait: u32,
}

/// A stretch of running.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Leg {
    /// Position where the treater stops.
    pub(super) to: f64,
    /// Work time when the last seed has passed.
    pub(super) arrival: f64,
    /// Work time when the changeover, if one is due, is done.
    pub(super) work: f64,
}

/// The job, laid out.
#[derive(Clone, Copy, Debug)]
pub(super) struct Plant<'a> {
    pub(super) tanks: &'a [Tank<'a>],
    pub(super) line: Line<'a>,
    pub(super) clock: Clock<'a>,
    pub(super) fills: [Fills<'a>; MAX_TANKS],
    /// May more sets be used than are on the shelf?
    pub(super) keep: Keep,
}

impl<'a> Plant<'a> {
    pub(super) fn tank(&self, tank: usize) -> Option<&Tank<'a>> {
        self.tanks.get(tank)
    }

    /// Is the mix that an order needs made of whole sets?
    pub(super) fn is_sets(&self, tank: usize, order: usize) -> bool {
        self.tank(tank).is_some_and(|tank| !fill::sizes(tank).is_empty())
            && self.line.need(order, tank).is_some_and(|need| need.living > 0.0)
    }

    /// The whole sets that a pour is made of; none where it is measured.
    pub(super) fn sets_in(&self, pour: &Pour, tank: usize) -> Option<&'a Fill> {
        if !self.is_sets(tank, self.line.order_at(pour.position)) {
            return None;
        }
        self.fills(tank).get(usize::try_from(pour.fill).ok()?)
    }

    /// Refilled beside running.
    pub(super) fn tops_up(&self, tank: usize) -> bool {
        self.tank(tank).is_some_and(|it| {
            it.refill == Refill::TopUp && it.pot_life.is_none() && fill::sizes(it).is_empty()
        })
    }

    pub(super) fn slack(&self, tank: usize) -> f64 {
        self.tank(tank).map_or(0.0, |tank| tank.capacity.value * SLACK)
    }

    pub(super) fn mixing(&self, tank: usize) -> f64 {
        self.tank(tank).filter(|_| self.clock.has_shifts()).map_or(0.0, |tank| tank.mixing.value)
    }

    pub(super) fn pot_life(&self, tank: usize) -> Option<f64> {
        self.tank(tank)
            .and_then(|tank| tank.pot_life)
            .map(|life| life.value)
            .filter(|_| self.clock.has_shifts())
    }

    /// Does the tank need a mix before the next seed, which is of this order?
    pub(super) fn is_due_in(
        &self,
        order: usize,
        tank: usize,
        position: f64,
        work: f64,
        content: &Content,
    ) -> bool {
        self.line.need(order, tank).is_some()
            && (content.recipe < self.line.recipe_end(tank, order)
                || self.line.slurry_in(order, tank, position) >= content.end - self.slack(tank)
                || content.expires <= work + INSTANT)
    }

    /// What the lines take of a mix made here.
    pub(super) fn hold_up(&self, tank: usize, position: f64, before: &Content) -> f64 {
        self.hold_up_at(tank, self.line.order_at(position), self.line.slurry(tank, position), before)
    }

    /// What the lines take of a mix for this order when so much slurry has been used.
    pub(super) fn hold_up_at(&self, tank: usize, order: usize, slurry: f64, before: &Content) -> f64 {
        let same_recipe = before.kind != Kind::None && before.recipe >= self.line.recipe_end(tank, order);
        let left = before.end - slurry > self.slack(tank);
        if same_recipe && !(left && before.kind == Kind::Sets) {
            0.0
        } else {
            self.tank(tank).map_or(0.0, |tank| tank.hold_up.value)
        }
    }

    /// Share of living product in a mix made here.
    pub(super) fn living(&self, tank: usize, position: f64) -> f64 {
        self.line.need(self.line.order_at(position), tank).map_or(0.0, |need| need.living)
    }

    /// Share of living product in the recipe that this order, or the next that needs the tank, belongs to.
    pub(super) fn living_of_recipe(&self, tank: usize, order: usize) -> f64 {
        match self.line.need(order, tank) {
            Some(need) => need.living,
            None => self.living(tank, self.line.next_need(tank, self.line.start_of(order))),
        }
    }

    /// Are these sets still on the shelf?
    pub(super) fn is_in_stock(&self, tank: usize, node: &Node, fill: &Fill) -> bool {
        self.keep == Keep::NoStock
            || self.tank(tank).is_none_or(|it| {
                let opened = node.content(tank).opened;
                let opened = opened.iter().zip(&fill.sets).map(|(opened, more)| opened.saturating_add(*more));
                let mut sizes = fill::sizes(it).iter().zip(opened);
                sizes.all(|(size, opened)| size.stock.is_none_or(|stock| opened <= stock))
            })
    }

    /// Does the first leave at least as many sets of a tank on the shelf as the other, where it matters?
    pub(super) fn leaves_stock(&self, tank: usize, a: &Content, b: &Content) -> bool {
        self.keep == Keep::NoStock
            || self.tank(tank).is_none_or(|it| {
                let mut sizes = fill::sizes(it).iter().zip(a.opened.iter().zip(&b.opened));
                sizes.all(|(size, (a, b))| size.stock.is_none() || a <= b)
            })
    }

    pub(super) fn capacity(&self, tank: usize) -> f64 {
        self.tank(tank).map_or(0.0, |tank| tank.capacity.value)
    }

    pub(super) fn fills(&self, tank: usize) -> Fills<'a> {
        self.fills.get(tank).copied().unwrap_or(Fills::NONE)
    }

    /// How long the treater waits for these tanks.
    pub(super) fn longest_mixing(&self, joined: u32) -> f64 {
        tanks(joined).map(|tank| self.mixing(tank)).fold(0.0, f64::max)
    }

    /// A mix made here, of as much as can be used.
    pub(super) fn mixed(&self, tank: usize, position: f64, at: f64, before: &Content) -> Content {
        let order = self.line.order_at(position);
        let recipe = self.line.recipe_end(tank, order);
        let from = self.line.slurry_in(order, tank, position);
        let hold_up = self.hold_up_at(tank, order, from, before);
        let (end, kind) = if self.tops_up(tank) {
            (recipe, Kind::ToppedUp)
        } else {
            (recipe.min(from + self.capacity(tank) - hold_up), Kind::Measured)
        };
        let expires = self.pot_life(tank).map_or(f64::INFINITY, |life| self.clock.expiry(at, life));
        Content { recipe, from, end, hold_up, expires, kind, opened: before.opened }
    }

    /// Where a tank cannot go on with what is in it.
    fn lasts_to(&self, tank: usize, position: f64, work: f64, content: &Content) -> f64 {
        let empty = self.line.beyond(tank, content.end.min(content.recipe), self.slack(tank));
        if content.expires.is_infinite() {
            return empty;
        }
        let expired = self.position_at(position, work, content.expires);
        if expired < empty { self.line.next_need(tank, expired).min(empty) } else { empty }
    }

    /// Where the treater would be at a work time if it went on running.
    pub(super) fn position_at(&self, position: f64, work: f64, then: f64) -> f64 {
        if then.is_infinite() {
            return self.line.end();
        }
        // Not a grain further than where it stands.
        if then <= work {
            return position;
        }
        self.line.position_at(self.line.run_at(position) + (then - work)).max(position)
    }

    /// Where the last of these stops was, and the work time at which the treater left it; the start, if there was none.
    pub(super) fn left(&self, pours: &[Pour]) -> (f64, f64) {
        let position = pours.last().map_or(0.0, |last| last.position);
        // Tanks that are mixed at one place: the treater waits for the slowest.
        let group = pours.iter().rev().take_while(|pour| pour.position >= position);
        let ready = |pour: &Pour| {
            let mixing = usize::try_from(pour.tank).map_or(0.0, |tank| self.mixing(tank));
            self.clock.work_at(pour.at + mixing)
        };
        (position, group.map(ready).fold(0.0, f64::max))
    }

    /// Runs until a tank needs a mix, the orders end or the shifts do.
    pub(super) fn leg(&self, position: f64, work: f64, contents: &[Content]) -> Leg {
        let stop = self.position_at(position, work, self.clock.total());
        let to = contents
            .iter()
            .enumerate()
            .map(|(tank, content)| self.lasts_to(tank, position, work, content))
            .fold(stop, f64::min)
            .max(position);
        self.leg_to(position, work, to)
    }

    pub(super) fn leg_to(&self, position: f64, work: f64, to: f64) -> Leg {
        if to <= position {
            return Leg { to: position, arrival: work, work };
        }
        let start = self.line.run_at(position);
        let arrival = (work + self.line.arrival(to) - start).min(self.clock.total());
        Leg { to, arrival, work: work + self.line.run_at(to) - start }
    }
}
