//! Fields of scanners, radars and ultrasonic detectors on the ground: where they lie as set, and where they should.

mod polygon;
mod set;
mod shown;

pub(crate) use polygon::{Spot, overlap, strip};
pub(crate) use set::{AsSet, as_set};
pub use shown::{ShownField, shown};
