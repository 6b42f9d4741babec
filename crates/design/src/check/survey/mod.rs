//! The survey.

pub(crate) mod authority;
pub(crate) mod buried_services;
mod cuts;
pub(crate) mod deciding;
pub(crate) mod inside_boundary;
pub(crate) mod old_gate_brought_up;
pub(crate) mod use_and_people;
pub(crate) mod water_and_snow;
