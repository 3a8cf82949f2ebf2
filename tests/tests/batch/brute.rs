//! The optimum by trying everything, minute by minute.
//!
//! A second reading of the rules that shares nothing with the planner: the state of the shed goes from one minute to the
//! next by what may be done in it (run, wait, change over, mix with any fills), and the best that can still
//! come of a state is remembered. All lengths are whole minutes; a running minute takes 1 L of every tank needed.

use std::collections::HashMap;

#[derive(Clone, Debug)]
pub(crate) struct ToyOrder {
    pub(crate) minutes: i32,
    /// kg per running minute.
    pub(crate) speed: i32,
    pub(crate) changeover: i32,
    /// Recipe of each tank, if the order needs it.
    pub(crate) recipes: Vec<Option<i32>>,
}

#[derive(Clone, Debug)]
pub(crate) struct ToyTank {
    pub(crate) capacity: i32,
    pub(crate) hold_up: i32,
    pub(crate) mixing: i32,
    pub(crate) pot_life: Option<i32>,
    /// Whole sets, in litres; none: any whole volume.
    pub(crate) sets: Vec<i32>,
    /// On the shelf, by set; empty: without limit.
    pub(crate) stock: Vec<i32>,
}

#[derive(Clone, Debug)]
pub(crate) struct Toy {
    pub(crate) orders: Vec<ToyOrder>,
    pub(crate) tanks: Vec<ToyTank>,
    pub(crate) shifts: Vec<(i32, i32)>,
}

/// What plans are compared by, in this order, all of them to be small.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Best {
    pub(crate) untreated: i32,
    pub(crate) opened: i32,
    pub(crate) mixes: i32,
    pub(crate) finish: i32,
    pub(crate) squares: i32,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
struct Held {
    recipe: i32,
    left: i32,
    use_by: i32,
    full_lines: bool,
    /// Was it filled to the brim?
    brimful: bool,
}

#[derive(Clone, Debug, PartialEq, Eq, Hash)]
struct Shed {
    time: i32,
    order: usize,
    run: i32,
    to_change: i32,
    tanks: Vec<Held>,
    /// Sets opened, where stock counts.
    opened: Vec<i32>,
}

pub(crate) struct Brute<'a> {
    toy: &'a Toy,
    /// May a measured mix end wherever one likes?
    anywhere: bool,
    known: HashMap<Shed, Best>,
}

const NEVER: i32 = 1_000_000;

impl<'a> Brute<'a> {
    /// By the planner's rules.
    pub(crate) fn best(toy: &'a Toy) -> Best {
        Self::search(toy, false)
    }

    /// Where the treater may stop for a measured tank at any minute.
    pub(crate) fn best_anywhere(toy: &'a Toy) -> Best {
        Self::search(toy, true)
    }

    fn search(toy: &'a Toy, anywhere: bool) -> Best {
        let empty = Held { recipe: -1, left: 0, use_by: NEVER, full_lines: false, brimful: false };
        let start = Shed {
            time: 0,
            order: 0,
            run: 0,
            to_change: 0,
            tanks: vec![empty; toy.tanks.len()],
            opened: vec![0; 9],
        };
        Brute { toy, anywhere, known: HashMap::new() }.from(start)
    }

    fn untreated(&self, shed: &Shed) -> i32 {
        let orders = self.toy.orders.iter().enumerate().skip(shed.order);
        orders.map(|(i, o)| o.speed * (o.minutes - if i == shed.order { shed.run } else { 0 })).sum()
    }

    fn from(&mut self, mut shed: Shed) -> Best {
        let nothing = Best { untreated: self.untreated(&shed), opened: 0, mixes: 0, finish: 0, squares: 0 };
        if shed.order == self.toy.orders.len() {
            return nothing;
        }
        let Some(&(from, to)) = self.toy.shifts.iter().find(|shift| shift.1 > shed.time) else {
            return nothing;
        };
        shed.time = shed.time.max(from);
        for held in &mut shed.tanks {
            if held.use_by <= shed.time && held.recipe >= 0 && held.use_by < NEVER {
                if held.left > 0 {
                    held.full_lines = false;
                }
                held.left = 0;
            }
        }
        if let Some(best) = self.known.get(&shed) {
            return *best;
        }
        let mut best = nothing;
        for (next, cost) in self.moves(&shed, to) {
            let rest = self.from(next);
            best = best.min(Best {
                untreated: rest.untreated,
                opened: rest.opened + cost.opened,
                mixes: rest.mixes + cost.mixes,
                finish: rest.finish.max(cost.finish),
                squares: rest.squares + cost.squares,
            });
        }
        self.known.insert(shed, best);
        best
    }

    /// Does a tank need a mix here although more could have been in it?
    fn is_early(&self, shed: &Shed, tank: usize) -> bool {
        let (held, it) = (&shed.tanks[tank], &self.toy.tanks[tank]);
        let recipe = self.toy.orders[shed.order].recipes[tank];
        it.sets.is_empty() && recipe == Some(held.recipe) && !held.brimful && held.use_by > shed.time
    }

    fn next_shift(&self, time: i32) -> Option<i32> {
        self.toy.shifts.iter().map(|shift| shift.0).find(|from| *from >= time)
    }

