//! What wears and rusts over the years.

pub(crate) mod corrosion;
pub(crate) mod wearing_parts;
