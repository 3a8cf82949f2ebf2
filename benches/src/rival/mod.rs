//! What the rows are measured against. The only unsafe code here: calls of C.

mod brute;

pub(crate) use brute::least_leftover;

mod c {
    unsafe extern "C" {
        pub(super) safe fn thread_seconds() -> f64;
        pub(super) safe fn formula_per_seed(rate: f64, size: f64) -> f64;
        pub(super) safe fn formula_cells(titre: f64, dose: f64, recovery: f64) -> f64;
        pub(super) fn call_hilum_per_seed(rate: f64, sizes: *const f64, n: usize) -> f64;
        pub(super) fn call_by_hand_per_seed(rate: f64, sizes: *const f64, n: usize) -> f64;
        pub(super) fn call_hilum_needed(rate: f64, masses: *const f64, n: usize) -> f64;
        pub(super) fn call_by_hand_needed(rate: f64, masses: *const f64, n: usize) -> f64;
        pub(super) fn loop_times(by: f64, from: *const f64, to: *mut f64, n: usize);
        pub(super) fn loop_quotient(by: f64, over: f64, from: *const f64, to: *mut f64, n: usize);
        pub(super) fn loop_under(over: f64, from: *const f64, to: *mut f64, n: usize);
    }
}

/// The processor's time that this thread has used.
pub(crate) fn thread_seconds() -> f64 {
    c::thread_seconds()
}

pub(crate) fn formula_per_seed(rate: f64, size: f64) -> f64 {
    c::formula_per_seed(rate, size)
}
pub(crate) fn formula_cells(titre: f64, dose: f64, recovery: f64) -> f64 {
    c::formula_cells(titre, dose, recovery)
}
/// Calls of a program in C, for each number of a list: the sum of the results, -1 when one was refused.
#[derive(Clone, Copy)]
pub(crate) enum Calls {
    HilumPerSeed,
    ByHandPerSeed,
    HilumNeeded,
    ByHandNeeded,
}

impl Calls {
    pub(crate) fn sum(self, rate: f64, list: &[f64]) -> f64 {
        let call = match self {
            Self::HilumPerSeed => c::call_hilum_per_seed,
            Self::ByHandPerSeed => c::call_by_hand_per_seed,
            Self::HilumNeeded => c::call_hilum_needed,
            Self::ByHandNeeded => c::call_by_hand_needed,
        };
        // SAFETY: the list is as long as it says.
        unsafe { call(rate, list.as_ptr(), list.len()) }
    }
}

/// to = by × from, without a check.
pub(crate) fn loop_times(by: f64, from: &[f64], to: &mut [f64]) {
    // SAFETY: neither list is shorter than the count, and they do not overlap.
    unsafe { c::loop_times(by, from.as_ptr(), to.as_mut_ptr(), from.len().min(to.len())) }
}

/// to = (from × by) / over, without a check.
pub(crate) fn loop_quotient(by: f64, over: f64, from: &[f64], to: &mut [f64]) {
    // SAFETY: as above.
    unsafe { c::loop_quotient(by, over, from.as_ptr(), to.as_mut_ptr(), from.len().min(to.len())) }
}

/// to = over / from, without a check.
pub(crate) fn loop_under(over: f64, from: &[f64], to: &mut [f64]) {
    // SAFETY: as above.
    unsafe { c::loop_under(over, from.as_ptr(), to.as_mut_ptr(), from.len().min(to.len())) }
}
