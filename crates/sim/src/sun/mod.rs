//! Where the sun is, how much of it a clear sky lets through, and how much of that a face gets.
//!
//! Directions are clockwise from true north. A year is the common year that begins on 1 January 2026; its hours are counted
//! in universal time.

mod face;
mod light;
mod place;
mod sky;

pub use face::{Face, Skyline};
pub use light::DayLight;
pub use place::{SunAt, SunPlace};
pub use sky::{Sky, clear_sky, split};
