//! Where plans under comparison are kept: in the caller's memory.

use super::expand::Stop;
use super::node::{Cost, Node};
use super::step::Content;
use crate::math::floor;

/// A plan up to a stop, and the stop before.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Label {
    pub(super) position: f64,
    pub(super) work: f64,
    pub(super) cost: Cost,
    /// What it will have cost at least in the end.
    pub(super) least: Cost,
    pub(super) early: u32,
    /// What was decided at the parent.
    pub(super) stop: Stop,
    pub(super) parent: u32,
    /// The queue's entry of this index, not of this label.
    queue: u32,
    /// The chain's first label of this index; its next one.
    head: u32,
    pub(super) next: u32,
}

/// No label.
pub(super) const NONE: u32 = u32::MAX;

/// Labels are found again by their position, in cells of this share of all the seed.
const CELL: f64 = 1e-7;

/// The labels, the contents of their tanks, and a queue by work time.
#[derive(Debug)]
pub(super) struct Store<'b> {
    labels: &'b mut [Label],
    contents: &'b mut [Content],
    tanks: usize,
    /// Seed in one cell.
    cell: f64,
    pub(super) count: u32,
    queued: u32,
}

impl<'b> Store<'b> {
    /// For so many tanks, and about so much seed.
    pub(super) fn new(labels: &'b mut [Label], contents: &'b mut [Content], tanks: usize, seed: f64) -> Self {
        let room =
            labels.len().min(contents.len() / tanks.max(1)).min(usize::try_from(NONE - 1).unwrap_or(0));
        let labels = labels.get_mut(..room).unwrap_or(&mut []);
        Self {
            labels,
            contents,
            tanks,
            cell: if seed > 0.0 { seed * CELL } else { 1.0 },
            count: 0,
            queued: 0,
        }
    }

    /// Forgets all.
    pub(super) fn clear(&mut self) {
        self.labels.iter_mut().for_each(|label| label.head = NONE);
        (self.count, self.queued) = (0, 0);
    }

    pub(super) fn room(&self) -> u32 {
        u32::try_from(self.labels.len()).unwrap_or(NONE)
    }

    pub(super) fn label(&self, index: u32) -> Option<&Label> {
        self.labels.get(usize::try_from(index).ok()?)
    }

    fn label_mut(&mut self, index: u32) -> Option<&mut Label> {
        self.labels.get_mut(usize::try_from(index).ok()?)
    }

    pub(super) fn contents(&self, index: u32) -> &[Content] {
        let start = usize::try_from(index).unwrap_or(usize::MAX).saturating_mul(self.tanks);
        self.contents.get(start..start.saturating_add(self.tanks)).unwrap_or(&[])
    }

    pub(super) fn node(&self, index: u32) -> Node {
        let mut node = Node::START;
        if let Some(label) = self.label(index) {
            (node.position, node.work, node.cost, node.early) =
                (label.position, label.work, label.cost, label.early);
        }
        node.contents.iter_mut().zip(self.contents(index)).for_each(|(cell, content)| *cell = *content);
        node
    }

    /// Adds a label; false if there is no room.
    pub(super) fn add(&mut self, stop: Stop, node: &Node, parent: u32, least: Cost) -> bool {
        let index = self.count;
        let added = self.put(index, stop, node, parent, least);
        self.count += u32::from(added);
        added
    }

    /// Writes a label in place of another.
    pub(super) fn put(&mut self, index: u32, stop: Stop, node: &Node, parent: u32, least: Cost) -> bool {
        let tanks = self.tanks;
        let Some(label) = self.label_mut(index) else { return false };
        (label.position, label.work, label.cost, label.early) =
            (node.position, node.work, node.cost, node.early);
        (label.stop, label.parent, label.least) = (stop, parent, least);
        let start = usize::try_from(index).unwrap_or(usize::MAX).saturating_mul(tanks);
        let cells = self.contents.get_mut(start..).unwrap_or(&mut []);
        cells.iter_mut().zip(node.contents.iter().take(tanks)).for_each(|(cell, content)| *cell = *content);
        true
    }

    /// Makes the last label known by its position.
    pub(super) fn link_last(&mut self) {
        let Some(index) = self.count.checked_sub(1) else { return };
        let position = self.label(index).map_or(0.0, |label| label.position);
        let cell = self.chain(floor(position / self.cell));
        let head = self.label(cell).map_or(NONE, |label| label.head);
        if let Some(label) = self.label_mut(index) {
            label.next = head;
        }
        if let Some(first) = self.label_mut(cell) {
            first.head = index;
        }
    }

    fn chain(&self, number: f64) -> u32 {
        let room = f64::from(self.room()).max(1.0);
        let rest = number - floor(number / room) * room;
        super::whole(rest).and_then(|rest| u32::try_from(rest).ok()).unwrap_or(0)
    }

