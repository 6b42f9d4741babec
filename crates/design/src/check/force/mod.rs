//! Force and torque.

mod operator_curve;
pub(crate) mod slide;
pub(crate) mod sliding;
