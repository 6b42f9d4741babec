//! What stands in the ground: posts, old pillars, masts, pads and track beds.

pub(crate) mod at_foot;
mod bank;
mod concrete;
pub(crate) mod embedment;
pub(crate) mod existing_pillar;
mod faces;
mod foot_turn;
pub(crate) mod footing;
pub(crate) mod frost;
pub(crate) mod loads;
pub(crate) mod mast;
mod on_leaf_post;
pub(crate) mod on_post;
pub(crate) mod pad;
pub(crate) mod pad_loads;
mod pad_square;
pub(crate) mod pad_stability;
mod post_cases;
pub(crate) mod post_strength;
pub(crate) mod post_sway;
pub(crate) mod soil;
mod stress;
pub(crate) mod track_bed;
