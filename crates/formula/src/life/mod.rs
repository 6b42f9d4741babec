//! Wear, growth and rust.

use crate::Calculation;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[];

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = &[];
