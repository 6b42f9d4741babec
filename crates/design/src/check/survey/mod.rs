//! The survey.

pub(crate) mod authority;
pub(crate) mod deciding;
