//! The leaf: what it weighs, where its weight lies, and what carries it.

mod measure;

pub(crate) use measure::{center_along, load_factor, mass};
