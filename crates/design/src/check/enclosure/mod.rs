//! Enclosures.

pub(crate) mod cold;
mod coming_in;
pub(crate) mod condensation;
pub(crate) mod door_and_lock;
pub(crate) mod entries;
pub(crate) mod heater_stuck;
pub(crate) mod hot;
pub(crate) mod inside;
pub(crate) mod inside_apart;
mod rating;
pub(crate) mod space_and_mount;
