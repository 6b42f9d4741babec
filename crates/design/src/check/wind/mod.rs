//! Wind.

pub(crate) mod load;
pub(crate) mod pressure;
