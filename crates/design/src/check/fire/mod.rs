//! Fire access.

pub(crate) mod apparatus;
pub(crate) mod carries_engine;
pub(crate) mod clear_way;
pub(crate) mod opens;
