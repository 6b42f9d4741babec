//! Conduits and pulls.
// NOTE TO THE FRAME HELPER (temporary): the lead is writing ways/ right now (conduit fill, pulls). Take power/ and signal/ only.

use crate::Calculation;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[];

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = &[];
