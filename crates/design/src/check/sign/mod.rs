//! Signs.

pub(crate) mod both_sides;
