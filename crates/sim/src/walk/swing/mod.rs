//! People who pass leaves that swing.
//!
//! The plan is that of the sliding leaf: x along the closed leaves, y into the property. People may come on a path of any
//! slant, end in the area that a leaf sweeps, or stand in it, before a leaf and behind it. A leaf touches hardest where it
//! is fastest: what it does is worked at the distance from the hinge line at which it touches. Behind the body are the
//! faces that stay, along the arc, and the other leaf.

mod account;
mod angle;
mod bound;
mod contact;
mod evaluate;
mod gap;
mod judge;
mod lane;
mod many;
mod press;
mod prove;
mod room;
mod side_by_side;
mod skin;
#[cfg(test)]
mod tests;
mod wing;
mod world;

pub(super) use bound::SLACK;
pub(super) use contact::{Hit, Slab, Swung, root};
pub(super) use judge::{Against, Motion, RunsBack, pressed, run_back};
pub use lane::SwingWalk;
pub(super) use lane::{case, check_case, outcome, scenario};
pub(super) use press::{Forces, Outcome, Press};
pub use press::{Heft, Measured};
pub(super) use skin::{Covered, Skin};
pub use world::{Face, LeafEdge, Opens, SwingLeaf, SwingPass, SwingWorld, Toward, Turn};
