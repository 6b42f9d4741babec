//! Force and torque.

pub(crate) mod balance;
pub(crate) mod cold_start;
pub(crate) mod counterbalance;
pub(crate) mod drive_parts;
pub(crate) mod lock_preload;
pub(crate) mod operator_curve;
pub(crate) mod rising;
pub(crate) mod slide;
pub(crate) mod sliding;
#[allow(dead_code, reason = "the checks that read it follow")]
pub(crate) mod turning;
