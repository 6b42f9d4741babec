//! Rules of one question that are each kept or broken, beside figures that are compared.

use crate::outcome::{Comparison, Outcome};

/// What was found broken, and what was compared.
#[derive(Default)]
pub(crate) struct Rules {
    broken: Vec<String>,
    compared: Vec<Comparison>,
}

impl Rules {
    /// A rule: what is so where it is broken.
    pub(crate) fn keep(&mut self, kept: bool, otherwise: &str) {
        if !kept {
            self.broken.push(otherwise.to_owned());
        }
    }

    /// A figure against another.
    pub(crate) fn compare(&mut self, comparison: Comparison) {
        self.compared.push(comparison);
    }

    /// What is broken, as sentences; what is said where nothing is.
    pub(crate) fn says(&self, otherwise: impl FnOnce() -> String) -> String {
        if self.broken.is_empty() {
            otherwise()
        } else {
            self.broken.join(" ")
        }
    }

    /// A broken rule before the worst of the comparisons.
    pub(crate) fn outcome(self) -> Outcome {
        if self.broken.is_empty() {
            Outcome::worst(self.compared).unwrap_or(Outcome::Rule(true))
        } else {
            Outcome::Rule(false)
        }
    }
}
