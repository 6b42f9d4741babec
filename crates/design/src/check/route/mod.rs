//! Routes.

pub(crate) mod apart;
pub(crate) mod bends;
pub(crate) mod bore;
pub(crate) mod depth;
mod ends;
pub(crate) mod fill;
pub(crate) mod least_trench;
pub(crate) mod sealed;
pub(crate) mod stub_up;
pub(crate) mod wet;
