//! The network.

pub(crate) mod poe;
