//! Lanes: what vehicles sweep, how long they queue, what drivers reach, see and do.

pub(crate) mod meeting;
pub(crate) mod queue;
pub(crate) mod reach;
pub(crate) mod seen_at_night;
pub(crate) mod sight;
pub(crate) mod swept_path;
mod swept_words;
pub(crate) mod turn_back;
mod view_out;
