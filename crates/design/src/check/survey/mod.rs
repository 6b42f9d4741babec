//! The survey.

pub(crate) mod authority;
