//! Data, radio and cameras.

mod poe_class;
mod poe_power;

pub use poe_class::{PoeClass, poe_class};
pub use poe_power::{PoeArrival, PoePower, PoweredPairs};

use crate::Calculation;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[Calculation::of::<PoePower>()];

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = &[(
    "signal/poe_power.cases.toml",
    include_str!("poe_power.cases.toml"),
)];
