//! When the sun stands where something looks: a year at steps of five minutes.
//!
//! Between exact positions two hours apart the sun is carried along its circle about the pole; against the exact algorithm
//! that is good to a thousandth of a degree. The air lifts a low sun, and any part of its disc counts. Clock times
//! are those of the zone whose meridian is nearest, all year without summer time.

mod look;
mod path;
mod year;

pub use look::{Look, Opening};
pub use path::SunPath;
pub use year::{GlareYear, Season, Worst, glare_year, month_and_day};
