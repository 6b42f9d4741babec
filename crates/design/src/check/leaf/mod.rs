//! The leaf: what it weighs, where its weight lies, and what carries it.

mod measure;
mod member;
pub(crate) mod section;
pub(crate) mod trolleys;

#[allow(unused_imports, reason = "checks of leaves that turn or rise use them")]
pub(crate) use measure::{center_along, center_from_hinge, center_up, mass};
pub(crate) use trolleys::load_factor;
