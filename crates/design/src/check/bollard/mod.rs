//! Bollards: what keeps vehicles off the gate.

pub(crate) mod corridor;
pub(crate) mod energy;
pub(crate) mod gap_width;
pub(crate) mod parts;
mod tested;
pub(crate) mod where_placed;
