//! Force and torque.

pub(crate) mod articulated_geometry;
pub(crate) mod balance;
pub(crate) mod by_hand;
pub(crate) mod cold_start;
pub(crate) mod counterbalance;
pub(crate) mod drive_parts;
pub(crate) mod linear_geometry;
pub(crate) mod lock_preload;
pub(crate) mod operator_curve;
pub(crate) mod rising;
mod shaft_curve;
pub(crate) mod slide;
pub(crate) mod sliding;
pub(crate) mod swing_drive;
pub(crate) mod swing_torque;
pub(crate) mod turning;
pub(crate) mod underground_drive;
