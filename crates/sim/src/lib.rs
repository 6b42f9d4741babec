//! Moves a leaf through time: what its drive can give, what its load takes, what its controller wants, a thousandth of a
//! second at a time. Samples go to whoever asks; the summary says how long it took, how hard it pulled and where it stood.
//!
//! A leaf that turns is followed along the arc of its free end: its torque over its width is a force there, and its
//! moment of inertia over the square of its width a mass.
//!
//! [`walk`] moves people past a leaf that is on its way, and finds whom it touches. [`vehicle`] does so for vehicles, which
//! may stop anywhere.

#[cfg(test)]
extern crate self as sim;

mod drive;
mod load;
mod motion;
mod plan;
mod report;
mod travel;
pub mod vehicle;
pub mod walk;

pub use drive::{Drive, Motor};
pub use load::Load;
pub use plan::{Obstacle, Plan};
pub use report::{Contact, Sample, Summary, Trouble};
pub use travel::Travel;
