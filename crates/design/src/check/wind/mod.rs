//! Wind.

mod along;
pub(crate) mod holds_when_off;
pub(crate) mod ice_on_leaf;
pub(crate) mod load;
pub(crate) mod pressure;
pub(crate) mod reaction;
pub(crate) mod still_moves;
mod still_turns;
mod upright_arm;
