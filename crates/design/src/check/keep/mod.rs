//! Keeping.

pub(crate) mod corrosion;
pub(crate) mod wearing_parts;
