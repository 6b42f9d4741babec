//! Joints, terminals, labels, jackets, screens, and cables that move.

pub(crate) mod cable_for_the_place;
pub(crate) mod label_and_schedule;
pub(crate) mod moving_cable;
pub(crate) mod screen;
pub(crate) mod terminal_fits;
pub(crate) mod wet;
