//! Sorting without a way to panic: core's own sorts hold one, for an order that contradicts itself.

/// Sorts in place: a heap sort, unless all is in order already.
pub(super) fn sort<T>(items: &mut [T], less: impl Fn(&T, &T) -> bool) {
    if items.is_sorted_by(|a, b| !less(b, a)) {
        return;
    }
    for root in (0..items.len()).rev() {
        sift_down(items, root, &less);
    }
    for end in (1..items.len()).rev() {
        exchange(items, 0, end);
        if let Some(heap) = items.get_mut(..end) {
            sift_down(heap, 0, &less);
        }
    }
}

fn sift_down<T>(heap: &mut [T], mut root: usize, less: &impl Fn(&T, &T) -> bool) {
    let is_less =
        |heap: &[T], a: usize, b: usize| heap.get(a).zip(heap.get(b)).is_some_and(|(a, b)| less(a, b));
    loop {
        let left = 2 * root + 1;
        let child = if is_less(heap, left, left + 1) { left + 1 } else { left };
        if !is_less(heap, root, child) {
            return;
        }
        exchange(heap, root, child);
        root = child;
    }
}

fn exchange<T>(items: &mut [T], a: usize, b: usize) {
    if let Ok([a, b]) = items.get_disjoint_mut([a, b]) {
        core::mem::swap(a, b);
    }
}

#[cfg(test)]
mod tests {
    use super::sort;

    #[test]
    fn sorts_as_core_does() {
        // A small generator of numbers: constants of Knuth's MMIX.
        let mut state = 1_u64;
        for length in 0..200 {
            let mut ours = [0_u64; 200];
            for item in &mut ours {
                state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
                *item = state >> 58;
            }
            let mut theirs = ours;
            sort(ours.get_mut(..length).unwrap(), |a, b| a < b);
            theirs.get_mut(..length).unwrap().sort_unstable();
            assert_eq!(ours, theirs);
        }
    }
}
