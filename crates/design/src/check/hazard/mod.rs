//! Hazard zones.

pub(crate) mod reach_through;
