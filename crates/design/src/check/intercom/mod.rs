//! Speech between a caller at the gate and whoever answers.

pub(crate) mod answered;
pub(crate) mod heard;
