//! Which whole sets can go into a tank together?

use super::level::copy;
use super::line::SLACK;
use crate::math::floor;
use core::cmp::Ordering;

use super::{Counted, Error, Filling, Job, MAX_SIZES, SetSize, Tank};

/// Whole sets poured together.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Fill {
    /// Living product.
    pub(super) living: f64,
    /// Sets of each size.
    pub(super) sets: [u32; MAX_SIZES],
    /// Ranks of the sets, and their number.
    pub(super) ranks: [f64; 3],
}

impl Fill {
    fn with(mut self, size: usize, set: &SetSize, sets: u32) -> Option<Self> {
        let many = f64::from(sets);
        self.living += many * set.adds.value;
        let [first, second, number] = &mut self.ranks;
        *first += many * set.ranks[0];
        *second += many * set.ranks[1];
        *number += many;
        let count = self.sets.get_mut(size)?;
        *count = count.checked_add(sets)?;
        Some(self)
    }

    fn is_better_than(&self, other: &Self) -> bool {
        let pairs = self.ranks.iter().zip(&other.ranks);
        pairs.map(|(a, b)| a.total_cmp(b)).find(|order| order.is_ne()).is_some_and(Ordering::is_lt)
    }
}

/// May more sets be used than are on the shelf?
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Keep {
    /// Yes; of fills alike in volume the best one is enough.
    NoStock,
    /// No; every fill counts.
    Stock,
}

/// The fills of one tank, by rising volume; the best of those that are equal in volume.
#[derive(Clone, Copy, Debug)]
pub(super) struct Fills<'a> {
    pub(super) all: &'a [Fill],
    /// Are these all there are?
    pub(super) complete: bool,
}

impl<'a> Fills<'a> {
    pub(super) const NONE: Self = Self { all: &[], complete: true };

    /// Fills up to a volume of living product; takes half the memory, and needs all of it.
    pub(super) fn new(
        sizes: &[SetSize],
        tops: Tops,
        stock: Keep,
        memory: &'a mut [Fill],
    ) -> Result<Self, Error> {
        let room = memory.len() / 2;
        let all = combine(sizes, tops, stock, None, memory);
        let complete = all.is_some();
        // Else by the handful, two thirds of what there is room for.
        let some = || combine(sizes, tops, stock, Some(thirds(room)), memory);
        let count = all.or_else(some).ok_or(Error::TooMany { counted: Counted::Sets, limit: room })?;
        Ok(Self { all: memory.get(..count).unwrap_or(&[]), complete })
    }

    /// Room enough for all of them, but at most this.
    pub(super) fn room(sizes: &[SetSize], tops: Tops, most: usize) -> usize {
        let sets = |size: &SetSize| super::whole(floor(tops.most * (1.0 + 2.0 * SLACK) / size.adds.value));
        let ways = |all: usize, size| all.saturating_mul(sets(size).unwrap_or(most).saturating_add(1));
        sizes.iter().fold(2, ways).min(most)
    }

    /// The largest fill of at most this volume.
    pub(super) fn at_most(&self, living: f64) -> Option<usize> {
        self.all.partition_point(|fill| fill.living <= living).checked_sub(1)
    }

    /// The smallest fill of at least this volume.
    pub(super) fn at_least(&self, living: f64) -> Option<usize> {
        let index = self.all.partition_point(|fill| fill.living < living);
        (index < self.all.len()).then_some(index)
    }

    /// The smallest fill of more than the first volume and the largest of at most the second, if there are any.
    pub(super) fn between(&self, more_than: f64, at_most: f64) -> Option<(usize, usize)> {
        let least = self.at_least(more_than * (1.0 + SLACK))?;
        let most = self.at_most(at_most * (1.0 + SLACK))?;
        (least <= most).then_some((least, most))
    }

    pub(super) fn get(&self, index: usize) -> Option<&'a Fill> {
        self.all.get(index)
    }
}

/// Living product in a full tank: of the recipe that takes least, and of the one that takes most.
#[derive(Clone, Copy, Debug)]
pub(super) struct Tops {
    pub(super) least: f64,
    pub(super) most: f64,
}