    /// All that may be done in the next minute, and what it costs.
    fn moves(&self, shed: &Shed, shift_end: i32) -> Vec<(Shed, Best)> {
        let free = Best { untreated: 0, opened: 0, mixes: 0, finish: 0, squares: 0 };
        let mut moves = Vec::new();
        let mut later = shed.clone();
        later.time += 1;
        if shed.to_change > 0 {
            later.to_change -= 1;
            return vec![(later, free)];
        }
        let order = &self.toy.orders[shed.order];
        let usable = |tank: usize| {
            let held = &shed.tanks[tank];
            order.recipes[tank]
                .is_none_or(|recipe| held.recipe == recipe && held.left > 0 && held.use_by > shed.time)
        };
        // Whoever can run does: else a mix could be left to spoil on purpose, to get the lines emptied.
        if (0..shed.tanks.len()).all(usable) {
            let mut ran = later.clone();
            for (held, recipe) in ran.tanks.iter_mut().zip(&order.recipes) {
                held.left -= i32::from(recipe.is_some());
            }
            ran.run += 1;
            if ran.run == order.minutes {
                ran.order += 1;
                ran.run = 0;
                ran.to_change = self.toy.orders.get(ran.order).map_or(0, |next| next.changeover);
            }
            let finish = ran.time;
            moves.push((ran, Best { finish, ..free }));
            return moves;
        }
        // A measured mix ends before it must only where another tank is mixed too, or as late in a shift as a mix fits.
        let due = (0..shed.tanks.len()).filter(|tank| !usable(*tank));
        if !self.anywhere && due.clone().all(|tank| self.is_early(shed, tank)) {
            let longest = due.map(|tank| self.toy.tanks[tank].mixing).max().unwrap_or(0);
            if shed.time + longest == shift_end {
                self.mixes(shed, shift_end, 0, 0, free, shed.clone(), &mut moves);
            }
            return moves;
        }
        // On purpose the treater waits for a shift to begin, not for a mix to spoil.
        if let Some(from) = self.next_shift(shift_end) {
            later.time = from;
            moves.push((later, free));
        }
        self.mixes(shed, shift_end, 0, 0, free, shed.clone(), &mut moves);
        moves
    }

    /// Every choice of fills for all tanks that need a mix.
    #[allow(clippy::too_many_arguments)]
    fn mixes(
        &self,
        shed: &Shed,
        shift_end: i32,
        tank: usize,
        longest: i32,
        cost: Best,
        next: Shed,
        moves: &mut Vec<(Shed, Best)>,
    ) {
        let Some(it) = self.toy.tanks.get(tank) else {
            if cost.mixes > 0 && shed.time + longest <= shift_end {
                let mut next = next;
                next.time = shed.time + longest;
                let resumes =
                    if next.time < shift_end { Some(next.time) } else { self.next_shift(next.time) };
                // Nor is anything mixed that spoils unused.
                let mixed = next.tanks.iter().zip(&shed.tanks).filter(|(after, before)| after != before);
                if resumes.is_some_and(|at| mixed.map(|it| it.0.use_by).all(|use_by| use_by > at)) {
                    moves.push((next, cost));
                }
            }
            return;
        };
        let held = shed.tanks[tank];
        let recipe = self.toy.orders[shed.order].recipes[tank];
        let Some(recipe) = recipe.filter(|recipe| held.recipe != *recipe || held.left == 0) else {
            return self.mixes(shed, shift_end, tank + 1, longest, cost, next, moves);
        };
        // What needs a mix at the same moment is mixed together.
        let lines = if held.recipe == recipe && held.full_lines { 0 } else { it.hold_up };
        for (fill, sets) in fills(it) {
            let opened: Vec<i32> =
                next.opened.iter().zip(sets.iter().chain(&[0; 9])).map(|(a, b)| a + b).collect();
            if fill <= lines || opened.iter().zip(&it.stock).any(|(opened, stock)| opened > stock) {
                continue;
            }
            let use_by = it.pot_life.map_or(NEVER, |life| shed.time + life);
            let mut next = next.clone();
            next.opened = opened;
            next.tanks[tank] =
                Held { recipe, left: fill - lines, use_by, full_lines: true, brimful: fill == it.capacity };
            let opened = cost.opened + if it.sets.is_empty() { 0 } else { fill };
            let cost = Best { opened, mixes: cost.mixes + 1, squares: cost.squares + fill * fill, ..cost };
            self.mixes(shed, shift_end, tank + 1, longest.max(it.mixing), cost, next, moves);
        }
    }
}

/// Every volume that can be in the tank, and the sets it is made of where stock counts.
fn fills(tank: &ToyTank) -> Vec<(i32, Vec<i32>)> {
    if tank.sets.is_empty() {
        return (1..=tank.capacity).map(|volume| (volume, vec![])).collect();
    }
    let mut all = vec![(0, vec![])];
    for size in &tank.sets {
        all = all
            .into_iter()
            .flat_map(|(volume, sets)| {
                (0..=(tank.capacity - volume) / size).map(move |count| {
                    let counts = sets.iter().copied().chain([count]).collect::<Vec<i32>>();
                    (volume + count * size, counts)
                })
            })
            .collect();
    }
    all.retain(|(volume, _)| *volume > 0);
    if tank.stock.is_empty() {
        all.sort_unstable();
        all.dedup_by_key(|it| it.0);
        for it in &mut all {
            it.1.clear();
        }
    }
    all
}
