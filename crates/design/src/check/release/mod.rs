//! Powered locks: when they let go, and what they hold.

pub(crate) mod holds_shut;
pub(crate) mod unlocks_first;
