//! People under a leaf that rises: an arm, a leaf that pivots upward, a leaf that is lifted.
//!
//! The leaf moves in the upright plane of the gate line. While a cylinder is in the thickness of the leaf it counts as the
//! upright box about it. The body stands on the ground and gives way under the leaf down to the gap up to which a body
//! counts as crushed; below that it is squeezed. One who is in the way of a leaf that rises, and what may be pinched above
//! it, is not looked at beyond the touch.

mod account;
mod apart;
mod arm;
mod bound;
mod evaluate;
mod lane;
mod lift;
mod prove;
#[cfg(test)]
mod tests;
mod world;

pub use lane::RisingWalk;
pub use world::{LiftingLeaf, RisingLeaf, RisingPass, RisingWorld, TurningLeaf};
