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

impl Record {
    /// Keeps a calculation; one that stands there already with the same values says nothing new.
    pub(super) fn keep(
        &mut self,
        sheet: &'static Sheet,
        inputs: Vec<Value>,
        outputs: impl FnOnce() -> Vec<Value>,
    ) {
        let stands = self.steps.iter().any(|step| match step {
            Step::Calculation {
                sheet: known,
                inputs: values,
                ..
            } => known.name == sheet.name && *values == inputs,
            Step::Line(_) => false,
        });
        if !stands {
            self.steps.push(Step::Calculation {
                sheet,
                inputs,
                outputs: outputs(),
            });
        }
    }
}
