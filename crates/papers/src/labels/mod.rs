//! Labels for both ends of every cable, for every device and fuse, and for the papers in the cabinet.

mod code;
mod content;
mod place;

pub use place::{DoesNotFit, Labels, labels};
