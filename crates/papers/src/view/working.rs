//! The working under a finding.

use serde::Serialize;

/// One step: a calculation with what goes in and what comes out.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Working {
    /// What the step does: `Voltage lost along the cable`.
    pub title: String,
    /// The formula as the literature prints it, over one or more lines; empty for a bare comparison.
    pub formula: String,
    /// What goes in.
    pub given: Vec<WorkingLine>,
    /// What comes out.
    pub gives: Vec<WorkingLine>,
    /// Work and clause of the formula.
    pub source: String,
    /// How that source is known.
    pub known: String,
    /// Place, in the list of findings, of the one under which this very step stands already: only its result is printed
    /// here.
    pub stands_at: Option<usize>,
    /// Place of the one under which the same formula stands already, with other values.
    pub formula_at: Option<usize>,
}

/// One line of the working: a symbol, what it means, its value, and how that is known.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct WorkingLine {
    /// The letter in the formula: `I`.
    pub symbol: String,
    /// What it means.
    pub meaning: String,
    /// Its value, with unit and tolerance.
    pub value: String,
    /// How it is known: `measured`, `data sheet`, `assumed`; empty for what was computed.
    pub known: String,
}

impl WorkingLine {
    /// A line of these words.
    pub fn new(symbol: &str, meaning: &str, value: &str, known: &str) -> Self {
        Self {
            symbol: symbol.to_owned(),
            meaning: meaning.to_owned(),
            value: value.to_owned(),
            known: known.to_owned(),
        }
    }
}
