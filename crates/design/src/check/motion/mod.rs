//! Motion.

pub(crate) mod duty;
pub(crate) mod edge_speed;
mod heating;
mod profile;
pub(crate) mod reversal;
pub(crate) mod slowdown_setpoint;
pub(crate) mod stopping;
pub(crate) mod track_true;
pub(crate) mod travel_time;
pub(crate) mod two_leaves;

pub(crate) use profile::{cruise_of, radius, turns};
