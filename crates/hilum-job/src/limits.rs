//! How large a document may be, and how much work a plan may take: counts, so that the same document is refused everywhere,
//! on a fast machine and on a slow one.

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
/// Characters of one text.
pub const TEXT: usize = 500;
/// Steps of work in a plan or an account. A step is a treatment on an order, or one of what it brings there: an active, another
/// statement of its dose, a crop of its label, a period of storage of a living product, a declaration on living products.
pub const STEPS: usize = 500_000;
/// Pours of all mixes of a plan: each product of each mix is one.
pub const POURS: usize = 500_000;
/// Problems that one reading reports.
pub const PROBLEMS: usize = 20;