    /// Is there a linked label near this position, and perhaps others, for which this holds?
    pub(super) fn any_near(&self, position: f64, mut holds: impl FnMut(u32, &Label) -> bool) -> bool {
        let exact = position / self.cell;
        let number = floor(exact);
        // A neighbour only where rounding may have put an equal position there.
        let beside = if exact - number < 0.01 { -1.0 } else { 1.0 };
        let both = exact - number < 0.01 || exact - number > 0.99;
        [0.0, beside].into_iter().take(1 + usize::from(both)).any(|beside| {
            let mut index = self.label(self.chain(number + beside)).map_or(NONE, |label| label.head);
            while let Some(label) = self.label(index) {
                if holds(index, label) {
                    return true;
                }
                index = label.next;
            }
            false
        })
    }

    pub(super) fn push(&mut self, index: u32) {
        let mut at = self.queued;
        self.queued += 1;
        while at > 0 {
            let up = (at - 1) / 2;
            let parent = self.entry(up);
            if !self.is_sooner(index, parent) {
                break;
            }
            self.set_entry(at, parent);
            at = up;
        }
        self.set_entry(at, index);
    }

    /// The label with the least work time.
    pub(super) fn pop(&mut self) -> Option<u32> {
        self.queued = self.queued.checked_sub(1)?;
        let first = self.entry(0);
        let last = self.entry(self.queued);
        let mut at = 0;
        loop {
            let (left, right) = (2 * at + 1, 2 * at + 2);
            if left >= self.queued {
                break;
            }
            let child = if right < self.queued && self.is_sooner(self.entry(right), self.entry(left)) {
                right
            } else {
                left
            };
            if !self.is_sooner(self.entry(child), last) {
                break;
            }
            self.set_entry(at, self.entry(child));
            at = child;
        }
        self.set_entry(at, last);
        Some(first)
    }

    fn entry(&self, at: u32) -> u32 {
        self.label(at).map_or(NONE, |label| label.queue)
    }

    fn set_entry(&mut self, at: u32, index: u32) {
        if let Some(label) = self.label_mut(at) {
            label.queue = index;
        }
    }

    fn is_sooner(&self, a: u32, b: u32) -> bool {
        match (self.label(a), self.label(b)) {
            (Some(a), Some(b)) => a.work < b.work || (a.work <= b.work && a.position > b.position),
            _ => false,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Labels of so much work at such positions, each linked and queued.
    fn with<const N: usize>(labels: &mut [Label], nodes: [(f64, f64); N], look: impl FnOnce(Store<'_>)) {
        let mut contents = [Content::default(); 64];
        let mut store = Store::new(labels, &mut contents, 1, 1e7);
        store.clear();
        for (position, work) in nodes {
            let node = Node { position, work, ..Node::START };
            assert!(store.add(Stop::default(), &node, NONE, Cost::default()));
            store.link_last();
            store.push(store.count - 1);
        }
        look(store);
    }

    // The least work first; of equal work what is farther on.
    #[test]
    fn the_queue_gives_the_least_work_first() {
        let work = [5.0, 3.0, 8.0, 1.0, 9.0, 2.0, 7.0, 4.0, 6.0, 3.0, 0.5, 8.5];
        let mut at = 0.0;
        let nodes = work.map(|work| {
            at += 10.0;
            (at, work)
        });
        with(&mut [Label::default(); 16], nodes, |mut store| {
            let mut popped = [(0.0, 0.0); 12];
            for into in &mut popped {
                let index = store.pop().unwrap();
                let label = store.label(index).unwrap();
                *into = (label.work, -label.position);
            }
            assert!(popped.is_sorted(), "{popped:?}");
            assert_eq!(store.pop(), None);
        });
    }

    // A cell is 1 kg of ten thousand tonnes, and there are 16 chains: 3, 19 and 35 kg share one. What rounding put beside
    // the border of a cell is found from the other side of it, what lies well inside the next cell is not looked at.
    #[test]
    fn labels_are_found_by_their_position() {
        let nodes = [(3.5, 0.0), (19.5, 1.0), (35.5, 2.0), (7.999_999, 3.0), (12.000_001, 4.0), (0.5, 5.0)];
        with(&mut [Label::default(); 16], nodes, |store| {
            let found = |position: f64, wanted: u32| store.any_near(position, |index, _| index == wanted);
            for (index, (position, _)) in (0..).zip(nodes) {
                assert!(found(position, index), "{position}");
            }
            assert!(found(8.000_001, 3) && found(11.999_999, 4));
            assert!(
                !found(8.5, 3) && !found(8.02, 3) && !found(11.5, 4) && !found(11.98, 4) && !found(4.5, 0)
            );
            assert!(!store.any_near(9.5, |_, _| true));
        });
    }
}
