//! The leaf: what it weighs, where its weight lies, what carries it, and how far it gives.

pub(crate) mod arc;
pub(crate) mod carriers;
pub(crate) mod cladding;
pub(crate) mod covers;
mod frame;
pub(crate) mod growth;
pub(crate) mod hinges;
mod measure;
mod member;
pub(crate) mod rated_mass;
pub(crate) mod rollers;
mod room;
pub(crate) mod sag;
pub(crate) mod section;
pub(crate) mod strength;
pub(crate) mod trolleys;
mod wheels;

#[allow(unused_imports, reason = "checks of leaves that turn or rise use them")]
pub(crate) use measure::{center_along, center_from_hinge, center_up, mass};
pub(crate) use trolleys::load_factor;
