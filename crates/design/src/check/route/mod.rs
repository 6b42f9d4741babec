//! Routes.

pub(crate) mod bore;
pub(crate) mod fill;
