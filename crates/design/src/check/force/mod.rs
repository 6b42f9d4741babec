//! Force and torque.

pub(crate) mod balance;
pub(crate) mod counterbalance;
pub(crate) mod operator_curve;
pub(crate) mod rising;
pub(crate) mod slide;
pub(crate) mod sliding;
#[allow(dead_code, reason = "the checks that read it follow")]
pub(crate) mod turning;
