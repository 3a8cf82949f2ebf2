//! Findings: a clean job raises none but the standing cautions; one edit raises each, and a near miss does not.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test stops at the first surprise"
)]

mod each;
mod figures;
mod job;
mod messages;
mod record;
mod told;
