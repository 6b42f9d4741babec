//! What a camera sees of a site: a pinhole at a place, panned, tilted and rolled, and upright things that stand before it.
//!
//! The world is the one of [`crate::walk`]: x along the closed leaf from its latching side, y into the property, z up. What
//! an upright thing hides on a level plane is one convex polygon, exactly: every line from the lens that enters the
//! thing between its underside and its top. Shares of an area are summed over strips, each cut exactly.

mod area;
mod lens;
mod seen;
mod shadow;

pub use lens::{Camera, Pixel};
pub use seen::{Seen, Wanted};
pub use shadow::Hider;

use quantity::Length;

/// A place seen from above.
pub type Ground = [Length; 2];
