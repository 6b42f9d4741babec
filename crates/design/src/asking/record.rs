//! The working as it is kept: values, not yet text.

use formula::Sheet;
use quantity::Value;

/// One step of the working.
#[derive(Debug)]
pub(crate) enum Step {
    /// A calculation with what went in and what came out.
    Calculation {
        sheet: &'static Sheet,
        inputs: Vec<Value>,
        outputs: Vec<Value>,
    },
    /// A line in words.
    Line(String),
}

/// The working of one run and the sentence that goes with it.
#[derive(Debug, Default)]
pub(crate) struct Record {
    pub(crate) steps: Vec<Step>,
    pub(crate) said: String,
}
