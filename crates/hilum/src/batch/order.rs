//! Which of two fills comes first, when it is all one?
//!
//! The larger one: then the last mix before a night, or before the end, is a small one, and what goes wrong late in the day
//! wastes little.

use super::level::{TRIALS, copy, replay, sort};
use super::line::SLACK;
use super::node::{Node, compare};
use super::step::{Plant, Pour};

/// Puts larger fills of one tank before smaller ones wherever nothing is lost by it; `scratch` is as long as `pours`.
pub(super) fn larger_first(
    plant: &Plant<'_>,
    tank: usize,
    pours: &mut [Pour],
    scratch: &mut [Pour],
    end: &Node,
) -> Node {
    let mut best = *end;
    let mut trials = TRIALS;
    let mut moved = true;
    while moved {
        moved = false;
        let mut first = None;
        for index in 0..pours.len() {
            if pours.get(index).is_none_or(|pour| usize::try_from(pour.tank) != Ok(tank)) {
                continue;
            }
            if let Some(before) = first.replace(index) {
                let Some(left) = trials.checked_sub(pours.len()) else { return best };
                copy(pours, scratch);
                if !swap(plant, tank, scratch, before, index) {
                    continue;
                }
                trials = left;
                sort(scratch);
                let swapped = replay(plant, scratch).filter(|node| {
                    compare(node.position, best.position).is_ge() && node.cost.compare(&best.cost).is_le()
                });
                if let Some(node) = swapped {
                    copy(scratch, pours);
                    (best, moved) = (node, true);
                }
            }
        }
    }
    best
}

/// Swaps two successive fills, if the second is larger; all that is mixed with the second moves with it.
fn swap(plant: &Plant<'_>, tank: usize, pours: &mut [Pour], first: usize, second: usize) -> bool {
    let fill = |pour: &Pour| {
        let order = plant.line.order_at(pour.position);
        let sets = usize::try_from(pour.fill).ok().filter(|_| plant.is_sets(tank, order));
        let fill = sets.and_then(|index| plant.fills(tank).get(index))?;
        Some((fill.living, plant.line.recipe_end(tank, order)))
    };
    let (Some(a), Some(b)) = (pours.get(first).copied(), pours.get(second).copied()) else { return false };
    let (Some((small, recipe)), Some((large, same))) = (fill(&a), fill(&b)) else { return false };
    if large <= small * (1.0 + SLACK) || recipe < same {
        return false;
    }
    let more = (large - small) / plant.living(tank, a.position);
    let to = plant.line.beyond(tank, plant.line.slurry(tank, b.position) + more, plant.slack(tank));
    let together =
        |pour: &&mut Pour| pour.position.total_cmp(&b.position).is_eq() && pour.at.total_cmp(&b.at).is_eq();
    pours.iter_mut().filter(together).for_each(|pour| (pour.position, pour.wait) = (to, 0));
    if let Some(pour) = pours.get_mut(first) {
        pour.fill = b.fill;
    }
    if let Some(pour) = pours.get_mut(second) {
        pour.fill = a.fill;
    }
    true
}
