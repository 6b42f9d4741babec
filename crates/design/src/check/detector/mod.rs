//! Detectors of vehicles: loops and fields.

pub(crate) mod detector_fails;
mod field_finds;
pub(crate) mod field_side;
pub(crate) mod held_open;
pub(crate) mod loop_inductance;
pub(crate) mod loop_near_metal;
mod loop_neighbors;
pub(crate) mod loop_sees_all;
mod loop_to_leaf;
