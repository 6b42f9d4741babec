//! What stands in the ground: posts, old pillars, masts, pads and track beds.

#[allow(
    dead_code,
    reason = "the checks of posts, footings and anchor plates use it"
)]
pub(crate) mod at_foot;
pub(crate) mod footing;
mod frost;
pub(crate) mod loads;
#[allow(
    dead_code,
    reason = "the checks of posts, footings and anchor plates use it"
)]
mod on_leaf_post;
#[allow(
    dead_code,
    reason = "the checks of posts, footings and anchor plates use it"
)]
pub(crate) mod on_post;
pub(crate) mod pad;
mod pad_loads;
#[allow(
    dead_code,
    reason = "the checks of posts, footings and anchor plates use it"
)]
mod post_cases;
pub(crate) mod soil;
pub(crate) mod track_bed;
