//! Anchors.

pub(crate) mod concrete_known;
mod described;
mod edges;
pub(crate) mod fits;
mod glue;
mod hardest;
pub(crate) mod hole_and_cure;
mod in_the_way;
mod on_plate;
pub(crate) mod plate_forces;
mod plate_in_hand;
mod product;
pub(crate) mod shear_at_edge;
pub(crate) mod tension;
#[cfg(test)]
mod testing;
mod thin_plate;
