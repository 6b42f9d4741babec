//! Conductors, supplies, batteries and enclosures.

mod voltage_drop;

pub use voltage_drop::{VoltageDrop, VoltageLost};

use crate::Calculation;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[Calculation::of::<VoltageDrop>()];

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = &[(
    "power/voltage_drop.cases.toml",
    include_str!("voltage_drop.cases.toml"),
)];
