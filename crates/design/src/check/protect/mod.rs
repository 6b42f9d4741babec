//! Protection of people.

pub(crate) mod count;
pub(crate) mod minimum_distance;
