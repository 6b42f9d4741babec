//! What a site cuts to length, lowered to [`sim::cutting`]: bars with their pieces, reels with their runs.

mod bars;
mod job;
mod reels;
mod shown;

pub(crate) use bars::bars;
pub(crate) use job::{Job, least, patterns};
pub(crate) use reels::{reels, runs_of};
pub use shown::{CutBar, CutSheet, bar_sheets, reel_sheets};
