//! The jobs of a folder: plain files, a journal of every change, and nothing written over what somebody else has changed.

pub(super) mod disk;
mod edit;
mod job;
mod journal;
mod name;
mod named;
mod splice;

pub(super) use edit::Edit;
pub(super) use job::{Job, Seen, stale};
pub(super) use name::{checked, is_name};
