//! How long is it good? Batches of every tank on one timeline, over all orders.

pub mod clock;
pub mod input;
pub mod output;
pub mod plan;