impl Tops {
    /// Of a tank's recipes.
    pub(super) fn of(job: &Job<'_>, index: usize, tank: &Tank<'_>) -> Self {
        let mut tops = Self { least: f64::INFINITY, most: 0.0 };
        for need in job.needs_of(index) {
            let full = need.living * tank.capacity.value;
            if full > 0.0 {
                tops = Self { least: tops.least.min(full), most: tops.most.max(full) };
            }
        }
        Self { least: tops.least.min(tops.most), ..tops }
    }

    /// Between fills of this volume, where there is room for so many: even up to the least top, then four times as wide
    /// up to four times as much, and so on. So a recipe with a small share, too, has fills to choose from.
    fn gap(self, living: f64, room: f64) -> f64 {
        let (mut steps, mut top, mut own) = (1.0, self.least, self.least);
        while top < self.most * (1.0 - SLACK) {
            if top < living {
                own = (4.0 * top).min(self.most);
            }
            top *= 4.0;
            steps += 0.75;
        }
        own * steps / room
    }
}

fn thirds(room: usize) -> f64 {
    f64::from(u32::try_from(room).unwrap_or(u32::MAX)) * (2.0 / 3.0)
}

/// All fills, or some that are apart as where there is room for so many.
///
/// Adds size after size: every sum is a sum of the sizes before, or a sum found and one set more.
fn combine(
    sizes: &[SetSize],
    tops: Tops,
    keep: Keep,
    room: Option<f64>,
    memory: &mut [Fill],
) -> Option<usize> {
    let (sums, before) = memory.split_at_mut_checked(memory.len() / 2)?;
    let most = tops.most * (1.0 + SLACK);
    let gap = |living| room.map_or(0.0, |room| tops.gap(living, room));
    let mut count = 1;
    *sums.first_mut()? = Fill::default();
    for (index, size) in sizes.iter().enumerate() {
        let known = before.get_mut(..count)?;
        copy(sums, known);
        let adds = size.adds.value;
        if gap(0.0) <= 0.0 && adds <= most * SLACK {
            return None;
        }
        let sets_beyond = |living| whole_sets(1.01 * gap(living) / adds);
        // As many as are beyond the gap where they lead.
        let handful = |living| sets_beyond(living + f64::from(sets_beyond(living)) * adds);
        let stock = size.stock.filter(|_| keep == Keep::Stock).unwrap_or(u32::MAX);
        let fits =
            |fill: &Fill| fill.living <= most && fill.sets.get(index).is_some_and(|sets| *sets <= stock);
        let grow = |fill: &Fill| fill.with(index, size, handful(fill.living)).filter(fits);
        // Nothing is nearer than -1: all are kept.
        let all = keep == Keep::Stock && gap(0.0) <= 0.0;
        let gap = |living| if all { -1.0 } else { gap(living).max(most * SLACK) };
        count = close(known, grow, most * SLACK, gap, sums)?;
    }
    // The empty fill is none.
    for index in 1..count {
        *sums.get_mut(index - 1)? = *sums.get(index)?;
    }
    Some(count - 1)
}

/// At least one.
fn whole_sets(sets: f64) -> u32 {
    super::whole(sets).and_then(|sets| u32::try_from(sets).ok()).unwrap_or(u32::MAX).max(1)
}

/// Merges `known` with the sums found, grown; none if they do not fit.
fn close(
    known: &[Fill],
    grow: impl Fn(&Fill) -> Option<Fill>,
    same: f64,
    gap: impl Fn(f64) -> f64,
    sums: &mut [Fill],
) -> Option<usize> {
    let (mut old, mut base, mut count) = (known, 0, 0_usize);
    loop {
        let mut grown = None;
        while base < count && grown.is_none() {
            grown = sums.get(base).and_then(&grow);
            base += usize::from(grown.is_none());
        }
        let next = match (old, grown) {
            ([fill, rest @ ..], more) if more.is_none_or(|more| fill.living <= more.living) => {
                old = rest;
                *fill
            }
            (_, Some(more)) => {
                base += 1;
                more
            }
            (_, None) => return Some(count),
        };
        match count.checked_sub(1).and_then(|last| sums.get_mut(last)) {
            Some(last) if next.living - last.living <= gap(next.living) => {
                if count > 1 && next.living - last.living <= same && next.is_better_than(last) {
                    *last = next;
                }
            }
            _ => {
                *sums.get_mut(count)? = next;
                count += 1;
            }
        }
    }
}

