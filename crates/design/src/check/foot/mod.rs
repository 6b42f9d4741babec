//! People on foot.

pub(crate) mod accessible;
pub(crate) mod both_senses;
pub(crate) mod envelope;
mod limits;
pub(crate) mod way;
