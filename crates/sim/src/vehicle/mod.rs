//! Vehicles that pass a gate, stop anywhere on their way, or back out: whether the leaf can come upon one.
//!
//! The world is the one of [`crate::walk`]: x along the closed leaf from its latching side, y into the property, z up. A
//! vehicle is a row of boxes with heights and open spaces that drives along y. Where its front is tells everything: which
//! boxes stand in the way of the leaf, and which detectors see it. Both are sets of places, worked as unions of
//! intervals, so that *every* stopping place is decided at once.
//!
//! [`World::unwatched`] finds the stopping places at which the leaf would come upon the vehicle and nothing holds it;
//! [`World::fastest`] says up to which speed no drive at all is touched, however it stops, starts and backs;
//! [`World::drive`] works one drive exactly.
//!
//! This is about damage to vehicles. A detector of vehicles never counts for people.

mod arc;
mod detector;
mod drive;
mod intervals;
mod leaf;
mod moving;
mod outline;
mod passing;
mod standing;
mod sweep;
mod world;

#[cfg(test)]
mod tests;

pub use detector::{Act, Detector, Field};
pub use drive::{Drive, Ending};
pub use leaf::{Hinged, Leaf, Toward};
pub use outline::{Facing, Outline, Part, PartName};
pub use passing::{Gap, Handover, Passing, Seen};
pub use standing::Unwatched;
pub use sweep::Tally;
pub use world::{Lane, Motion, World};
