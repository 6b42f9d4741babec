//! The network.

pub(crate) mod addresses;
pub(crate) mod budget;
pub(crate) mod clocks;
pub(crate) mod internet_down;
pub(crate) mod length;
pub(crate) mod pictures;
pub(crate) mod poe;
mod port_power;
pub(crate) mod ports;
mod segments;
