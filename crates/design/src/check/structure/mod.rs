//! What stands in the ground: posts, old pillars, masts, pads and track beds.

#[allow(
    dead_code,
    reason = "the checks of posts, footings and anchor plates use it"
)]
pub(crate) mod at_foot;
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
mod on_post;
#[allow(
    dead_code,
    reason = "the checks of posts, footings and anchor plates use it"
)]
mod post_cases;
//! Posts, pads, track beds and masts, and the ground that carries them.

pub(crate) mod footing;
pub(crate) mod soil;
