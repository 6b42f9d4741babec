//! Surges.

pub(crate) mod between_buildings;
pub(crate) mod every_line;
pub(crate) mod lead_and_order;
mod line;
