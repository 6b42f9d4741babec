//! Wind.

pub(crate) mod along;
pub(crate) mod bar;
mod drive_holds;
pub(crate) mod guides;
pub(crate) mod holds_when_off;
pub(crate) mod ice_on_leaf;
pub(crate) mod load;
pub(crate) mod pressure;
pub(crate) mod reaction;
pub(crate) mod stands_everywhere;
pub(crate) mod still_moves;
pub(crate) mod still_turns;
pub(crate) mod upright_arm;
pub(crate) mod velocity;
