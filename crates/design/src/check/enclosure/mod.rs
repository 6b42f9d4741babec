//! Enclosures.

pub(crate) mod hot;
