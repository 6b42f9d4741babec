//! Conductors, supplies, batteries and enclosures.

mod voltage_drop;

pub use voltage_drop::{VoltageDrop, VoltageLost};

use crate::Calculation;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[Calculation::of::<VoltageDrop>()];
