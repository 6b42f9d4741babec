//! Fire access.

pub(crate) mod apparatus;
pub(crate) mod carries_engine;
