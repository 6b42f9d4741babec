//! What one person may lift.

pub(crate) mod each_task;
