//! Bollards: what keeps vehicles off the gate.

mod corridor;
pub(crate) mod energy;
pub(crate) mod gap_width;
mod parts;
mod tested;
pub(crate) mod where_placed;
