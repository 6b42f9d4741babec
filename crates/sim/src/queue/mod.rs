//! Vehicles that come to a gate hour by hour: how long they wait, how far back they stand, how often it opens.
//!
//! A vehicle comes at random within its hour, alone or in a group; stands behind those before it; stops at the reader and
//! is let in after a time that hangs on what the driver holds; drives up, waits for the leaf, passes, and frees the
//! detectors; the leaf waits, closes, and turns back where somebody comes. A day is one independent run from an empty lane.
//!
//! [`World::lower`] checks a world and makes it ready; [`Queue::run`] works days in sixteen groups, so that each figure comes
//! with its error; [`World::timeline`] follows one vehicle that finds everything free.

mod arrivals;
mod day;
mod draws;
mod estimate;
mod hour;
mod pass;
mod report;
mod run;
mod stands;
mod timeline;
mod world;

pub use estimate::Estimate;
pub use report::{HourReport, Report};
pub use run::Run;
pub use timeline::Timeline;
pub use world::{Driver, Lane, Leaf, Queue, Turn, World};
