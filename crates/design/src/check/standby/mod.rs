//! Standby.

pub(crate) mod far_end;
pub(crate) mod hours_and_moves;
pub(crate) mod last_action;
pub(crate) mod load;
pub(crate) mod recharge;
