//! Loops in the ground: where they lie, what they measure, and what a vehicle does to them.

mod electrical;
mod laid;
mod share;
mod shown;

pub(crate) use electrical::{Electrical, electrical, lead_in};
pub(crate) use laid::{Laid, apart, laid, loops};
pub(crate) use share::{Least, least_share};
pub use shown::{ShownLoop, shown};
