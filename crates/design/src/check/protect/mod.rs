//! Protection of people.

pub(crate) mod after_hit;
pub(crate) mod beam_heights;
pub(crate) mod beam_margin;
pub(crate) mod common_cause;
pub(crate) mod count;
pub(crate) mod edge_signal;
pub(crate) mod edge_travel;
pub(crate) mod every_zone;
mod fault;
pub(crate) mod force_limits;
pub(crate) mod hold_to_run;
pub(crate) mod inherent_set;
pub(crate) mod level_eu;
mod line_of_sight;
pub(crate) mod means;
pub(crate) mod minimum_distance;
pub(crate) mod monitored;
pub(crate) mod person_between;
pub(crate) mod right_kind;
pub(crate) mod sense_window;
pub(crate) mod trapped_freed;
mod zone_rule;
