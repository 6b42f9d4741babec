//! The mains branch.

pub(crate) mod branch;
pub(crate) mod circuit;
pub(crate) mod disconnect;
pub(crate) mod earth_fault;
mod fault_current;
mod ground;
mod load;
mod residual;
pub(crate) mod source;
pub(crate) mod voltage_at_start;
pub(crate) mod working_space;
