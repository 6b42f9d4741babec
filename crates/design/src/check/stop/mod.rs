//! Stops, and what keeps a leaf from falling, running off or running away.

pub(crate) mod fall;
pub(crate) mod gravity_run;
pub(crate) mod impact;
pub(crate) mod positive;
pub(crate) mod rope;
pub(crate) mod stays;
