//! How large a document may be.

/// Bytes of text.
pub const BYTES: usize = 16 * 1024 * 1024;
/// Levels of nesting.
pub const DEPTH: usize = 32;
/// Orders in a job.
pub const ORDERS: usize = 10_000;
/// Treatments in a job.
pub const TREATMENTS: usize = 100;
/// Tanks in a job.
pub const TANKS: usize = 20;
/// Shifts in a job.
pub const SHIFTS: usize = 1_000;
/// Mixes in a plan.
pub const BATCHES: usize = 100_000;
/// Pack sizes of one product.
pub const PACKS: usize = 8;
/// Entries in any other list.
pub const ENTRIES: usize = 1_000;
/// Problems that one reading reports.
pub const PROBLEMS: usize = 20;
