//! People and vehicles past a moving leaf.

pub(crate) mod anyone_hit;
#[cfg(test)]
pub(crate) mod court;
pub(crate) mod device_lost;
pub(crate) mod response;
pub(crate) mod vehicle_hit;
mod vehicle_words;
#[cfg(test)]
pub(crate) mod yard;
