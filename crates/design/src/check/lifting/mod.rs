//! What one person may lift, and what holds a leaf while it is hung.

pub(crate) mod each_task;
pub(crate) mod lone_check_in;
pub(crate) mod propped;
