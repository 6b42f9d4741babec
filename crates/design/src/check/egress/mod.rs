//! The way out.

pub(crate) mod hand_release;
pub(crate) mod way_out;
