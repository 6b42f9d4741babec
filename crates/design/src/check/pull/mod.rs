//! Pulls.

mod alike;
pub(crate) mod alone;
pub(crate) mod bend_radius;
pub(crate) mod clear;
pub(crate) mod connector_passes;
pub(crate) mod reels;
pub(crate) mod tension;
pub(crate) mod together;
pub(crate) mod walk;

pub(crate) use alike::{Alike, in_conduits};
