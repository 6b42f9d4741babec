//! Hazard zones.

pub(crate) mod arm_and_counterweight;
pub(crate) mod behind_open;
pub(crate) mod draw_in;
pub(crate) mod falling_arm;
pub(crate) mod hinge_side;
pub(crate) mod leading_edge;
pub(crate) mod lift_carry;
mod open;
pub(crate) mod protrusions;
pub(crate) mod reach_through;
pub(crate) mod rollers_rack;
pub(crate) mod trailing_edge;
pub(crate) mod under_edge;
