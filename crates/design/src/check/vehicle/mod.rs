//! What detectors do for vehicles, and when.

pub(crate) mod exit_in_time;
pub(crate) mod tailgate;
