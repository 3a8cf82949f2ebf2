//! Every choice of packs, one by one.

/// The least leftover of all choices that cover a need, each size opened no more often than it takes alone.
pub(crate) fn least_leftover(need: f64, covers: &[f64]) -> f64 {
    let Some((first, rest)) = covers.split_first() else {
        return if need <= 0.0 { -need } else { f64::INFINITY };
    };
    let mut least = f64::INFINITY;
    let mut left = need;
    loop {
        least = least.min(least_leftover(left, rest));
        if left <= 0.0 {
            return least;
        }
        left -= first;
    }
}
