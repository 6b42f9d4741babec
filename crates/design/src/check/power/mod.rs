//! Power at low voltage.

pub(crate) mod conductor;
pub(crate) mod feed;
pub(crate) mod voltage;
