//! Anchors.

pub(crate) mod concrete_known;
pub(crate) mod described;
pub(crate) mod edges;
pub(crate) mod fits;
pub(crate) mod glue;
pub(crate) mod hardest;
pub(crate) mod hole_and_cure;
mod in_the_way;
pub(crate) mod on_plate;
pub(crate) mod plate_forces;
mod plate_in_hand;
mod product;
pub(crate) mod shear_at_edge;
pub(crate) mod tension;
#[cfg(test)]
mod testing;
pub(crate) mod thin_plate;
