//! Motion.

mod profile;
pub(crate) mod stopping;
pub(crate) mod travel_time;

pub(crate) use profile::{OPERATOR, cruise_of, operator_of};
