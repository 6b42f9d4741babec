//! Moves a leaf through time: what its drive can give, what its load takes, what its controller wants, a thousandth of a
//! second at a time. Samples go to whoever asks; the summary says how long it took, how hard it pulled and where it stood.
//!
//! A leaf that turns is followed along the arc of its free end: its torque over its width is a force there, and its
//! moment of inertia over the square of its width a mass.
//!
//! [`walk`] moves people past a leaf that is on its way, and finds whom it touches. [`vehicle`] does so for vehicles, which
//! may stop anywhere. [`network`] finds the voltages in a network of supplies, cables and loads. [`sun`], [`glare`] and
//! [`sun_year`] follow the sun, whom it blinds, and a battery that lives on it; [`enclosure`] follows the warmth in a box.
//! [`camera`] says what a camera sees and what hides the rest. [`swept`] is what vehicles sweep in a turn; [`queue`] lets
//! vehicles come to a gate hour by hour. [`job`] orders the tasks of a job for one pair of hands.

#[cfg(test)]
extern crate self as sim;

pub mod camera;
pub mod cutting;
mod drive;
pub mod enclosure;
pub mod glare;
pub mod job;
mod load;
mod motion;
pub mod network;
mod plan;
pub mod queue;
mod report;
pub mod sun;
pub mod sun_year;
pub mod swept;
mod travel;
pub mod vehicle;
pub mod walk;

pub use drive::{Drive, Motor};
pub use load::Load;
pub use plan::{Obstacle, Plan};
pub use report::{Contact, Sample, Summary, Trouble};
pub use travel::Travel;
