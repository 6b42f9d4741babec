//! The low-voltage circuits of a site: which cables and fuses lie between each source and what it feeds, what each thing
//! draws in each case, and the voltages that follow.

mod case;
pub(crate) mod conductor;
mod ends;
mod fault;
mod lower;
mod output;
mod parts;
mod poles;
mod reading;
pub mod shown;
mod source;
mod state;
mod taker;
#[cfg(test)]
mod tests;
mod trial;

pub(crate) use case::{CASES, PowerCase};
pub(crate) use fault::fault_at_far_end;
pub(crate) use output::outputs;
pub(crate) use parts::{Circuits, Part, Run};
pub(crate) use poles::Poles;
pub(crate) use reading::How;
pub(crate) use source::Source;
pub(crate) use state::{State, states};
pub(crate) use taker::{Taker, Takes};
pub(crate) use trial::{Hour, Trial, resistance_with};
