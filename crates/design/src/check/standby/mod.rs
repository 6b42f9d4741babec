//! Standby.

pub(crate) mod hours_and_moves;
mod load;
