//! Pulls.

pub(crate) mod tension;
mod walk;