/// The sizes that a tank is filled with: none for a measured one.
pub(super) fn sizes<'a>(tank: &Tank<'a>) -> &'a [SetSize] {
    match tank.filling {
        Filling::Measured => &[],
        Filling::Sets(sizes) => sizes,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Volume, volume::cubic_meter};

    const NINE: Tops = Tops { least: 9.0, most: 9.0 };

    fn size(adds: f64, stock: Option<u32>, rank: f64) -> SetSize {
        SetSize { adds: Volume::new::<cubic_meter>(adds), stock, ranks: [rank, 0.0] }
    }

    #[test]
    fn every_sum_once_with_its_cheapest_sets() {
        let mut memory = [Fill::default(); 64];
        let sizes = [size(4.0, None, 3.0), size(2.0, None, 2.0)];
        let fills = Fills::new(&sizes, NINE, Keep::NoStock, &mut memory).unwrap();
        assert!(fills.complete);
        assert!(fills.all.iter().map(|fill| fill.living).eq([2.0, 4.0, 6.0, 8.0]));
        // 8 is two large ones at 6, not four small ones at 8.
        assert_eq!(fills.get(3).unwrap().sets.get(..2), Some(&[2, 0][..]));
        assert_eq!((fills.at_most(5.0), fills.at_least(5.0), fills.at_least(9.0)), (Some(1), Some(2), None));
        assert_eq!((fills.at_most(4.0), fills.at_least(4.0)), (Some(1), Some(1)));
    }

    /// Three sets of 2 at ranks 5 and 7 are 6 at 15 and 21; two of 3 at ranks 1 and 4 are 6 at 2 and 8.
    #[test]
    fn sets_and_their_ranks_add_up() {
        let of = |adds, ranks| SetSize { ranks, ..size(adds, None, 0.0) };
        let fill = Fill::default().with(0, &of(2.0, [5.0, 7.0]), 3).unwrap();
        let fill = fill.with(1, &of(3.0, [1.0, 4.0]), 2).unwrap();
        assert_eq!(fill.sets.get(..3), Some(&[3, 2, 0][..]));
        assert_eq!(fill, Fill { living: 12.0, ranks: [17.0, 29.0, 5.0], ..fill });
    }

    /// Recipes from 1 to 16 in a full tank: up to 1 the fills are even, four times as far apart up to 4, and again up to 16. So
    /// of 250 fills 100 lie below 1, at gaps of 0.01; 3/4 of 100 between 1 and 4, and as many between 4 and 16.
    #[test]
    fn gaps_grow_with_the_fill() {
        let tops = Tops { least: 1.0, most: 16.0 };
        for (living, gap) in [(0.5, 0.01), (1.0, 0.01), (2.0, 0.04), (4.0, 0.04), (5.0, 0.16), (16.0, 0.16)] {
            assert!((tops.gap(living, 250.0) - gap).abs() < 1e-12, "{living}");
        }
    }

    #[test]
    fn every_choice_of_sets_within_the_stock() {
        let mut memory = [Fill::default(); 64];
        let sizes = [size(4.0, Some(1), 3.0), size(2.0, Some(3), 2.0)];
        let fills = Fills::new(&sizes, NINE, Keep::Stock, &mut memory).unwrap();
        // 2, 4 twice, 6 twice, 8 as 4 + 2 + 2; four small ones are not there.
        assert!(fills.all.iter().map(|fill| fill.living).eq([2.0, 4.0, 4.0, 6.0, 6.0, 8.0]));
    }

    #[test]
    fn by_the_handful_where_there_are_too_many() {
        let mut memory = [Fill::default(); 64];
        // Of the smallest, one set more is no other fill.
        for adds in [1e-3, 8e-9] {
            let fills = Fills::new(&[size(adds, None, 1.0)], NINE, Keep::NoStock, &mut memory).unwrap();
            assert!(!fills.complete);
            assert!(fills.all.len() > 10 && fills.all.len() <= 32);
            assert!(fills.all.last().unwrap().living > 8.0);
        }
    }
}
