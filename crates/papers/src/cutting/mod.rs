//! How bars and reels are cut: each cut drawn with its pieces, and listed.

mod letters;
mod sheets;
mod tables;

pub(crate) use sheets::planned;
pub(crate) use tables::tables;
