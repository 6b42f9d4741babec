//! Earth and bonding.

pub(crate) mod bonding;
pub(crate) mod electrode;
pub(crate) mod fences_and_lines;
