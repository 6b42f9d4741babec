//! Anchors.

pub(crate) mod tension;
